import type {
  AdjusterDocument,
  AntiRollBarDocument,
  AxleDocument,
  CarDocument,
  DamperDocument,
  SetupAxleDocument,
  SetupDocument,
  SideSettings,
  SpringDocument,
  Triple,
  WheelDocument,
} from '../../geometry/car/document';

/**
 * The same car written down in another way: another origin, another unit, another size, mirrored. What the random cars do not
 * have (parts, joints, measurements) is not turned here.
 */
interface Turn {
  readonly point: (at: Triple) => Triple;
  readonly length: (value: number) => number;
}

function mapValues<Value, Other>(
  record: Readonly<Record<string, Value>>,
  turn: (value: Value, name: string) => Other,
): Record<string, Other> {
  return Object.fromEntries(Object.entries(record).map(([name, value]) => [name, turn(value, name)]));
}

/** Turns the named keys of an object that are there. */
function at<Thing extends object>(thing: Thing, keys: readonly (keyof Thing)[], turn: (value: number) => number): Thing {
  const changed: Partial<Record<keyof Thing, unknown>> = {};
  for (const key of keys) if (thing[key] !== undefined) changed[key] = turn(thing[key] as number);
  return { ...thing, ...changed };
}

const turnWheel = <Wheel extends Partial<WheelDocument>>(wheel: Wheel, { length }: Turn): Wheel =>
  at(wheel, ['loadedRadius', 'tyreRadius', 'tyreWidth', 'rimDiameter', 'rimWidth'], length);

function turnAdjuster(adjuster: AdjusterDocument, { length }: Turn): AdjusterDocument {
  switch (adjuster.kind) {
    case 'slide':
      return { ...adjuster, range: [length(adjuster.range[0]), length(adjuster.range[1])], step: length(adjuster.step) };
    case 'eccentric-bolt':
    case 'clamp-eccentric':
      return { ...adjuster, throw: length(adjuster.throw) };
    case 'offset-bushing':
      return { ...adjuster, offset: length(adjuster.offset) };
    case 'turnbuckle':
    case 'perch':
      return { ...adjuster, perTurn: length(adjuster.perTurn) };
  }
}

function turnSpring(spring: SpringDocument, { length }: Turn): SpringDocument {
  const turned = at(spring, ['freeLength', 'installed', 'solidLength'], length);
  return spring.helper === undefined ? turned : { ...turned, helper: at(spring.helper, ['freeLength', 'solidLength'], length) };
}

const turnDamper = (damper: DamperDocument, { length }: Turn): DamperDocument =>
  at(damper, ['stroke', 'bumpStopAt', 'droopStopAt', 'open', 'closed'], length);

const turnBar = (bar: AntiRollBarDocument, { point }: Turn): AntiRollBarDocument => ({
  ...bar,
  pivot: point(bar.pivot),
  armEnd: point(bar.armEnd),
  linkEnd: point(bar.linkEnd),
  ...(bar.holes === undefined ? {} : { holes: bar.holes.map((hole) => ({ ...hole, armEnd: point(hole.armEnd) })) }),
});

function turnAxle(axle: AxleDocument, turn: Turn): AxleDocument {
  const { right, steering } = axle;
  const lock = steering?.travel;
  return {
    ...axle,
    points: mapValues(axle.points, turn.point),
    ...(right === undefined
      ? {}
      : {
          right: {
            ...(right.points === undefined ? {} : { points: mapValues(right.points, turn.point) }),
            ...(right.wheel === undefined ? {} : { wheel: turnWheel(right.wheel, turn) }),
          },
        }),
    wheel: turnWheel(axle.wheel, turn),
    ...(steering === undefined
      ? {}
      : {
          steering: {
            ...at(steering, ['perTurn'], turn.length),
            ...(lock === undefined
              ? {}
              : {
                  travel: typeof lock === 'number' ? turn.length(lock) : ([turn.length(lock[0]), turn.length(lock[1])] as const),
                }),
          },
        }),
    ...(axle.spring === undefined ? {} : { spring: turnSpring(axle.spring, turn) }),
    ...(axle.damper === undefined ? {} : { damper: turnDamper(axle.damper, turn) }),
    ...(axle.antiRollBar === undefined ? {} : { antiRollBar: turnBar(axle.antiRollBar, turn) }),
    ...(axle.heightAt === undefined ? {} : { heightAt: { ...axle.heightAt, point: turn.point(axle.heightAt.point) } }),
    ...(axle.adjusters === undefined ? {} : { adjusters: mapValues(axle.adjusters, (adjuster) => turnAdjuster(adjuster, turn)) }),
  };
}

