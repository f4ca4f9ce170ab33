import type { Attitude, ClearanceAnswer, GroundRow, SideName } from '../../../geometry/index';
import type { Verdict } from '../../compute/limits';
import { nameOfKey } from '../../adjusters/fitterWords';
import type { PlainTable } from '../../lengths/lengthTables';
import type { ShownUnits } from '../../units/unitChoice';
import { lengthsIn } from './clearanceTable';

type OverGround = NonNullable<ClearanceAnswer['ground']>;

/** Attitudes by the head of their column, in order. */
export const ATTITUDES: readonly { readonly name: Attitude; readonly head: string; readonly meaning: string }[] = [
  { name: 'standing', head: 'Standing', meaning: 'Where the car stands' },
  { name: 'left-flat', head: 'Left flat', meaning: 'Both left tyres flat, the car on their rims' },
  { name: 'right-flat', head: 'Right flat', meaning: 'Both right tyres flat, the car on their rims' },
  { name: 'solid', head: 'Solid', meaning: 'Every damper at its end' },
];

const VERDICT_OF: Readonly<Record<GroundRow['verdict'], Verdict>> = {
  clear: 'within',
  close: 'close',
  short: 'broken',
  cuts: 'broken',
};

export const verdictOf = ({ verdict }: GroundRow): Verdict => VERDICT_OF[verdict];

/** The lowest point of a part in one attitude, over the setups. */
export interface GroundCell {
  readonly row: GroundRow;
  readonly verdict: Verdict;
  readonly height: string;
}

/** A part on one side, attitude by attitude; undefined where that was left out. */
export interface GroundLine {
  readonly key: string;
  readonly name: string;
  readonly side: SideName;
  readonly cells: readonly (GroundCell | undefined)[];
  /** of all its attitudes [mm] */
  readonly spare: number;
}

/** The attitudes that were looked at. */
export const attitudesOf = ({ stances }: OverGround): readonly (typeof ATTITUDES)[number][] =>
  ATTITUDES.filter(({ name }) => stances.some(({ attitude }) => attitude === name));

/** Parts by what they have to spare over the ground, the least first; of each attitude the setup in which it is lowest. */
export const groundLines = (ground: OverGround, units: ShownUnits): readonly GroundLine[] => {
  const { format } = lengthsIn(units);
  const attitudes = attitudesOf(ground);
  const lines = new Map<string, GroundRow[]>();
  for (const row of ground.rows) {
    const key = `${String(row.axle)}|${row.side}|${row.part}`;
    const known = lines.get(key);
    if (known) known.push(row);
    else lines.set(key, [row]);
  }
  return [...lines].map(([key, rows]) => {
    // the answer has the least spare first, so that the first of an attitude is its lowest
    const cells = attitudes.map(({ name }): GroundCell | undefined => {
      const row = rows.find(({ attitude }) => attitude === name);
      return row && { row, verdict: verdictOf(row), height: format(row.height) };
    });
    const [{ part, side, spare }] = rows as [GroundRow, ...GroundRow[]];
    return { key, name: nameOfKey(part), side, cells, spare };
  });
};

/** The table as it is copied and saved: every setup and attitude, full numbers. */
export const groundPlain = ({ rows }: OverGround, units: ShownUnits): PlainTable => {
  const { unit, toShown } = lengthsIn(units);
  const length = (name: string): string => `${name} [${unit}]`;
  return {
    heads: [
      'setup',
      'attitude',
      'axle',
      'side',
      'part',
      length('height'),
      length('needs'),
      length('spare'),
      'verdict',
      ...['x', 'y', 'z'].map(length),
    ],
    rows: rows.map(({ setup, attitude, axle, side, part, height, needs, spare, verdict, point }) => [
      setup,
      attitude,
      axle ?? '',
      side,
      part,
      toShown(height),
      toShown(needs),
      toShown(spare),
      verdict,
      ...point.map(toShown),
    ]),
  };
};
