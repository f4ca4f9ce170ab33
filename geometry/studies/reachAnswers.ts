import type { AxleDocument, AxleName, SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { stepScaleOf } from '../adjusters/stepScale';
import { readingsOfCar } from '../readings/readings';
import { assembleCar } from '../setup/assembleCar';
import { withAxleValue, withSetting } from '../setup/setupEdits';
import { carNumberNames, carNumbers, changesBetween, type Numbers } from './carNumbers';
import { NO_GAP, type WithGap } from './gapsOfRows';
import { valuesOf, type Question, type Variable } from './question';
import { share } from './rangeUsed';
import type { Candidate } from './ranking';
import { isMet, type Scored } from './score';
import { TrialMaker, withPointMoved } from './trial';

const AXLES = ['front', 'rear'] as const;

export interface ReachAnswerRow extends WithGap {
  /** of what may be moved, and the toe that is set after it, as in a setup, in the file's unit */
  readonly settings: SetupDocument;
  /** free points where they would be, as in the car file, in its unit */
  readonly points?: Readonly<Partial<Record<AxleName, Pick<AxleDocument, 'points' | 'right'>>>>;
  readonly score: number;
  readonly met: boolean;
  readonly wanted: Scored['wanted'];
  /** by adjuster, 0…1 of the way to the end of its range on that side; null for a bushing */
  readonly rangeUsed: Readonly<Record<string, number | null>>;
  /** of every other reading where the car stands, by dotted name */
  readonly changes: Numbers;
}

/** A candidate as it is answered: its settings, and what they do. */
export function answerOf(mechanism: CarMechanism, question: Question, { number, scored }: Candidate): ReachAnswerRow {
  const values = valuesOf(question, number);
  let settings: SetupDocument = {};
  const rangeUsed: Record<string, number | null> = {};
  question.variables.forEach((variable, index) => {
    const value = values[index];
    const used = rangeUsedOf(mechanism, variable, value);
    const name = usedName(question, variable);
    const before = rangeUsed[name];
    rangeUsed[name] = used === null ? null : Math.max(used, before ?? 0);
    if (variable.kind === 'adjuster') settings = withSetting(settings, variable.axle, variable.name, variable.side, value);
  });
  for (const axle of AXLES) {
    const setToe = question.toe[axle];
    if (setToe !== undefined) settings = withAxleValue(settings, axle, 'setToe', setToe);
  }
  const points = pointsOf(mechanism, question, values);
  const met = isMet(question, scored);
  return {
    settings,
    ...(points === null ? {} : { points }),
    score: scored.score,
    met,
    wanted: scored.wanted,
    rangeUsed,
    changes: changesOf(mechanism, question, values),
    ...NO_GAP,
  };
}

/** The adjuster's name, with its axle before it where both axles have one of that name in the question. */
function usedName({ variables }: Question, { axle, name }: Variable): string {
  return variables.some((other) => other.name === name && other.axle !== axle) ? `${axle}.${name}` : name;
}

function rangeUsedOf({ document }: CarMechanism, variable: Variable, value: number | null): number | null {
  if (variable.kind === 'point') return share(value ?? 0, variable.values[0] ?? 0, variable.values.at(-1) ?? 0);
  const adjuster = document[variable.axle]?.adjusters?.[variable.name];
  if (adjuster === undefined || adjuster.kind === 'offset-bushing') return null;
  const { min, max } = stepScaleOf(adjuster);
  return share(value ?? 0, min, max);
}

function pointsOf(
  mechanism: CarMechanism,
  question: Question,
  values: readonly (number | null)[],
): ReachAnswerRow['points'] | null {
  let { document } = mechanism;
  const moved: Partial<Record<AxleName, Pick<AxleDocument, 'points' | 'right'>>> = {};
  question.variables.forEach((variable, index) => {
    if (variable.kind !== 'point' || values[index] === 0) return;
    const { axle, name } = variable;
    document = withPointMoved(document, mechanism.mmPerUnit, variable, values[index] ?? 0);
    const described = document[axle];
    if (described === undefined) return;
    const known = moved[axle];
    const own = described.right?.points?.[name];
    const right = own === undefined ? known?.right : { points: { ...known?.right?.points, [name]: own } };
    moved[axle] = {
      points: { ...known?.points, [name]: described.points[name] },
      ...(right === undefined ? {} : { right }),
    };
  });
  return Object.keys(moved).length === 0 ? null : moved;
}

/** What else changes where the car stands, of every reading that was not asked for. */
function changesOf(mechanism: CarMechanism, question: Question, values: readonly (number | null)[]): Numbers {
  const asked = new Set(
    question.wanted.flatMap(({ axle, owners, entry }) =>
      owners.map((owner) => (axle === 'wholeCar' ? `wholeCar.${entry.key}` : `${axle}.${owner}.${entry.key}`)),
    ),
  );
  const names = carNumberNames(mechanism.document).filter(({ name }) => !asked.has(name));
  const trial = new TrialMaker(mechanism, question).make(values);
  const [now, then] = [assembleCar(mechanism, question.setup), assembleCar(trial.mechanism, trial.setup)];
  if (!now.ok || !then.ok) return {};
  return changesBetween(carNumbers(names, readingsOfCar(now.value)), carNumbers(names, readingsOfCar(then.value)));
}
