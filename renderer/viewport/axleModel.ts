import { Group, type BufferGeometry, type Mesh } from 'three';
import type { AxleDocument, AxleName, PlacedAxle, PlacedCorner } from '../../geometry/index';
import { wheelCutFor, type Subject } from './camera';
import { buildRodCorner, buildStrutCorner, CornerBuilder, type CornerModel, type StrutSizes } from './cornerModel';
import { buildGround, type GroundModel } from './ground';
import { groundFrame, type GroundFrame } from './groundFrame';
import type { Materials } from './materials';
import { rodKey } from './partKeys';
import { along, between, direction, separation, type Point } from './points';
import { buildWheel, type BrakeDisc, type WheelModel } from './wheel';
import { wheelSections } from './wheelSection';

/** Everything solid of one axle of one car: built when the car or the axle changes, moved at every position. */
export interface AxleModel {
  readonly object: Group;
  /** the frame that the last position was placed in */
  readonly frame: () => GroundFrame;
  readonly subject: Subject;
  readonly place: (placed: PlacedAxle, rack: number) => void;
  /** turns the wheels' cuts to the eye; true where a wheel is seen flat on and shown by its outline only */
  readonly cutFor: (eye: Point) => boolean;
  readonly hold: (keys: readonly string[]) => void;
  readonly drawGround: () => void;
  readonly dispose: () => void;
}

const strutSizes = (axle: AxleDocument, mm: number): StrutSizes => {
  const [top, foot] = [axle.points['strutTop'], axle.points['strutFoot']];
  const length = top && foot ? separation(top, foot) * mm : 400;
  const tubeTop = axle.strutTube ? axle.strutTube.to * mm : 0.46 * length;
  const onStrut = axle.spring && axle.spring.upper === undefined;
  const installed = axle.spring?.installed === undefined ? 0.5 * length : axle.spring.installed * mm;
  const seat = Math.min(tubeTop - 6, Math.max(0.12 * length, length - 37 - installed));
  return { tubeTop, tubeRadius: axle.strutTube ? axle.strutTube.radius * mm : 25, seat: onStrut ? seat : null };
};

const brakeOf = (axle: AxleDocument, mm: number): BrakeDisc | null => {
  const disc = axle.brake?.disc;
  return disc ? { radius: disc.radius * mm, thickness: disc.thickness * mm, at: disc.at * mm } : null;
};

/** Length of a damper's tube: over half of it closed, so that the rod still shows when it is. */
const damperTube = (axle: AxleDocument, corner: PlacedCorner): number | null =>
  corner.damper && axle.damper?.upper !== undefined ? 0.55 * separation(corner.damper.upper, corner.damper.lower) : null;

const addRack = (build: CornerBuilder, axis: Point, rackAt: () => number, ends: () => readonly [Point, Point]): void => {
  const middle = (): readonly [Point, Point] => {
    const [left, right] = ends();
    const shift = -rackAt();
    return [along(left, axis, shift), along(right, axis, shift)];
  };
  const housing = (share: number): Point => {
    const [left, right] = middle();
    const inset = Math.min(0.3, 105 / Math.max(1, separation(left, right)));
    return between(left, right, share === 0 ? inset : 1 - inset);
  };
  build.tube('alloy', 25, () => [housing(0), housing(1)]);
  build.tube('steel', 10, () => ends());
  build.tube('rubber', 25, () => [housing(0), between(housing(0), ends()[0], 0.88)], 0.5);
  build.tube('rubber', 25, () => [housing(1), between(housing(1), ends()[1], 0.88)], 0.5);
};

export const buildAxleModel = (
  axleName: AxleName,
  axle: AxleDocument,
  first: PlacedAxle,
  mm: number,
  materials: Materials,
): AxleModel => {
  const object = new Group();
  const body = new Group();
  body.matrixAutoUpdate = false;
  object.add(body);
  let latest = first;
  let rackNow = 0;
  let frame = groundFrame(first.ground);

  const cornerOf = (corner: PlacedCorner): CornerModel =>
    axle.layout === 'strut'
      ? buildStrutCorner(axle, strutSizes(axle, mm), materials)
      : buildRodCorner(axle, damperTube(axle, corner), materials);
  const corners = { left: cornerOf(first.left), right: cornerOf(first.right) };
  const sections = wheelSections(axle.wheel, mm);
  const wheels: Record<'left' | 'right', WheelModel> = {
    left: buildWheel(sections, brakeOf(axle, mm), materials),
    right: buildWheel(sections, brakeOf(axle, mm), materials),
  };
  const shared = new CornerBuilder(materials);
  if (axle.steering) {
    const ends = (): readonly [Point, Point] => [latest.rack?.left ?? [0, 0, 0], latest.rack?.right ?? [0, 0, 0]];
    addRack(shared, direction([0, 0, 0], axle.steering.axis), () => rackNow, ends);
  }
  if (axle.antiRollBar) {
    shared.tube('steel', 11, () => [latest.left.bar?.pivot ?? [0, 0, 0], latest.right.bar?.pivot ?? [0, 0, 0]], 1, rodKey('bar'));
  }
  const sharedModel = shared.finish();
  body.add(corners.left.object, corners.right.object, wheels.left.object, wheels.right.object, sharedModel.object);

  const left = frame.toGround(first.left.contactCentre);
  const halfTrack = Math.abs(left[1] - frame.toGround(first.right.contactCentre)[1]) / 2;
  const ground: GroundModel = buildGround(axleName, left[0], halfTrack, sections.tyreRadius, materials);
  object.add(ground.object);
  const heights = Object.values(first.left.points).map((point) => frame.toGround(point)[2]);
  const subject: Subject = {
    axle: axleName,
    left: [left[0], left[1], 0],
    halfTrack,
    height: Math.max(2 * sections.tyreRadius, ...heights) + 30,
    wheelRadius: sections.tyreRadius,
  };

  let eye: Point = [1, 0, 0];
  const placeWheels = (): boolean => {
    let flat = false;
    for (const side of ['left', 'right'] as const) {
      const { wheelCentre, spindle } = latest[side];
      const centre = frame.toGround(wheelCentre);
      const cut = wheelCutFor([eye[0] - centre[0], eye[1] - centre[1], eye[2] - centre[2]]);
      wheels[side].place(wheelCentre, spindle, cut);
      if (side === 'left') flat = cut === 'outline';
    }
    return flat;
  };

  return {
    object,
    frame: () => frame,
    subject,
    place: (placed, rack) => {
      latest = placed;
      rackNow = rack;
      frame = groundFrame(placed.ground);
      const [x, y, z] = frame.rows;
      const at = frame.toGround([0, 0, 0]);
      body.matrix.set(x[0], x[1], x[2], at[0], y[0], y[1], y[2], at[1], z[0], z[1], z[2], at[2], 0, 0, 0, 1);
      body.matrixWorldNeedsUpdate = true;
      corners.left.place(placed.left);
      corners.right.place(placed.right);
      sharedModel.place(placed.left);
      placeWheels();
    },
    cutFor: (from) => {
      eye = from;
      return placeWheels();
    },
    hold: (keys) => {
      corners.left.hold(keys);
      corners.right.hold(keys);
      sharedModel.hold(keys);
    },
    drawGround: ground.draw,
    dispose: () => {
      ground.dispose();
      wheels.left.dispose();
      wheels.right.dispose();
      // Coils own their buffers; every other solid shares a unit shape.
      object.traverse((part) => {
        const geometry = (part as Partial<Mesh>).geometry as BufferGeometry | undefined;
        if (geometry?.index && geometry.getAttribute('uv') === undefined) geometry.dispose();
      });
    },
  };
};
