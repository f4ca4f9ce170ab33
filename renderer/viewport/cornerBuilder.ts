import { Group, type BufferGeometry, type Mesh, type Object3D } from 'three';
import type { PlacedCorner } from '../../geometry/index';
import type { Point } from './points';
import { buildCoil } from './coil';
import type { Finish, Materials } from './materials';
import { SPRING_KEY } from './partKeys';
import { buildBall, buildBlock, buildDisc, buildPlate, buildTube } from './solids';

type Place = (corner: PlacedCorner) => void;

/** One corner's solids, built once for an axle of a car; `place` moves them, `hold` blues those under the hand. */
export interface CornerModel {
  readonly object: Group;
  readonly place: Place;
  readonly hold: (keys: readonly string[]) => void;
  readonly dispose: () => void;
}

/** Collects solids, their places, and which of them an adjuster is. */
export class CornerBuilder {
  readonly object = new Group();
  private readonly places: Place[] = [];
  /** buffers of this corner alone; every other solid shares a unit shape */
  private readonly owned: BufferGeometry[] = [];
  private readonly keyed: { key: string; mesh: Mesh; finish: Finish }[] = [];

  constructor(readonly materials: Materials) {}

  add(object: Object3D, place: Place): void {
    this.object.add(object);
    this.places.push(place);
  }

  key(key: string, mesh: Mesh, finish: Finish): void {
    this.keyed.push({ key, mesh, finish });
  }

  tube(finish: Finish, radius: number, ends: (corner: PlacedCorner) => readonly [Point, Point], taper = 1, key?: string): void {
    const tube = buildTube(this.materials.finish[finish], radius, taper);
    this.add(tube.object, (corner) => tube.place(...ends(corner)));
    if (key !== undefined) this.key(key, tube.object, finish);
  }

  ball(finish: Finish, radius: number, at: (corner: PlacedCorner) => Point, key?: string): void {
    const ball = buildBall(this.materials.finish[finish], radius);
    this.add(ball.object, (corner) => ball.place(at(corner)));
    if (key !== undefined) this.key(key, ball.object, finish);
  }

  disc(
    finish: Finish,
    radius: number,
    thickness: number,
    at: (corner: PlacedCorner) => readonly [Point, Point],
    key?: string,
  ): void {
    const disc = buildDisc(this.materials.finish[finish], radius, thickness);
    this.add(disc.object, (corner) => disc.place(...at(corner)));
    if (key !== undefined) this.key(key, disc.object, finish);
  }

  block(size: Point, at: (corner: PlacedCorner) => Point): void {
    const block = buildBlock(this.materials.finish.body, size);
    this.add(block.object, (corner) => block.place(at(corner)));
  }

  plate(
    finish: Finish,
    thickness: number,
    corners: (corner: PlacedCorner) => readonly [Point, Point, Point],
    key?: string,
  ): void {
    const plate = buildPlate(this.materials.finish[finish], thickness);
    this.add(plate.object, (corner) => plate.place(...corners(corner)));
    if (key !== undefined) this.key(key, plate.object, finish);
  }

  coil(radius: number, wire: number, turns: number, seats: (corner: PlacedCorner) => readonly [Point, Point]): void {
    const coil = buildCoil(this.materials.finish.steel, radius, wire, turns);
    this.owned.push(coil.object.geometry);
    this.add(coil.object, (corner) => coil.place(...seats(corner)));
    this.key(SPRING_KEY, coil.object, 'steel');
  }

  finish(): CornerModel {
    const { object, places, keyed, owned, materials } = this;
    return {
      object,
      place: (corner) => places.forEach((place) => place(corner)),
      hold: (keys) => {
        for (const { key, mesh, finish } of keyed) mesh.material = materials.finish[keys.includes(key) ? 'blued' : finish];
      },
      dispose: () => owned.forEach((geometry) => geometry.dispose()),
    };
  }
}
