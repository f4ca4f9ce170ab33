import type { AxleDocument, AxleName, CarDocument } from '../../../geometry/index';
import type { BegunCar } from '../../state/begunCar';
import { TYPICAL_AXLES } from './typicalAxles';

/** The way to a car, in the order in which it is measured. Every step can be gone to at any time. */
export type StepName = 'layout' | 'points' | 'wheel' | 'spring' | 'adjusters' | 'limits';

export interface StepState {
  readonly name: StepName;
  readonly label: string;
  /** what is there, or what is missing */
  readonly note: string;
  readonly isDone: boolean;
}

const AXLES: readonly AxleName[] = ['front', 'rear'];

const axlesOf = (document: CarDocument): readonly (readonly [AxleName, AxleDocument])[] =>
  AXLES.flatMap((name) => {
    const axle = document[name];
    return axle ? [[name, axle] as const] : [];
  });

const isSame = (a: readonly number[] | undefined, b: readonly number[] | undefined): boolean =>
  a !== undefined && b !== undefined && a.every((value, index) => value === b[index]);

/** Whether a point still stands where the car began with it: it was not measured yet. */
export const isTypical = (begun: BegunCar | null | undefined, document: CarDocument, axle: AxleName, point: string): boolean =>
  (begun?.documents ?? []).some((first) => isSame(first[axle]?.points[point], document[axle]?.points[point]));

const layoutNote = ({ choice }: BegunCar): string =>
  AXLES.map((axle) => {
    const layout = choice[axle];
    return layout === null ? `no ${axle} axle` : TYPICAL_AXLES[layout].title.toLowerCase();
  }).join(', ');

const pointsNote = (begun: BegunCar, document: CarDocument): Omit<StepState, 'name' | 'label'> => {
  const names = axlesOf(document).flatMap(([name, axle]) => Object.keys(axle.points).map((point) => [name, point] as const));
  const typical = names.filter(([axle, point]) => isTypical(begun, document, axle, point)).length;
  return typical === 0
    ? { note: `${names.length} measured`, isDone: true }
    : { note: `${typical} of ${names.length} still typical`, isDone: false };
};

/** Something that is missing, and of which axle where the other one has it. */
interface Lacking {
  readonly part: string;
  readonly only: AxleName | null;
}

const missing = (lacking: readonly Lacking[], filled: string): Omit<StepState, 'name' | 'label'> => {
  const [first] = lacking;
  if (!first) return { note: filled, isDone: true };
  // what is missing of one axle alone is said of it once
  const isOne = lacking.every(({ only }) => only === first.only);
  const words = lacking.map(({ part, only }) => `no ${part}${only === null || isOne ? '' : ` at the ${only}`}`);
  return { note: `${isOne && first.only !== null ? `${first.only}: ` : ''}${words.join(', ')} yet`, isDone: false };
};

const counted = (count: number, what: string): Omit<StepState, 'name' | 'label'> => ({
  note: count === 0 ? 'none yet' : `${count} ${what}`,
  isDone: count > 0,
});

/** The six steps with what is in each and what is missing. */
export const stepsOf = (begun: BegunCar, document: CarDocument): readonly StepState[] => {
  const named = axlesOf(document);
  const axles = named.map(([, axle]) => axle);
  const lacks = (part: string, has: (axle: AxleDocument) => boolean): readonly Lacking[] => {
    const without = named.filter(([, axle]) => !has(axle));
    const [first] = without;
    return first ? [{ part, only: without.length === named.length ? null : first[0] }] : [];
  };
  return [
    { name: 'layout', label: 'Layout', note: layoutNote(begun), isDone: true },
    { name: 'points', label: 'Points', ...pointsNote(begun, document) },
    {
      name: 'wheel',
      label: 'Wheel and body',
      ...missing(
        [
          ...lacks('tyre width', ({ wheel }) => wheel.tyreWidth !== undefined),
          ...(document.body?.mass === undefined ? [{ part: 'mass', only: null }] : []),
        ],
        'filled',
      ),
    },
    {
      name: 'spring',
      label: 'Spring, damper, bar',
      ...missing(
        [
          ...lacks('rate', ({ spring }) => spring?.rate !== undefined),
          ...lacks('damper', ({ damper }) => damper !== undefined),
          ...lacks('bar', ({ antiRollBar }) => antiRollBar !== undefined),
        ],
        'filled',
      ),
    },
    {
      name: 'adjusters',
      label: 'Adjusters',
      ...counted(
        axles.reduce((sum, axle) => sum + Object.keys(axle.adjusters ?? {}).length, 0),
        'made',
      ),
    },
    { name: 'limits', label: 'Limits', ...counted(document.limits?.length ?? 0, 'set') },
  ];
};
