import { findReading, type CarDocument, type LimitDocument, type WantedDocument } from '../../../geometry/index';
import { mmPerFileUnit } from '../../units/fileLength';

/** Whether what is wanted is of the wheel or axle that the limit holds for. */
const isOfIt = (limit: LimitDocument, wanted: WantedDocument): boolean =>
  limit.reading === wanted.reading &&
  limit.difference !== true &&
  (limit.axle === undefined || limit.axle === wanted.axle) &&
  (limit.side === 'left' || limit.side === 'right' ? wanted.side !== (limit.side === 'left' ? 'right' : 'left') : true);

/** Limits are judged where the car stands, wheels straight ahead. */
const isWhereItStands = ({ at, over, change }: WantedDocument): boolean => {
  if (over !== undefined || change === true) return false;
  const travel = [at?.travel ?? 0].flat();
  return travel.every((each) => each === 0) && (at?.rack ?? 0) === 0 && (at?.roll ?? 0) === 0;
};

/**
 * The rules of the file that keep what is wanted from ever being met: every value that would do lies past one of their ends. No
 * answer goes there, however the parts are turned.
 */
export const rulesAgainst = (document: CarDocument, wanted: WantedDocument): readonly LimitDocument[] => {
  const entry = findReading(wanted.reading);
  if (entry === undefined || !isWhereItStands(wanted)) return [];
  const mm = entry.quantity === 'length' ? mmPerFileUnit(document) : 1;
  const { value, range = [null, null], tolerance } = wanted;
  const least = value === undefined ? (range[0] ?? -Infinity) : value - tolerance;
  const greatest = value === undefined ? (range[1] ?? Infinity) : value + tolerance;
  return (document.limits ?? []).filter(
    (limit) => isOfIt(limit, wanted) && (greatest < (limit.min ?? -Infinity) * mm || least > (limit.max ?? Infinity) * mm),
  );
};
