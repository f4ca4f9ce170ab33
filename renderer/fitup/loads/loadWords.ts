import type { CaseLoads, LoadCase } from '../../../geometry/index';
import { formatNumber, formatShort } from '../../units/format';
import { shownMoment } from '../../units/shownMoment';
import { shownQuantity, withUnit, type ShownQuantity } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import { INVENTED } from './loadCaseEdits';
import type { LoadLine, RodUnderPush } from './loadLines';

/** Forces to a newton, as the command line has them. */
export const forcesIn = (units: ShownUnits): ShownQuantity => shownQuantity({ quantity: 'force', decimals: 0 }, units);
/** Moments from N·m. */
export const momentsIn = (units: ShownUnits): ShownQuantity => shownMoment(0, units);

/** One number of a line: pull and push have a sign, a size and a bending have none. */
export const valueWords = ({ what }: Pick<LoadLine, 'what'>, value: number | null, units: ShownUnits): string => {
  if (value === null) return '–';
  if (what === 'bending') return momentsIn(units).format(value);
  return what === 'axial' ? forcesIn(units).formatChange(value) : forcesIn(units).format(value);
};

export const lineUnit = ({ what }: Pick<LoadLine, 'what'>, units: ShownUnits): string =>
  what === 'bending' ? momentsIn(units).unit : forcesIn(units).unit;

/** "1.2 g to the right", "at rest", or that forces are given. */
export const byWords = ({ g }: Pick<LoadCase, 'g'>): string => {
  if (g === null) return 'by wheel';
  const [lateral, longitudinal] = g;
  const across = lateral === 0 ? [] : [`${formatShort(Math.abs(lateral))} g to the ${lateral > 0 ? 'left' : 'right'}`];
  const along =
    longitudinal === 0 ? [] : [`${formatShort(Math.abs(longitudinal))} g ${longitudinal > 0 ? 'forward' : 'braking'}`];
  return [...across, ...along].join(', ') || 'at rest';
};

/** Whether a case is the program's own, also when it stands in the file with nothing changed. */
export const isInvented = (one: LoadCase, notes: string | undefined): boolean => one.invented || notes === INVENTED;

/** What a rod under push is to giving way, in one sentence. */
export const pushWords = ({ push, case: name, gives, by, times, why }: RodUnderPush, units: ShownUnits): string => {
  const forces = forcesIn(units);
  const force = (newtons: number): string => withUnit(forces.format(newtons), forces.unit);
  const most = push > 0 ? `pushed by ${force(push)} at most, in ${name}` : 'never pushed in these cases';
  if (why !== null) return `${most}; not known when it gives way: ${why}`;
  if (gives === null || by === null) return most;
  const way = by === 'euler' ? 'buckles (Euler, straight, pinned)' : 'yields';
  const factor = times === null ? '' : `: ${formatNumber(times, times < 10 ? 1 : 0)} times`;
  return `${most}; ${way} at ${force(gives)}${factor}`;
};

/** How well the bodies are in balance, of all cases the worst: "2e−16 of the load". */
export const residualWords = (cases: readonly CaseLoads[]): string =>
  `${Math.max(0, ...cases.map(({ residual }) => residual))
    .toExponential(0)
    .replace('-', '\u2212')} of the load`;

/** What carries one wheel in a case, and how much of it is the spring's own. */
export const carriedWords = ({ by, total, own, beyond }: CaseLoads['carried'][number], units: ShownUnits): string => {
  const forces = forcesIn(units);
  const force = (newtons: number): string => withUnit(forces.format(newtons), forces.unit);
  const where = by === 'held' ? 'held at the wheel centre with' : `carried along the ${by} with`;
  const parts = own === null || beyond === null ? '' : `: ${force(own)} of its own, ${force(beyond)} beyond`;
  return `${where} ${force(total)}${parts}`;
};
