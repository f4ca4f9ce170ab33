import {
  assembleCar,
  fitterWords,
  resolveQuestion,
  settingOf,
  sideWords,
  toMechanism,
  type AdjusterDocument,
  type AssembledCar,
  type AxleName,
  type CarDocument,
  type QuestionDocument,
  type ReachAnswerRow,
} from '../../../geometry/index';
import { answeredSetup, withAnswerPoints } from '../../state/answeredSetup';
import { setupNamed } from '../../state/settings';
import { mmPerFileUnit } from '../../units/fileLength';
import type { UnitChoice } from '../../units/unitChoice';
import { labelOf, pivotToBoltOf } from '../answers/turnedParts';

const SIDES = ['left', 'right'] as const;
/** What is turned by less is not worth a word: hundredths are what is said. */
const NOTHING = 0.005;

/**
 * What sets the toe anew goes too, and by how much from where it stands: it is not among what was asked to be turned, and whoever
 * does the rest has to turn it all the same.
 */
export const toeTurns = (
  document: CarDocument,
  question: QuestionDocument,
  from: string,
  row: ReachAnswerRow,
  units: UnitChoice,
): readonly string[] => {
  if (question.setToe === false) return [];
  const before = setupNamed(document, from);
  const { axles } = resolveQuestion(toMechanism(document), question, before);
  const answer = { from, settings: row.settings, toeOn: axles, toe: question.setToe, points: row.points };
  const after = answeredSetup(document, answer);
  const now = assembleCar(toMechanism(document), before, axles);
  const then = assembleCar(toMechanism(withAnswerPoints(document, row.points)), after, axles);
  if (!now.ok || !then.ok) return [];
  return axles.flatMap((axle) => {
    const key = then.value[axle]?.toeReset?.adjuster;
    const adjuster = key === undefined ? undefined : document[axle]?.adjusters?.[key];
    if (key === undefined || !adjuster) return [];
    const [stood, stands] = [now.value, then.value].map((car) => settingsOf(car, axle, key));
    if (!stood || !stands || SIDES.every((side) => Math.abs(stands[side] - stood[side]) < NOTHING)) return [];
    const words = SIDES.map((side) => turnWords(document, axle, adjuster, stood[side], stands[side], units, side));
    return [`${labelOf(document, axle, key)} about ${sideWords(words[0] ?? '', words[1] ?? '')}`];
  });
};

const settingsOf = (car: AssembledCar, axle: AxleName, key: string): Readonly<Record<(typeof SIDES)[number], number>> => {
  const reset = car[axle]?.toeReset;
  const of = (side: (typeof SIDES)[number]): number =>
    reset?.adjuster === key ? reset[side] : (settingOf(car.setup, axle, key, side) ?? 0);
  return { left: of('left'), right: of('right') };
};

/**
 * What grows evenly is said by how far it goes, and where it comes to stand if it was not at zero; what turns in a slot by where
 * it comes to stand.
 */
const turnWords = (
  document: CarDocument,
  axle: AxleName,
  adjuster: AdjusterDocument,
  stood: number,
  stands: number,
  units: UnitChoice,
  side: (typeof SIDES)[number],
): string => {
  const isEven = adjuster.kind === 'turnbuckle' || adjuster.kind === 'slide' || adjuster.kind === 'perch';
  const say = (value: number): string =>
    fitterWords(adjuster, value, mmPerFileUnit(document), units, pivotToBoltOf(document[axle], adjuster), side).short;
  if (!isEven) return `to ${say(stands)}`;
  const [by, end] = [stands - stood, stands].map((value) => Math.round(value * 100) / 100) as [number, number];
  if (Math.abs(stood) < NOTHING) return say(by);
  return `${say(by)}, to ${end === 0 ? 'zero' : say(end)}`;
};
