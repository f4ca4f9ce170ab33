import type { AxleDocument, PlacedCorner } from '../../geometry/index';
import type { CornerBuilder } from './cornerBuilder';
import { along, between, direction, type Point } from './points';
import { CLAMP_KEY, pointKey, rodKey, SPRING_KEY } from './partKeys';

/** Radii of drawn parts [mm]: what such parts measure on a car, where the file does not say. */
const ROD = 11;
const BUSH = 20;
const HUB_BOSS = 30;
const COIL = { radius: 56, wire: 7.5, turns: 6.5 } as const;

const pointOf = (corner: PlacedCorner, name: string): Point => corner.points[name] ?? corner.wheelCentre;

/** The boss of the knuckle inboard of the wheel, from which its arms go out. */
export const boss = (corner: PlacedCorner): Point => along(corner.wheelCentre, corner.spindle, -38);

const addHub = (build: CornerBuilder): void => {
  build.tube('cast', 42, (corner) => [
    along(corner.wheelCentre, corner.spindle, -52),
    along(corner.wheelCentre, corner.spindle, -4),
  ]);
  build.disc('steel', 66, 10, (corner) => [along(corner.wheelCentre, corner.spindle, 4), corner.spindle]);
};

/** An arm of the knuckle from its boss to a joint. */
const addKnuckleArm = (build: CornerBuilder, joint: (corner: PlacedCorner) => Point, reach = 13): void =>
  build.tube('cast', HUB_BOSS, (corner) => [boss(corner), joint(corner)], reach / HUB_BOSS);

/** A bushing in its bracket on the body. @param axis - of the bolt through it */
const addBodyPivot = (build: CornerBuilder, point: string, axis: (corner: PlacedCorner) => Point): void => {
  build.block([46, 40, 60], (corner) => along(pointOf(corner, point), [0, 0, 1], -16));
  build.disc('rubber', BUSH, 46, (corner) => [pointOf(corner, point), axis(corner)], pointKey(point));
  build.disc('zinc', 9, 62, (corner) => [pointOf(corner, point), axis(corner)], pointKey(point));
};

const addBar = (build: CornerBuilder): void => {
  build.tube('steel', 11, ({ bar, wheelCentre }) => (bar ? [bar.pivot, bar.armEnd] : [wheelCentre, wheelCentre]));
  build.ball('steel', 11, ({ bar, wheelCentre }) => bar?.pivot ?? wheelCentre);
  build.tube(
    'zinc',
    6,
    ({ bar, wheelCentre }) => (bar ? [bar.armEnd, bar.linkEnd] : [wheelCentre, wheelCentre]),
    1,
    rodKey('barLink'),
  );
  build.ball('zinc', 11, ({ bar, wheelCentre }) => bar?.armEnd ?? wheelCentre, rodKey('barLink'));
  build.ball('zinc', 11, ({ bar, wheelCentre }) => bar?.linkEnd ?? wheelCentre, rodKey('barLink'));
};

const addTieRod = (build: CornerBuilder, name: string, inner: string, outer: string): void => {
  const ends = (corner: PlacedCorner): readonly [Point, Point] => {
    const rod = corner.rods.find((one) => one.name === name);
    return rod ? [rod.inner, rod.outer] : [pointOf(corner, inner), pointOf(corner, outer)];
  };
  build.tube('steel', 8, ends, 1, rodKey(name));
  build.tube('zinc', 11.5, (corner) => [between(...ends(corner), 0.52), between(...ends(corner), 0.78)], 1, rodKey(name));
  build.ball('steel', 13, (corner) => ends(corner)[0], pointKey(inner));
  build.ball('steel', 15, (corner) => ends(corner)[1], pointKey(outer));
};

const addLowerArm = (build: CornerBuilder): void => {
  const arm = (corner: PlacedCorner): readonly [Point, Point, Point] => corner.arm ?? [boss(corner), boss(corner), boss(corner)];
  const hinge = (corner: PlacedCorner): Point => direction(arm(corner)[0], arm(corner)[1]);
  build.plate('cast', 12, (corner) => {
    const [front, rear, ball] = arm(corner);
    return [between(front, ball, 0.06), between(rear, ball, 0.06), between(between(front, rear, 0.5), ball, 0.94)];
  });
  build.tube('cast', 16, (corner) => [arm(corner)[0], arm(corner)[2]], 0.8);
  build.tube('cast', 16, (corner) => [arm(corner)[1], arm(corner)[2]], 0.8);
  addBodyPivot(build, 'armFront', hinge);
  addBodyPivot(build, 'armRear', hinge);
  build.ball('zinc', 19, (corner) => arm(corner)[2], pointKey('ballJoint'));
};

/** Sizes of a strut along its axis at design, from its foot [mm]. */
export interface StrutSizes {
  /** the tube's upper end */
  readonly tubeTop: number;
  readonly tubeRadius: number;
  /** lower spring seat; null without a spring on the strut */
  readonly seat: number | null;
}

