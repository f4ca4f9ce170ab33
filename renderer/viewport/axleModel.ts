import { Group } from 'three';
import type { AxleDocument, PlacedAxle, PlacedCorner, SideName } from '../../geometry/index';
import { wheelCutFor } from './camera';
import { CornerBuilder, type CornerModel } from './cornerBuilder';
import { addRodCorner, addStrutCorner, type StrutSizes } from './cornerModel';
import { placeShaft, shaftRadius, type PlacedShaft } from './driveShaft';
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
  readonly wheelRadius: number;
  readonly tyreWidth: number;
  readonly place: (placed: PlacedAxle, rack: number) => void;
  readonly show: (sides: readonly SideName[]) => void;
  /** without them what stands in the wheels is seen whole */
  readonly showWheels: (shown: boolean) => void;
  /** turns the wheels' cuts to the eye; says which wheels are seen flat on and are shown by their outline only */
  readonly cutFor: (eye: Point) => Readonly<Record<SideName, boolean>>;
  readonly hold: (keys: readonly string[]) => void;
  readonly dispose: () => void;
}

const SIDES: readonly SideName[] = ['left', 'right'];
const dot = (a: Point, b: Point): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];

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

/** The shaft between its joints: a housing on the body's side, a bell in the hub, boots on both. */
const addDriveShaft = (build: CornerBuilder, axle: AxleDocument, mm: number, side: SideName): void => {
  if (!axle.driveShaft) return;
  const radius = shaftRadius(axle, mm);
  const at = (corner: PlacedCorner): PlacedShaft =>
    placeShaft(axle, mm, side, corner) ?? { inner: corner.wheelCentre, inward: corner.spindle, outer: corner.wheelCentre };
  const ends = (corner: PlacedCorner, from: number, to: number): readonly [Point, Point] => {
    const { inner, outer } = at(corner);
    const length = separation(inner, outer);
    return [between(inner, outer, from / length), between(inner, outer, 1 - to / length)];
  };
  const key = rodKey('driveShaft');
  build.tube('steel', radius, (corner) => ends(corner, 0, 0), 1, key);
  build.tube('cast', 38, (corner) => [
    along(at(corner).inner, at(corner).inward, 56),
    along(at(corner).inner, at(corner).inward, -22),
  ]);
  build.tube('rubber', 36, (corner) => [ends(corner, 18, 0)[0], ends(corner, 96, 0)[0]], (radius + 5) / 36);
  build.tube('rubber', radius + 5, (corner) => [ends(corner, 0, 92)[1], ends(corner, 0, 22)[1]], 38 / (radius + 5));
  build.tube('cast', 41, (corner) => [along(at(corner).outer, corner.spindle, -24), along(at(corner).outer, corner.spindle, 26)]);
};

/** Half of the rack and half of the bar: each side of the car brings its own, so that one corner alone shows no end of the other. */
const addHalves = (
  build: CornerBuilder,
  axle: AxleDocument,
  side: SideName,
  now: () => PlacedAxle,
  rackAt: () => number,
): void => {
  const sense = side === 'left' ? 1 : -1;
  if (axle.steering) {
    const axis = direction([0, 0, 0], axle.steering.axis);
    const end = (): Point => now().rack?.[side] ?? [0, 0, 0];
    const centred = (): Point => along(end(), axis, -rackAt());
    /** a point of the housing, by its distance from the car's middle along the rack */
    const middle = (): Point => along(centred(), axis, -sense * Math.abs(dot(centred(), axis)));
    const housing = (): Point => along(centred(), axis, -sense * 105);
    build.tube('alloy', 25, () => [middle(), housing()]);
    build.tube('steel', 10, () => [along(housing(), axis, -sense * 20), end()]);
    build.tube('rubber', 25, () => [housing(), between(housing(), end(), 0.88)], 0.5);
    build.disc('alloy', 31, 14, () => [along(housing(), axis, -sense * 26), axis]);
  }
  if (axle.antiRollBar) {
    const pivot = (): Point => now()[side].bar?.pivot ?? [0, 0, 0];
    const other = (): Point => now()[side === 'left' ? 'right' : 'left'].bar?.pivot ?? [0, 0, 0];
    build.tube('steel', 11, () => [pivot(), between(pivot(), other(), 0.5)], 1, rodKey('bar'));
    build.disc('rubber', 19, 34, () => [between(pivot(), other(), 0.08), direction(pivot(), other())]);
  }
};

export const buildAxleModel = (axle: AxleDocument, first: PlacedAxle, mm: number, materials: Materials): AxleModel => {
  const object = new Group();
  object.matrixAutoUpdate = false;
  let latest = first;
  let rackNow = 0;
  let frame = groundFrame(first.ground);
  const sections = wheelSections(axle.wheel, mm);

  const build = (side: SideName): { readonly corner: CornerModel; readonly wheel: WheelModel; readonly object: Group } => {
    const builder = new CornerBuilder(materials);
    if (axle.layout === 'strut') addStrutCorner(builder, axle, strutSizes(axle, mm));
    else addRodCorner(builder, axle, damperTube(axle, first[side]));
    addHalves(
      builder,
      axle,
      side,
      () => latest,
      () => rackNow,
    );
    addDriveShaft(builder, axle, mm, side);
    const corner = builder.finish();
    const wheel = buildWheel(sections, brakeOf(axle, mm), materials);
    const both = new Group();
    both.add(corner.object, wheel.object);
    object.add(both);
    return { corner, wheel, object: both };
  };
  const sides = { left: build('left'), right: build('right') };

  let eye: Point = [1, 0, 0];
  let wheelsShown = true;
  const placeWheels = (): Readonly<Record<SideName, boolean>> => {
    const flat = { left: false, right: false };
    for (const side of SIDES) {
      const { wheelCentre, spindle } = latest[side];
      const centre = frame.toGround(wheelCentre);
      const cut = wheelCutFor([eye[0] - centre[0], eye[1] - centre[1], eye[2] - centre[2]]);
      sides[side].wheel.place(wheelCentre, spindle, cut);
      if (!wheelsShown) sides[side].wheel.object.visible = false;
      flat[side] = cut === 'outline';
    }
    return flat;
  };

  return {
    object,
    frame: () => frame,
    wheelRadius: sections.tyreRadius,
    tyreWidth: sections.width,
    place: (placed, rack) => {
      latest = placed;
      rackNow = rack;
      frame = groundFrame(placed.ground);
      const [x, y, z] = frame.rows;
      const at = frame.toGround([0, 0, 0]);
      object.matrix.set(x[0], x[1], x[2], at[0], y[0], y[1], y[2], at[1], z[0], z[1], z[2], at[2], 0, 0, 0, 1);
      object.matrixWorldNeedsUpdate = true;
      for (const side of SIDES) sides[side].corner.place(placed[side]);
      placeWheels();
    },
    show: (shown) => SIDES.forEach((side) => (sides[side].object.visible = shown.includes(side))),
    showWheels: (shown) => {
      wheelsShown = shown;
      placeWheels();
    },
    cutFor: (from) => {
      eye = from;
      return placeWheels();
    },
    hold: (keys) => SIDES.forEach((side) => sides[side].corner.hold(keys)),
    dispose: () => {
      for (const side of SIDES) {
        sides[side].corner.dispose();
        sides[side].wheel.dispose();
      }
    },
  };
};
