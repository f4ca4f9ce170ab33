import { setupNames, type AxleDocument, type CarDocument, type SetupAxleDocument, type Triple } from '../../geometry/index';

/** Exact by the international yard and pound agreement of 1959. */
const MM_PER_INCH = 25.4;
const inch = (mm: number): number => mm / MM_PER_INCH;
const inchPoint = ([x, y, z]: Triple): Triple => [inch(x), inch(y), inch(z)];

type Fields = Readonly<Record<string, unknown>>;

/** The lengths of an object by key: numbers, pairs and points of them. Everything else stays. */
function inchFields<Part extends object>(part: Part, keys: readonly string[]): Part {
  const converted = Object.entries(part as Fields).map(([key, value]) => {
    if (!keys.includes(key)) return [key, value];
    return [key, Array.isArray(value) ? (value as number[]).map(inch) : inch(value as number)];
  });
  return Object.fromEntries(converted) as Part;
}

const inchPoints = (points: Readonly<Record<string, Triple>>): Record<string, Triple> =>
  Object.fromEntries(Object.entries(points).map(([name, point]) => [name, inchPoint(point)]));

const WHEEL = [
  'loadedRadius',
  'tyreRadius',
  'tyreWidth',
  'rimDiameter',
  'rimWidth',
  'toeDiameter',
  'shoulderRadius',
  'growth',
  'sideDeflection',
];
const DAMPER = ['stroke', 'bumpStopAt', 'droopStopAt', 'open', 'closed'];
const SPRING = ['freeLength', 'installed', 'solidLength'];
const BAR = ['pivot', 'armEnd', 'linkEnd'];

function inchAxle(axle: AxleDocument): AxleDocument {
  const adjusters = Object.entries(axle.adjusters ?? {}).map(([name, adjuster]) => {
    switch (adjuster.kind) {
      case 'slide':
        return [name, inchFields(adjuster, ['range', 'step', 'shims'])] as const;
      case 'eccentric-bolt':
      case 'clamp-eccentric':
        return [name, inchFields(adjuster, ['throw'])] as const;
      case 'offset-bushing':
        return [name, inchFields(adjuster, ['offset'])] as const;
      // the range and step of these count turns
      case 'turnbuckle':
      case 'perch':
        return [name, inchFields(adjuster, ['perTurn'])] as const;
    }
  });
  const { right, steering, spring, damper, antiRollBar } = axle;
  return {
    ...inchFields(axle, ['travel']),
    points: inchPoints(axle.points),
    wheel: inchFields(axle.wheel, WHEEL),
    ...(right && {
      right: {
        ...(right.points && { points: inchPoints(right.points) }),
        ...(right.wheel && { wheel: inchFields(right.wheel, WHEEL) }),
      },
    }),
    ...(steering && { steering: inchFields(steering, ['travel', 'perTurn']) }),
    ...(spring && { spring: inchFields(spring, SPRING) }),
    ...(damper && { damper: inchFields(damper, DAMPER) }),
    ...(antiRollBar && { antiRollBar: inchFields(antiRollBar, BAR) }),
    ...(axle.adjusters && { adjusters: Object.fromEntries(adjusters) }),
  };
}

function inchSetupAxle(setup: SetupAxleDocument, axle: AxleDocument): SetupAxleDocument {
  const slides = Object.entries(axle.adjusters ?? {}).flatMap(([name, { kind }]) => (kind === 'slide' ? [name] : []));
  const { both, left, right } = setup;
  return {
    ...inchFields(setup, ['rideHeight']),
    ...(both && { both: inchFields(both, slides) }),
    ...(left && { left: inchFields(left, slides) }),
    ...(right && { right: inchFields(right, slides) }),
    ...(setup.wheel && { wheel: inchFields(setup.wheel, WHEEL) }),
  };
}

/** The same car with every length of its file in inches, for files that hold what the reference cars hold. */
export function inInches(car: CarDocument): CarDocument {
  const setups = setupNames(car).map((name) => {
    const setup = car.setups![name];
    const axles = (['front', 'rear'] as const).flatMap((axle) =>
      setup[axle] ? [[axle, inchSetupAxle(setup[axle], car[axle]!)] as const] : [],
    );
    return [name, { ...setup, ...Object.fromEntries(axles) }] as const;
  });
  return {
    ...car,
    units: { length: 'in' },
    ...(car.body && { body: inchFields(car.body, ['centreOfGravityHeight']) }),
    ...(car.front && { front: inchAxle(car.front) }),
    ...(car.rear && { rear: inchAxle(car.rear) }),
    setups: Object.fromEntries(setups),
  };
}