const addStrut = (build: CornerBuilder, sizes: StrutSizes, clamp: boolean): void => {
  const axis = ({ strut }: PlacedCorner): Point => (strut ? direction(strut.foot, strut.top) : [0, 0, 1]);
  const fromFoot = (corner: PlacedCorner, by: number): Point => along(corner.strut?.foot ?? boss(corner), axis(corner), by);
  const fromTop = (corner: PlacedCorner, by: number): Point => along(corner.strut?.top ?? boss(corner), axis(corner), by);
  build.tube('steel', sizes.tubeRadius, (corner) => [fromFoot(corner, -62), fromFoot(corner, sizes.tubeTop)]);
  build.tube('zinc', 10, (corner) => [fromFoot(corner, sizes.tubeTop - 4), fromTop(corner, -6)]);
  build.disc('rubber', 40, 26, (corner) => [fromTop(corner, -16), axis(corner)]);
  build.disc('zinc', 60, 7, (corner) => [fromTop(corner, 2), [0, 0, 1]], pointKey('strutTop'));
  build.disc('zinc', 22, 26, (corner) => [fromTop(corner, 10), [0, 0, 1]], pointKey('strutTop'));
  build.disc('body', 112, 3, (corner) => [fromTop(corner, -4), [0, 0, 1]]);
  for (const at of [-1, 1]) {
    const stud = (corner: PlacedCorner): Point => along(along(fromTop(corner, 9), [1, 0, 0], 40 * at), [0, 1, 0], 26 * at);
    build.disc('steel', 7, 22, (corner) => [stud(corner), [0, 0, 1]]);
  }
  const { seat } = sizes;
  if (seat !== null) {
    build.disc('steel', 68, 6, (corner) => [fromFoot(corner, seat - 3), axis(corner)], SPRING_KEY);
    build.disc('steel', 64, 6, (corner) => [fromTop(corner, -34), axis(corner)]);
    build.coil(COIL.radius, COIL.wire, COIL.turns, (corner) => [fromFoot(corner, seat), fromTop(corner, -37)]);
  }
  build.tube('cast', 24, (corner) => [boss(corner), fromFoot(corner, -50)], 1);
  build.tube('cast', 30, (corner) => [fromFoot(corner, -58), fromFoot(corner, 28)]);
  for (const bolt of clamp ? ['clampUpper', 'clampLower'] : [])
    build.disc('zinc', 10, 84, (corner) => [pointOf(corner, bolt), [1, 0, 0]], bolt === 'clampLower' ? CLAMP_KEY : undefined);
};

/** The solids of a strut corner. */
export const addStrutCorner = (build: CornerBuilder, axle: AxleDocument, sizes: StrutSizes): void => {
  addHub(build);
  addLowerArm(build);
  addKnuckleArm(build, (corner) => pointOf(corner, 'ballJoint'));
  addKnuckleArm(build, (corner) => pointOf(corner, 'tieRodEnd'));
  addStrut(build, sizes, axle.points['clampLower'] !== undefined);
  addTieRod(build, 'tieRod', 'rackEnd', 'tieRodEnd');
  if (axle.antiRollBar) addBar(build);
};

const addRod = (build: CornerBuilder, name: string, [inner, outer]: readonly [string, string], hinge: Point): void => {
  const ends = (corner: PlacedCorner): readonly [Point, Point] => {
    const rod = corner.rods.find((one) => one.name === name);
    return rod ? [rod.inner, rod.outer] : [pointOf(corner, inner), pointOf(corner, outer)];
  };
  build.tube('cast', ROD, ends, 1, rodKey(name));
  build.block([44, 34, 52], (corner) => along(ends(corner)[0], [0, 0, 1], -12));
  build.disc('rubber', 18, 38, (corner) => [ends(corner)[0], hinge], pointKey(inner));
  build.disc('zinc', 8, 54, (corner) => [ends(corner)[0], hinge], pointKey(inner));
  build.disc('rubber', 17, 34, (corner) => [ends(corner)[1], hinge], pointKey(outer));
  build.disc('zinc', 8, 48, (corner) => [ends(corner)[1], hinge], pointKey(outer));
};

/** The three corners of a trailing arm's blade: its pivot, and where it is bolted to the knuckle above and below. */
export const bladeOf = (corner: PlacedCorner): readonly [Point, Point, Point] => {
  const hub = boss(corner);
  const pivot = corner.trailingArm?.pivot ?? hub;
  return [along(pivot, [0, 0, 1], 4), along(hub, [0, 0, 1], 58), along(hub, [0, 0, 1], -58)];
};

const addTrailingArm = (build: CornerBuilder, pivot: string): void => {
  const at = (corner: PlacedCorner): Point => corner.trailingArm?.pivot ?? pointOf(corner, pivot);
  build.plate('steel', 9, bladeOf);
  build.tube('steel', 20, (corner) => [at(corner), between(at(corner), boss(corner), 0.45)], 0.5);
  build.disc('rubber', 27, 52, (corner) => [at(corner), corner.trailingArm?.axis ?? [0, 1, 0]], pointKey(pivot));
  build.disc('zinc', 10, 70, (corner) => [at(corner), corner.trailingArm?.axis ?? [0, 1, 0]], pointKey(pivot));
  build.block([60, 30, 74], (corner) => along(at(corner), [0, 0, 1], 26));
};

