import type { AxleName } from '../car/document';
import { shownQuantity } from '../format/shownQuantity';
import { findReading } from '../readings/catalogue';
import { valueInContractUnits, type ReadingValue } from '../readings/contractUnits';
import { sweepAxle } from '../readings/readings';
import { assembleCar, type AssembledCar } from '../setup/assembleCar';
import type { CurvePlot, CurvesSection, NamedSetup, SheetCurve } from './sheet';
import { shownOn, type SheetCar } from './sheetCar';

/** Travel from standing either way that is drawn [mm]: the most that the axle can do. */
const STRETCHES = [60, 50, 40, 30, 20, 10] as const;
/** Positions of a curve; odd, so that its middle is where the car stands. */
const POSITIONS = 25;
/** The last decimals that the height of a plot is at least. */
const READABLE = 20;
const READINGS = ['toe', 'camber'] as const;

type Sides = Readonly<Record<'left' | 'right', readonly number[]>>;

const travelsOf = (reach: number): readonly number[] =>
  Array.from({ length: POSITIONS }, (_, index) => -reach + (2 * reach * index) / (POSITIONS - 1));

/** Readings of both sides over a stretch, in contract units; null where a position cannot be reached or is past a stop. */
const through = (car: AssembledCar, axle: AxleName, reach: number): Readonly<Record<(typeof READINGS)[number], Sides>> | null => {
  const rows = sweepAxle(
    car,
    axle,
    travelsOf(reach).map((travel) => ({ travel })),
  );
  const whole = rows.flatMap((row) =>
    row.ok && !row.value.warnings.some(({ code }) => code === 'travel-past-end') ? [row.value] : [],
  );
  if (whole.length < rows.length) return null;
  const of = (key: (typeof READINGS)[number]): Sides => {
    const { quantity } = findReading(key)!;
    const side = (name: 'left' | 'right'): readonly number[] =>
      whole.map((row) => Number(valueInContractUnits(row[name][key] as ReadingValue, quantity)));
    return { left: side('left'), right: side('right') };
  };
  return { toe: of('toe'), camber: of('camber') };
};

const plotOf = (
  car: SheetCar,
  axle: AxleName,
  key: (typeof READINGS)[number],
  reach: number,
  now: Sides,
  was: { readonly name: string; readonly sides: Sides } | null,
): CurvePlot | null => {
  const shown = shownOn(car, axle, key);
  if (shown === null) return null;
  const length = shownQuantity({ quantity: 'length', decimals: 0 }, { ...car.question.units, toeDiameter: null });
  const isSame = ({ left, right }: Sides): boolean =>
    left.every((value, index) => shown.format(value) === shown.format(right[index] ?? NaN));
  const curve = (of: SheetCurve['of'], name: string, values: readonly number[]): SheetCurve => ({
    of,
    name,
    values: values.map((value) => ({ value, said: shown.format(value) })),
  });
  const curvesOf = (sides: Sides, names: { readonly both: string; readonly left: string; readonly right: string }, of?: 'was') =>
    isSame(sides)
      ? [curve(of ?? 'both', names.both, sides.left)]
      : [curve(of ?? 'left', names.left, sides.left), curve(of ?? 'right', names.right, sides.right)];
  const before = was === null ? [] : curvesOf(was.sides, wasNames(was.name), 'was');
  const curves = [...before, ...curvesOf(now, { both: 'Left and right', left: 'Left', right: 'Right' })];
  const ends = curves.flatMap(({ values }) => values).sort((a, b) => a.value - b.value);
  const [lowest, highest] = [ends[0], ends.at(-1)];
  const entry = findReading(key);
  if (!lowest || !highest || !entry) return null;
  return {
    name: `${entry.name}, ${axle}`,
    unit: shown.unit,
    travels: travelsOf(reach).map((travel) => length.toShown(travel)),
    travelUnit: length.unit,
    curves,
    lowest,
    highest,
    span: READABLE * Number(`1e-${entry.decimals}`),
  };
};

const wasNames = (setup: string) => ({ both: setup, left: `${setup}, left`, right: `${setup}, right` });

const plotsOf = (car: SheetCar, axle: AxleName, was: { readonly name: string; readonly car: AssembledCar } | null) => {
  for (const reach of STRETCHES) {
    const now = through(car.assembled, axle, reach);
    if (now === null) continue;
    const then = was && through(was.car, axle, reach);
    return READINGS.flatMap(
      (key) => plotOf(car, axle, key, reach, now[key], was && then && { name: was.name, sides: then[key] }) ?? [],
    );
  }
  return [];
};

/** Toe and camber of the axles on the sheet through their travel, over those of the setup that is on the car now. */
export const curvesSection = (car: SheetCar, onCar: NamedSetup | null): CurvesSection | null => {
  const before = onCar === null || onCar.name === car.setup.name ? null : assembleCar(car.mechanism, onCar.setup);
  const was = before?.ok === true && onCar ? { name: onCar.name, car: before.value } : null;
  const plots = car.question.axles.flatMap((axle) => plotsOf(car, axle, was));
  if (plots.length === 0) return null;
  const drawn = new Set(plots.flatMap(({ curves }) => curves.map(({ of }) => of)));
  const words = [
    ...(drawn.has('left') ? ['left solid, right dashed'] : []),
    ...(drawn.has('was') && was ? [`${was.name} dotted`] : []),
  ];
  return { kind: 'curves', heading: 'Through the travel', note: ['bump to the right', ...words].join('; '), plots };
};
