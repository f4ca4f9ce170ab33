import type { AxleDocument, AxleName, CarDocument, Triple } from '../../../geometry/index';
import type { GivenAxle, GivenPoint, LayoutName, NewCarChoice, UnfinishedCar } from '../../state/begunCar';
import { TYPICAL_AXLES } from './typicalAxles';

const NOTHING: GivenPoint = [null, null, null];
const MM_PER_INCH = 25.4;

/** Points that an axle closes without: the strut's clamp, and where a spring sits. */
const OPTIONAL = ['clampUpper', 'clampLower', 'springUpper', 'springLower'];

/** The points of a layout in its order; those with `isOptional` may be left out. */
export const pointsOfLayout = (layout: LayoutName): readonly { readonly name: string; readonly isOptional: boolean }[] =>
  Object.keys(TYPICAL_AXLES[layout].points).map((name) => ({ name, isOptional: OPTIONAL.includes(name) }));

const emptyAxle = (layout: LayoutName): GivenAxle => ({
  points: Object.fromEntries(pointsOfLayout(layout).map(({ name }) => [name, NOTHING])),
  camber: null,
  toe: null,
  loadedRadius: null,
});

/**
 * A car of these layouts of which nothing was given yet.
 * @param before - the same car with other layouts: an axle that keeps its own keeps what was given of it
 */
export const emptyCar = (choice: NewCarChoice, before: UnfinishedCar | null): UnfinishedCar => {
  const axleOf = (axle: AxleName): GivenAxle | null => {
    const layout = choice[axle];
    if (layout === null) return null;
    return (before?.choice[axle] === layout ? before[axle] : null) ?? emptyAxle(layout);
  };
  return { choice, front: axleOf('front'), rear: axleOf('rear') };
};

const isWhole = (point: GivenPoint): point is Triple => point.every((part) => part !== null);

/** Everything that has to be given still, as it is called on the page: "front ballJoint", "rear camber". */
export const missingOf = (car: UnfinishedCar): readonly string[] =>
  (['front', 'rear'] as const).flatMap((name) => {
    const [layout, axle] = [car.choice[name], car[name]];
    if (layout === null || !axle) return [];
    const points = pointsOfLayout(layout).filter(({ name: point, isOptional }) => {
      const given = axle.points[point] ?? NOTHING;
      // one that was begun is to be finished
      return !isWhole(given) && (!isOptional || given.some((part) => part !== null));
    });
    const stance = (['camber', 'toe', 'loadedRadius'] as const).filter((key) => axle[key] === null);
    return [...points.map((point) => `${name} ${point.name}`), ...stance.map((key) => `${name} ${WORDS[key]}`)];
  });

export const WORDS = { camber: 'camber', toe: 'toe', loadedRadius: 'loaded radius' } as const;

/** How many points were given whole, and of how many, those that may be left out among them only where they were given. */
export const countGiven = (car: UnfinishedCar): { readonly given: number; readonly of: number } => {
  const all = (['front', 'rear'] as const).flatMap((name) => {
    const layout = car.choice[name];
    return layout === null
      ? []
      : pointsOfLayout(layout).map(({ name: point, isOptional }) => ({
          isOptional,
          isGiven: isWhole(car[name]?.points[point] ?? NOTHING),
        }));
  });
  return {
    given: all.filter(({ isGiven }) => isGiven).length,
    of: all.filter(({ isOptional, isGiven }) => isGiven || !isOptional).length,
  };
};

const axleDocument = (layout: LayoutName, axle: AxleName, given: GivenAxle, per: number): AxleDocument => {
  const { layout: kind, rods, trailingArm, steered, spring } = TYPICAL_AXLES[layout];
  const inUnit = (mm: number): number => Number((mm / per).toFixed(9));
  const whole = Object.entries(given.points).flatMap(([name, point]) => (isWhole(point) ? [[name, point] as const] : []));
  const points = Object.fromEntries(whole.map(([name, [x, y, z]]) => [name, [inUnit(x), inUnit(y), inUnit(z)] as const]));
  const { camber, toe, loadedRadius } = given;
  const wheel = {
    ...(camber !== null && { camber }),
    ...(toe !== null && { toe }),
    ...(loadedRadius !== null && { loadedRadius: inUnit(loadedRadius) }),
  };
  const hasSpring = 'springUpper' in points && 'springLower' in points;
  return {
    layout: kind,
    points,
    ...(rods ? { rods } : {}),
    ...(trailingArm ? { trailingArm } : {}),
    wheel: wheel as AxleDocument['wheel'],
    ...(axle === 'front' ? { steering: { axis: [0, 1, 0] as const, ...(rods ? { rod: steered } : {}) } } : {}),
    ...(hasSpring && spring ? { spring } : {}),
  };
};

/**
 * The car of what was given, and of nothing else: what is missing is missing in it, and a fault by the rules of the file. How
 * the points are joined comes from the layout; the rack, and the pivot of a trailing arm, lie across the car.
 */
export const documentOfGiven = (car: UnfinishedCar): CarDocument => {
  const { choice } = car;
  const per = choice.unit === 'in' ? MM_PER_INCH : 1;
  const of = (axle: AxleName): Partial<CarDocument> => {
    const [layout, given] = [choice[axle], car[axle]];
    return layout === null || !given ? {} : { [axle]: axleDocument(layout, axle, given, per) };
  };
  return {
    format: 'jounce-car',
    version: 1,
    name: choice.name,
    units: { length: choice.unit },
    ...of('front'),
    ...of('rear'),
    setups: { Baseline: {} },
  };
};
