import {
  fitterWordsOfSides,
  nameOfKey,
  settingOf,
  type AdjusterDocument,
  type AxleDocument,
  type AxleName,
  type CarDocument,
  type SetupDocument,
} from '../../../geometry/index';
import { mmPerFileUnit } from '../../units/fileLength';
import type { UnitChoice } from '../../units/unitChoice';

/** A part as an answer leaves it. */
export interface TurnedPart {
  readonly axle: AxleName;
  readonly name: string;
  readonly label: string;
  readonly adjuster: AdjusterDocument;
  /** in the file's unit */
  readonly left: number | null;
  readonly right: number | null;
  /** what the fitter does */
  readonly words: string;
  readonly detail: string;
  readonly mm: number;
  readonly pivotToBolt: number | undefined;
}

/** Distance of the two bolts of a clamp eccentric, in the file's unit; undefined for any other part. */
export const pivotToBoltOf = (axle: AxleDocument | undefined, adjuster: AdjusterDocument): number | undefined => {
  if (adjuster.kind !== 'clamp-eccentric') return undefined;
  const [pivot, bolt] = [axle?.points[adjuster.pivot], axle?.points[adjuster.bolt]];
  if (!pivot || !bolt) return undefined;
  return Math.hypot(pivot[0] - bolt[0], pivot[1] - bolt[1], pivot[2] - bolt[2]);
};

/** What a part is called on the screen. */
export const labelOf = (document: CarDocument, axle: AxleName, name: string): string =>
  document[axle]?.adjusters?.[name]?.label ?? nameOfKey(name);

/**
 * The parts that a few settings turn, in the order of the file.
 * @param settings - of an answer: what it turns only
 */
export const turnedParts = (document: CarDocument, settings: SetupDocument, units: UnitChoice): readonly TurnedPart[] => {
  const mm = mmPerFileUnit(document);
  return (['front', 'rear'] as const).flatMap((axle) => {
    const described = document[axle];
    const entries = settings[axle];
    const named = new Set([entries?.both, entries?.left, entries?.right].flatMap((side) => Object.keys(side ?? {})));
    return Object.entries(described?.adjusters ?? {}).flatMap(([name, adjuster]): readonly TurnedPart[] => {
      if (!named.has(name)) return [];
      const [left, right] = [settingOf(settings, axle, name, 'left'), settingOf(settings, axle, name, 'right')];
      const pivotToBolt = pivotToBoltOf(described, adjuster);
      const oneSide =
        entries?.both?.[name] === undefined && (entries?.left?.[name] === undefined || entries.right?.[name] === undefined);
      const given = entries?.left?.[name] === undefined ? right : left;
      const value = oneSide ? { left: given, right: given } : { left, right };
      const { short, detail } = fitterWordsOfSides(adjuster, value, mm, units, pivotToBolt);
      const label = labelOf(document, axle, name);
      return [{ axle, name, label, adjuster, left: value.left, right: value.right, words: short, detail, mm, pivotToBolt }];
    });
  });
};
