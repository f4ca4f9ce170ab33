import {
  LAYOUT_NAMES,
  type GivenAxle,
  type GivenPoint,
  type LayoutName,
  type NewCarChoice,
  type UnfinishedCar,
} from './begunCar';

/** The word that tells a kept copy of points that are being given from a car file: nothing half measured is read as a car. */
const FORMAT = 'jounce-unfinished-car';
const VERSION = 1;

/** What was given of a new car, for its kept copy. Lengths in mm, angles in degrees. */
export const unfinishedText = (car: UnfinishedCar): string => JSON.stringify({ format: FORMAT, version: VERSION, ...car });

type Parts = Readonly<Record<string, unknown>>;

const partsOf = (value: unknown): Parts | null =>
  typeof value === 'object' && value !== null && !Array.isArray(value) ? (value as Parts) : null;
const isNumber = (value: unknown): value is number => typeof value === 'number' && Number.isFinite(value);
const isGiven = (value: unknown): value is number | null => value === null || isNumber(value);
const isLayout = (value: unknown): value is LayoutName | null =>
  value === null || LAYOUT_NAMES.some((layout) => layout === value);
const isPoint = (value: unknown): value is GivenPoint => Array.isArray(value) && value.length === 3 && value.every(isGiven);

const choiceOf = (value: unknown): NewCarChoice | null => {
  const parts = partsOf(value);
  if (!parts) return null;
  const { name, unit, front, rear, wheelbase, frontTrack, rearTrack, loadedRadius } = parts;
  if (typeof name !== 'string' || (unit !== 'mm' && unit !== 'in') || !isLayout(front) || !isLayout(rear)) return null;
  if (!isNumber(wheelbase) || !isNumber(frontTrack) || !isNumber(rearTrack) || !isNumber(loadedRadius)) return null;
  return { name, unit, front, rear, wheelbase, frontTrack, rearTrack, loadedRadius };
};

/** @returns undefined where it is no axle */
const axleOf = (value: unknown): GivenAxle | null | undefined => {
  if (value === null) return null;
  const parts = partsOf(value);
  const points = parts && partsOf(parts['points']);
  if (!parts || !points) return undefined;
  const { camber, toe, loadedRadius } = parts;
  if (!isGiven(camber) || !isGiven(toe) || !isGiven(loadedRadius)) return undefined;
  const given = Object.entries(points).flatMap(([name, at]) => (isPoint(at) ? [[name, at] as const] : []));
  if (given.length < Object.keys(points).length) return undefined;
  return { points: Object.fromEntries(given), camber, toe, loadedRadius };
};

/** What a kept copy says of a new car whose points were being given; null: it is no such copy, or one that is damaged. */
export const readUnfinished = (text: string): UnfinishedCar | null => {
  let whole: Parts | null;
  try {
    whole = partsOf(JSON.parse(text));
  } catch {
    return null;
  }
  if (whole?.['format'] !== FORMAT || whole['version'] !== VERSION) return null;
  const choice = choiceOf(whole['choice']);
  const [front, rear] = [axleOf(whole['front']), axleOf(whole['rear'])];
  if (!choice || front === undefined || rear === undefined) return null;
  // an axle is there where a layout was chosen for it, and nowhere else
  if ((choice.front === null) !== (front === null) || (choice.rear === null) !== (rear === null)) return null;
  return { choice, front, rear };
};