const addSpring = (build: CornerBuilder): void => {
  const seats = ({ spring, wheelCentre }: PlacedCorner): readonly [Point, Point] =>
    spring ? [spring.lower, spring.upper] : [wheelCentre, wheelCentre];
  build.coil(COIL.radius, COIL.wire, COIL.turns, seats);
  build.disc('steel', 66, 6, (corner) => [seats(corner)[0], direction(...seats(corner))], SPRING_KEY);
  build.disc('body', 74, 14, (corner) => [along(seats(corner)[1], direction(...seats(corner)), 7), direction(...seats(corner))]);
};

/** A rod that carries the spring or the damper is an arm as wide as their seat. @param seat - what stands on it */
const addCarrierArm = (build: CornerBuilder, rod: string, seat: (corner: PlacedCorner) => Point): void => {
  const ends = (corner: PlacedCorner): readonly [Point, Point] => {
    const found = corner.rods.find(({ name }) => name === rod);
    return found ? [found.inner, found.outer] : [corner.wheelCentre, corner.wheelCentre];
  };
  const under = (corner: PlacedCorner): Point => along(seat(corner), [0, 0, 1], -8);
  build.plate(
    'cast',
    22,
    (corner) => [between(...ends(corner), 0.06), between(...ends(corner), 0.94), under(corner)],
    rodKey(rod),
  );
  build.tube('cast', 15, (corner) => [ends(corner)[0], under(corner)], 1, rodKey(rod));
  build.tube('cast', 15, (corner) => [under(corner), ends(corner)[1]], 1, rodKey(rod));
  build.disc('cast', 60, 10, (corner) => [under(corner), [0, 0, 1]], rodKey(rod));
};

const addDamper = (build: CornerBuilder, tube: number): void => {
  const ends = ({ damper, wheelCentre }: PlacedCorner): readonly [Point, Point] =>
    damper ? [damper.lower, damper.upper] : [wheelCentre, wheelCentre];
  build.tube('steel', 23, (corner) => [ends(corner)[0], along(ends(corner)[0], direction(...ends(corner)), tube)]);
  build.tube('zinc', 8, (corner) => ends(corner));
  build.ball('rubber', 17, (corner) => ends(corner)[0]);
  build.disc('rubber', 26, 26, (corner) => [ends(corner)[1], direction(...ends(corner))]);
  build.disc('body', 60, 8, (corner) => [along(ends(corner)[1], [0, 0, 1], 16), [0, 0, 1]]);
};

/** The solids of a corner of rods: five, or three and a trailing arm. @param tube - length of the damper's tube [mm] */
export const addRodCorner = (build: CornerBuilder, axle: AxleDocument, tube: number | null): void => {
  addHub(build);
  const steered = axle.steering?.rod;
  const outers = new Set<string>();
  for (const [name, ends] of Object.entries(axle.rods ?? {})) {
    if (name === steered) addTieRod(build, name, ends[0], ends[1]);
    else addRod(build, name, ends, [1, 0, 0]);
    outers.add(ends[1]);
  }
  for (const outer of outers) addKnuckleArm(build, (corner) => pointOf(corner, outer), 15);
  addWishbones(build, axle);
  if (axle.trailingArm) addTrailingArm(build, axle.trailingArm.pivot);
  if (axle.spring?.upper !== undefined) addSpring(build);
  const carrier = axle.spring?.lowerOn;
  if (axle.spring?.upper !== undefined && carrier !== undefined && axle.rods?.[carrier] && !isOnWishbone(axle, carrier))
    addCarrierArm(build, carrier, ({ spring, wheelCentre }) => spring?.lower ?? wheelCentre);
  if (tube !== null) addDamper(build, tube);
  if (axle.antiRollBar) addBar(build);
};

/** Whether a rod shares its outer point with another: then the two are one arm with a web of its own. */
const isOnWishbone = (axle: AxleDocument, rod: string): boolean =>
  Object.entries(axle.rods ?? {}).some(([name, ends]) => name !== rod && ends[1] === axle.rods?.[rod]?.[1]);

/** Two rods that share an outer point are one arm: its web is between them. */
const addWishbones = (build: CornerBuilder, axle: AxleDocument): void => {
  const rods = Object.values(axle.rods ?? {});
  rods.forEach(([inner, outer], index) => {
    const other = rods.slice(index + 1).find((rod) => rod[1] === outer);
    if (!other) return;
    build.plate('cast', 7, (corner) => [
      between(pointOf(corner, inner), pointOf(corner, outer), 0.35),
      between(pointOf(corner, other[0]), pointOf(corner, outer), 0.35),
      between(pointOf(corner, inner), pointOf(corner, outer), 0.97),
    ]);
  });
};