function turnSetupAxle(setup: SetupAxleDocument, axle: AxleDocument, turn: Turn): SetupAxleDocument {
  const settings = (side: SideSettings): SideSettings =>
    mapValues(side, (value, name) => (value !== null && axle.adjusters?.[name]?.kind === 'slide' ? turn.length(value) : value));
  return {
    ...at(setup, ['rideHeight'], turn.length),
    ...(setup.both === undefined ? {} : { both: settings(setup.both) }),
    ...(setup.left === undefined ? {} : { left: settings(setup.left) }),
    ...(setup.right === undefined ? {} : { right: settings(setup.right) }),
    ...(setup.wheel === undefined ? {} : { wheel: turnWheel(setup.wheel, turn) }),
  };
}

function turnCar(car: CarDocument, turn: Turn): CarDocument {
  const axles = ['front', 'rear'] as const;
  const turned: { front?: AxleDocument; rear?: AxleDocument } = {};
  for (const name of axles) if (car[name] !== undefined) turned[name] = turnAxle(car[name], turn);
  const setups = mapValues(car.setups ?? {}, (setup): SetupDocument => {
    const parts: { front?: SetupAxleDocument; rear?: SetupAxleDocument } = {};
    for (const name of axles)
      if (setup[name] !== undefined && car[name] !== undefined) parts[name] = turnSetupAxle(setup[name], car[name], turn);
    return { ...setup, ...parts };
  });
  return {
    ...car,
    ...(car.body === undefined ? {} : { body: at(car.body, ['centreOfGravityHeight'], turn.length) }),
    ...(car.masses === undefined ? {} : { masses: car.masses.map((mass) => ({ ...mass, at: turn.point(mass.at) })) }),
    ...turned,
    setups,
  };
}

/** The origin of coordinates elsewhere on the middle plane: every point moves by (x, 0, z). */
export const withOriginMoved = (car: CarDocument, x: number, z: number): CarDocument =>
  turnCar(car, { point: (at) => [at[0] + x, at[1], at[2] + z], length: (value) => value });

const scaled = (factor: number): Turn => ({
  point: ([x, y, z]) => [x * factor, y * factor, z * factor],
  length: (value) => value * factor,
});

export const inInches = (car: CarDocument): CarDocument => ({ ...turnCar(car, scaled(1 / 25.4)), units: { length: 'in' } });

/** A model of the car, `factor` times as large; weights grow with lengths, so that springs stand alike. */
export function ofSize(car: CarDocument, factor: number): CarDocument {
  const model = turnCar(car, scaled(factor));
  const weight = (value: number): number => value * factor;
  return {
    ...model,
    ...(model.body === undefined ? {} : { body: at(model.body, ['mass', 'unsprungFront', 'unsprungRear'], weight) }),
    ...(model.masses === undefined ? {} : { masses: model.masses.map((mass) => ({ ...mass, mass: weight(mass.mass) })) }),
  };
}

const across = ([x, y, z]: Triple): Triple => [x, y === 0 ? 0 : -y, z];

function mirrorAxle(axle: AxleDocument): AxleDocument {
  const own = axle.right?.points ?? {};
  const { steering, wheel } = axle;
  const rightWheel = { ...wheel, ...axle.right?.wheel };
  return {
    ...axle,
    points: mapValues(axle.points, (at, name) => (own[name] === undefined ? at : across(own[name]))),
    right: { points: Object.fromEntries(Object.keys(own).map((name) => [name, across(axle.points[name])])), wheel },
    wheel: rightWheel,
    // the axis belongs to the car: mirrored it points to the right, so it is turned round, and the rack's sense with it
    ...(steering === undefined
      ? {}
      : { steering: { ...steering, axis: [-steering.axis[0], steering.axis[1], -steering.axis[2]] as const } }),
  };
}

function mirrorSetupAxle({ left, right, barHole, ...rest }: SetupAxleDocument): SetupAxleDocument {
  return {
    ...rest,
    ...(right === undefined ? {} : { left: right }),
    ...(left === undefined ? {} : { right: left }),
    ...(barHole === undefined
      ? {}
      : { barHole: typeof barHole === 'string' ? barHole : { left: barHole.right, right: barHole.left } }),
  };
}

/** The car as a mirror shows it: left is right. */
export function mirrored(car: CarDocument): CarDocument {
  const setups = mapValues(car.setups ?? {}, (setup): SetupDocument => ({
    ...setup,
    ...(setup.front === undefined ? {} : { front: mirrorSetupAxle(setup.front) }),
    ...(setup.rear === undefined ? {} : { rear: mirrorSetupAxle(setup.rear) }),
  }));
  return {
    ...car,
    ...(car.body === undefined ? {} : { body: { ...car.body, leftShare: 1 - (car.body.leftShare ?? 0.5) } }),
    ...(car.masses === undefined ? {} : { masses: car.masses.map((mass) => ({ ...mass, at: across(mass.at) })) }),
    ...(car.front === undefined ? {} : { front: mirrorAxle(car.front) }),
    ...(car.rear === undefined ? {} : { rear: mirrorAxle(car.rear) }),
    setups,
  };
}
