import { fitterWordsOfSides, settingOf, type AdjusterDocument, type AxleName, type CarDocument } from '../../../geometry/index';
import { setupDifference } from '../../setups/setupDifference';
import type { Compared } from '../../state/compared';
import { setupNamed } from '../../state/settings';
import { mmPerFileUnit } from '../../units/fileLength';
import type { UnitChoice } from '../../units/unitChoice';
import { labelOf, pivotToBoltOf } from '../answers/turnedParts';

/** How a part stands in one setup. */
export interface PartStands {
  readonly adjuster: AdjusterDocument;
  readonly left: number | null;
  readonly right: number | null;
  readonly words: string;
  readonly detail: string;
  readonly mm: number;
  readonly pivotToBolt: number | undefined;
}

/** A part that does not stand alike in all setups. */
export interface SettingRow {
  readonly axle: AxleName;
  readonly name: string;
  readonly label: string;
  /** the setup on the bench first; null where that car has no such part */
  readonly stands: readonly (PartStands | null)[];
}

export interface SettingsCompared {
  readonly rows: readonly SettingRow[];
  /** parts that stand alike in all of them */
  readonly alike: readonly string[];
  /** what else differs, in sentences: "Front toe: set to 0.10°, was set to 0.05°" */
  readonly sentences: readonly { readonly against: string; readonly sentence: string }[];
}

type Setup = Pick<Compared, 'document' | 'setup' | 'name'>;

const standsIn = ({ document, setup }: Setup, axle: AxleName, name: string, units: UnitChoice): PartStands | null => {
  const described = document[axle];
  const adjuster = described?.adjusters?.[name];
  if (!adjuster) return null;
  const of = setupNamed(document, setup);
  const value = { left: settingOf(of, axle, name, 'left'), right: settingOf(of, axle, name, 'right') };
  const mm = mmPerFileUnit(document);
  const pivotToBolt = pivotToBoltOf(described, adjuster);
  const { short, detail } = fitterWordsOfSides(adjuster, value, mm, units, pivotToBolt);
  return { adjuster, ...value, words: short, detail, mm, pivotToBolt };
};

const isAlike = (a: PartStands | null, b: PartStands | null): boolean =>
  (a === null) === (b === null) && (a?.left ?? null) === (b?.left ?? null) && (a?.right ?? null) === (b?.right ?? null);

const partsOf = (document: CarDocument): readonly (readonly [AxleName, string])[] =>
  (['front', 'rear'] as const).flatMap((axle) =>
    Object.keys(document[axle]?.adjusters ?? {}).map((name) => [axle, name] as const),
  );

/** How the parts of setups stand, those that differ first told apart from those that do not. */
export const settingsCompared = (setups: readonly Setup[], units: UnitChoice): SettingsCompared => {
  const [own, ...others] = setups;
  if (!own) return { rows: [], alike: [], sentences: [] };
  const rows = partsOf(own.document).map(([axle, name]): SettingRow => {
    const label = labelOf(own.document, axle, name);
    return { axle, name, label, stands: setups.map((setup) => standsIn(setup, axle, name, units)) };
  });
  const differs = ({ stands: [first = null, ...rest] }: SettingRow): boolean => rest.some((stand) => !isAlike(first, stand));
  const heads = rows.map(({ axle, label }) => `${axle} ${label}:`.toLowerCase());
  return {
    rows: rows.filter(differs),
    alike: rows.filter((row) => !differs(row)).map(({ label }) => label),
    sentences: others.flatMap(({ document, setup, name }) =>
      setupDifference(own.document, own.setup, document, setup, units)
        .filter((sentence) => !heads.some((head) => sentence.toLowerCase().startsWith(head)))
        .map((sentence) => ({ against: name, sentence })),
    ),
  };
};
