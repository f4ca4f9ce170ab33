import type { MapAnswer } from '../../../geometry/index';
import { csvOf } from '../../curves/curveCsv';
import { shownReading } from '../../units/shownQuantity';
import type { ShownUnits } from '../../units/unitChoice';
import type { MapOrder } from './mapForm';
import type { Sides } from './mapPlaces';

/** The map as numbers: both sides, the readings, what every limit has to spare, and why there is no value. */
export const mapCsv = ({ question }: MapOrder, answer: MapAnswer, sides: Sides, units: ShownUnits): string => {
  const headOf = (name: string, unit: string): string => (unit === '' ? name : `${name} [${unit}]`);
  const first = shownReading(question.entry, units);
  const second = question.second ? shownReading(question.second.entry, units) : null;
  const limits = answer.limits ?? [];
  return csvOf([
    [
      headOf(sides.x.shown.label, sides.x.shown.unit),
      headOf(sides.y.shown.label, sides.y.shown.unit),
      headOf(question.entry.name, first.unit),
      ...(question.second && second ? [headOf(question.second.entry.name, second.unit)] : []),
      ...limits.map(({ name }) => `spare of ${name}`),
      'reason',
    ],
    ...answer.y.flatMap((up, row) =>
      answer.x.map((across, column) => {
        const value = answer.z[row]?.[column] ?? null;
        const other = answer.second?.[row]?.[column] ?? null;
        return [
          sides.x.shown.toShown(across),
          sides.y.shown.toShown(up),
          value === null ? null : first.toShown(value),
          ...(second ? [other === null ? null : second.toShown(other)] : []),
          ...limits.map(({ spare }) => spare[row]?.[column] ?? null),
          answer.why[`${row},${column}`] ?? '',
        ];
      }),
    ),
  ]);
};
