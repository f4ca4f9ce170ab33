import { CATALOGUE, type CarDocument, type ReadingEntry, type ReadingOwner } from '../../../geometry/index';

export interface ReadingGroup {
  readonly label: string;
  readonly entries: readonly ReadingEntry[];
}

/** What is asked most, so that nobody has to look for it. */
const USUAL = [
  'camber',
  'toe',
  'caster',
  'rollCentreHeight',
  'bumpSteer',
  'mechanicalTrail',
  'scrubRadius',
  'bodyHeight',
  'track',
];

/** Readings that are one number, the usual ones first, then all of them under their headings. */
export const readingChoices = (owners: readonly ReadingOwner[]): readonly ReadingGroup[] => {
  const all = CATALOGUE.filter((entry) => entry.components === undefined && owners.includes(entry.of));
  const usual = USUAL.flatMap((key) => all.find((entry) => entry.key === key) ?? []);
  const groups = [...new Set(all.map(({ group }) => group))];
  return [
    { label: 'Asked most', entries: usual },
    ...groups.map((label) => ({
      label,
      entries: all.filter((entry) => entry.group === label && !usual.includes(entry)),
    })),
  ].filter(({ entries }) => entries.length > 0);
};

/** The axles that a car has. */
export const axlesOf = (document: CarDocument): readonly ('front' | 'rear')[] =>
  (['front', 'rear'] as const).filter((axle) => document[axle] !== undefined);
