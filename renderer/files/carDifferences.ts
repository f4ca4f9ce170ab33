import { setupNames, type AdjusterDocument, type AxleName, type CarDocument } from '../../geometry/index';
import { fitterWords, nameOfKey } from '../adjusters/fitterWords';
import { wayToKnown } from '../state/copiedFrom';
import { isSameDocument } from '../state/sameDocument';
import { settingOf, setupNamed } from '../state/settings';
import type { ShownUnits } from '../units/unitChoice';
import { mmPerFileUnit } from '../units/fileLength';
import { amountWords } from '../setups/setupDifference';
import type { CopyNote } from './fileService';
import { questionWords } from './questionWords';

/** One thing that two versions of a car differ in. */
export interface CarDifference {
  readonly part: string;
  /** where: the setup, or the section of the file */
  readonly where: string;
  readonly before: string;
  readonly after: string;
  /** the part itself, where it can be drawn */
  readonly drawn?: { readonly adjuster: AdjusterDocument; readonly before: number | null; readonly after: number | null };
}

/** What a copy tells of its setups beside the car itself. */
type Told = Pick<CopyNote, 'against' | 'copies'>;

const AXLES: readonly AxleName[] = ['front', 'rear'];

/** A value of the file in a few characters. */
const textOf = (value: unknown): string => {
  if (value === undefined) return 'nothing';
  const text = typeof value === 'string' ? value : JSON.stringify(value);
  return text.length <= 40 ? text : `${text.slice(0, 39)}…`;
};

const isObject = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Leaves that differ; lists are told whole. */
const leaves = (before: unknown, after: unknown, path: readonly string[]): readonly CarDifference[] => {
  if (Object.is(before, after)) return [];
  if (isObject(before) && isObject(after)) {
    const keys = [...new Set([...Object.keys(before), ...Object.keys(after)])];
    return keys.flatMap((key) => leaves(before[key], after[key], [...path, key]));
  }
  if (JSON.stringify(before) === JSON.stringify(after)) return [];
  const [part, ...above] = [...path].reverse();
  return [
    {
      part: nameOfKey(part ?? 'car'),
      where: above.reverse().map(nameOfKey).join(', '),
      before: textOf(before),
      after: textOf(after),
    },
  ];
};

interface Origin {
  /** a setup of the saved car */
  readonly name: string;
  /** "Trial 1, new, from Baseline": of which it is told as far as that is known */
  readonly where: string;
}

/**
 * The setup of the saved car that one of the changed car is held against: of its name; else the one that it was begun as a copy
 * of, over others that are new as well; else another one, and then it is not said to be made from that.
 */
const originOf = (saved: CarDocument, setup: string, { against, copies = {} }: Told): Origin | null => {
  const names = setupNames(saved);
  const way = wayToKnown(setup, names, copies);
  const known = way?.at(-1);
  if (known === setup) return { name: setup, where: setup };
  if (way && known !== undefined) return { name: known, where: [`${setup}, new`, ...way.slice(1)].join(', from ') };
  const other = [against, saved.onCar, names[0]].find((name) => name !== undefined && names.includes(name));
  return other === undefined ? null : { name: other, where: `${setup}, new, beside ${other}` };
};

const settingsOf = (
  saved: CarDocument,
  changed: CarDocument,
  setup: string,
  { name: origin, where }: Origin,
  units: ShownUnits,
): readonly CarDifference[] => {
  const [before, after] = [setupNamed(saved, origin), setupNamed(changed, setup)];
  return AXLES.flatMap((axle) => {
    const settings = Object.entries(changed[axle]?.adjusters ?? {}).flatMap(([name, adjuster]) => {
      const label = adjuster.label ?? nameOfKey(name);
      const of = (side: 'left' | 'right') => [settingOf(before, axle, name, side), settingOf(after, axle, name, side)] as const;
      const words = (value: number | null): string => fitterWords(adjuster, value, mmPerFileUnit(changed), units).short;
      const told = ([from, to]: readonly [number | null, number | null], side: string): readonly CarDifference[] =>
        // set to nothing and not set are one to the fitter
        from === to || ((from === null || to === null) && words(from) === words(to))
          ? []
          : [{ part: label + side, where, before: words(from), after: words(to), drawn: { adjuster, before: from, after: to } }];
      const [left, right] = [of('left'), of('right')];
      const isBoth = left[0] === right[0] && left[1] === right[1];
      return isBoth ? told(left, '') : [...told(left, ', left'), ...told(right, ', right')];
    });
    const [old, now] = [withoutSides(before[axle]), withoutSides(after[axle])];
    const rest = [...new Set([...Object.keys(old), ...Object.keys(now)])].flatMap((key) =>
      leaves(old[key], now[key], [key]).map((told): CarDifference => {
        const [was, is] = [amountWords(key, old[key], saved, axle, units), amountWords(key, now[key], changed, axle, units)];
        return { ...told, ...(was !== null && is !== null && { before: was, after: is }), where: `${where}, ${axle}` };
      }),
    );
    return [...settings, ...rest];
  });
};

const withoutSides = (entries: object = {}): Readonly<Record<string, unknown>> =>
  Object.fromEntries(Object.entries(entries).filter(([key]) => !['both', 'left', 'right'].includes(key)));

/** Questions that the file keeps, as sentences; what no sentence says of a question is told as it stands. */
const questionsOf = (saved: CarDocument, changed: CarDocument, units: ShownUnits): readonly CarDifference[] => {
  const [before, after] = [saved.questions ?? {}, changed.questions ?? {}];
  const where = 'Questions';
  return [...new Set([...Object.keys(after), ...Object.keys(before)])].flatMap((part): readonly CarDifference[] => {
    const [old, now] = [before[part], after[part]];
    const was = old === undefined ? 'nothing' : questionWords(saved, old, units);
    const is = now === undefined ? 'deleted' : questionWords(changed, now, units);
    if (was !== is) return isSameDocument(old, now) ? [] : [{ part, where, before: was, after: is }];
    return leaves(old, now, [where, part]);
  });
};

/**
 * Everything in which a changed car differs from the saved one: settings of setups first, in the fitter's words and the units that
 * are read; the rest as it stands in the file, in the file's.
 */
export const carDifferences = (
  saved: CarDocument,
  changed: CarDocument,
  known: Told,
  units: ShownUnits,
): readonly CarDifference[] => {
  const { setups: _savedSetups, questions: _savedQuestions, ...savedRest } = saved;
  const { setups: _changedSetups, questions: _changedQuestions, ...changedRest } = changed;
  const [savedNames, changedNames] = [setupNames(saved), setupNames(changed)];
  const settings = changedNames.flatMap((name) => {
    const origin = originOf(saved, name, known);
    if (origin === null) return [];
    const told = settingsOf(saved, changed, name, origin, units);
    if (savedNames.includes(name) || told.length > 0) return told;
    return [{ part: name, where: 'Setups', before: 'nothing', after: `new, as ${origin.name}` }];
  });
  const removed = savedNames
    .filter((name) => !changedNames.includes(name))
    .map((name) => ({ part: name, where: 'Setups', before: 'there', after: 'deleted' }));
  return [...settings, ...removed, ...questionsOf(saved, changed, units), ...leaves(savedRest, changedRest, [])];
};
