import {
  linkLoads,
  loadCaseOfG,
  loadCases,
  suggest,
  type AssembledCar,
  type AxleName,
  type CaseLoads,
  type LinkLoad,
  type LinkLoads,
  type LoadCase,
} from '../../geometry/index';
import type { Answer, Call } from './answer';
import { LOAD_CAUTIONS } from './cautions';
import { CommandError, errorOfFailure, usageError } from './commandError';
import { loadsInWords } from './loadsTable';
import type { Options } from './options';
import { askedPosition, assembledSetup, axlesAsked, titleOf } from './question';

const UNITS = { length: 'mm', angle: 'deg', force: 'N', moment: 'N·m' } as const;
const N_MM_PER_N_M = 1000;

/** `loads`: what every link carries in every case. */
export async function answer({ car, options }: Call): Promise<Answer> {
  if (!car) throw usageError('a car is needed');
  const position = askedPosition(options);
  const axles = axlesAsked(car, options);
  const { name: setup, assembled } = assembledSetup(car, options.setup, options.set);
  const answered = linkLoads(assembled, casesAsked(assembled, options), position, axles);
  if (!answered.ok) throw new CommandError(errorOfFailure(answered.failure));
  const { travel = 0, rack = 0, roll = 0 } = options;
  const document = {
    car: car.document.name,
    setup,
    units: UNITS,
    at: { travel, rack, roll },
    ...inContract(answered.value, axles),
    notes: LOAD_CAUTIONS,
    warnings: answered.value.warnings,
  };
  const title = `${titleOf(car, setup, options)}: loads in the links`;
  return { document, words: (style) => loadsInWords(title, answered.value, options, style) };
}

/** The case by its name or by accelerations; all of the file's, or the program's own, when neither is asked for. */
function casesAsked(assembled: AssembledCar, { case: named, g }: Options): readonly LoadCase[] {
  if (named !== undefined && g !== undefined) throw usageError('--case and --g are two cases: ask for one of them');
  if (g !== undefined) return [loadCaseOfG(assembled, 'Given', g)];
  const cases = loadCases(assembled);
  if (named === undefined) return cases;
  const chosen = cases.filter(({ name }) => name === named);
  if (chosen.length > 0) return chosen;
  const names = cases.map(({ name }) => name);
  const hint = suggest(named, names);
  throw usageError(`there is no case "${named}"; there are ${names.join(', ')}${hint === null ? '' : `; ${hint}`}`);
}

const inContract = ({ cases }: LinkLoads, axles: readonly AxleName[]): object => ({
  cases: cases.map((one) => {
    const { name, invented, g, rule, remarks } = one.case;
    return {
      name,
      invented,
      g,
      rule,
      remarks,
      given: givenOf(one.case, axles),
      rows: one.rows.map(rowOf),
      carried: carriedOf(one),
      residual: one.residual,
    };
  }),
});

/** Loads of a case as a car file would give them. */
function givenOf(one: LoadCase, axles: readonly AxleName[]): object {
  const wheels = axles.flatMap((axle) => {
    const both = one[axle];
    if (both === null) return [];
    const of = (side: 'left' | 'right'): object => ({ ...both[side], Mz: both[side].Mz / N_MM_PER_N_M });
    return [[axle, { left: of('left'), right: of('right') }] as const];
  });
  return Object.fromEntries(wheels);
}

const turningInContract = (moment: readonly number[] | null): readonly number[] | null =>
  moment === null ? null : moment.map((value) => value / N_MM_PER_N_M);

function rowOf({ axle, side, link, kind, axial, ends, bending, buckling, why }: LinkLoad): object {
  return {
    axle,
    side,
    link,
    kind,
    axial,
    ends: ends.map((end) => ({ ...end, moment: turningInContract(end.moment) })),
    bending: bending === null ? null : { ...bending, moment: bending.moment / N_MM_PER_N_M },
    buckling:
      buckling === null
        ? null
        : { euler: buckling.euler, yield: buckling.yields, governs: buckling.governs, times: buckling.times },
    why,
  };
}

const carriedOf = ({ carried }: CaseLoads): object[] =>
  carried.map(({ axle, side, by, total, own, beyond, ratio }) => ({ axle, side, by, total, own, beyond, ratio }));
