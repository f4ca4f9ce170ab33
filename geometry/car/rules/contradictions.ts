import type { WantedDocument } from '../questionDocument';

/** Lines of a question of which no car can meet all: what one of them leaves possible, another excludes. */
export interface Contradiction {
  /** indexes of the lines, ascending: two, or three where two values exclude a change from the one to the other */
  readonly lines: readonly number[];
  /** where, of one wheel or axle: travel [mm] left and right, rack [mm], roll [degrees] */
  readonly at: PlaceWanted;
}

/** Travel from where the car stands [mm, + bump], rack [mm], roll [degrees]. */
export interface PlaceWanted {
  readonly left: number;
  readonly right: number;
  readonly rack: number;
  readonly roll: number;
}

/** What a range may miss by and still be met: rounding. */
const MET = 1e-9;
/** Past so many places a question is not held against itself: the search would take hours before that matters. */
const MOST_PLACES = 200_000;

const STANDING: PlaceWanted = { left: 0, right: 0, rack: 0, roll: 0 };

const keyOf = (owner: string, { left, right, rack, roll }: PlaceWanted): string =>
  `${owner} ${[left, right, rack, roll].map((part) => Math.round(part * 1e6) + 0).join(' ')}`;

/** What is left possible somewhere, and which line each end is of. */
interface Left {
  readonly at: PlaceWanted;
  readonly owner: string;
  least: number;
  greatest: number;
  leastOf: number;
  greatestOf: number;
}

/** Values that meet a line; its ends in contract units. */
function endsOf({ value, range = [null, null], tolerance }: WantedDocument): readonly [number, number] {
  if (value !== undefined) return [value - tolerance, value + tolerance];
  return [range[0] ?? -Infinity, range[1] ?? Infinity];
}

/** The wheels or the axle whose reading is wanted; of a reading of the axle a side says nothing. */
function ownersOf({ reading, axle, side }: WantedDocument, isOfCorner: boolean): readonly string[] {
  const whose = `${reading} ${axle ?? ''}`;
  if (!isOfCorner) return [whose];
  return side === 'left' || side === 'right' ? [`${whose} ${side}`] : [`${whose} left`, `${whose} right`];
}

function placesOf({ at = {}, over }: WantedDocument): readonly PlaceWanted[] {
  if (over === undefined) {
    const [left, right] = typeof at.travel === 'object' ? at.travel : [at.travel ?? 0, at.travel ?? 0];
    return [{ left, right, rack: at.rack ?? 0, roll: at.roll ?? 0 }];
  }
  const { motion, from, to, steps } = over;
  return Array.from({ length: steps }, (_, index) => {
    const input = steps === 1 ? from : from + ((to - from) * index) / (steps - 1);
    if (motion === 'bump') return { ...STANDING, left: input, right: input };
    return motion === 'steer' ? { ...STANDING, rack: input } : { ...STANDING, roll: input };
  });
}

const placeCount = ({ over }: WantedDocument): number => over?.steps ?? 1;

/**
 * Lines that exclude each other: the same reading of the same wheel at the same place, wanted in two ways that no value meets
 * both of; or held steady over a stretch whose ends are wanted too far apart. Each set of lines once, at the first such place.
 * @param wanted - the lines; undefined: one that is wrong in itself
 * @param isOfCorner - whether a reading is one of a wheel
 */
export function contradictionsIn(
  wanted: readonly (WantedDocument | undefined)[],
  isOfCorner: (reading: string) => boolean,
): readonly Contradiction[] {
  const [values, changes] = [new Map<string, Left>(), new Map<string, Left>()];
  const found = new Map<string, Contradiction>();
  const say = (lines: readonly number[], at: PlaceWanted): void => {
    const distinct = [...new Set(lines)].sort((a, b) => a - b);
    const key = distinct.join(' ');
    if (distinct.length > 1 && !found.has(key)) found.set(key, { lines: distinct, at });
  };
  let places = 0;
  wanted.forEach((one, line) => {
    if (one === undefined) return;
    places += placeCount(one);
    if (places > MOST_PLACES) return;
    const kept = one.change === true ? changes : values;
    const [least, greatest] = endsOf(one);
    for (const owner of ownersOf(one, isOfCorner(one.reading)))
      for (const at of placesOf(one)) {
        const key = keyOf(owner, at);
        const left = kept.get(key);
        if (left === undefined) {
          kept.set(key, { at, owner, least, greatest, leastOf: line, greatestOf: line });
          continue;
        }
        // what the lines before left is held against this one; of lines that exclude each other the first stays
        if (least > left.greatest + MET) say([left.greatestOf, line], at);
        else if (greatest < left.least - MET) say([left.leastOf, line], at);
        else {
          if (least > left.least) [left.least, left.leastOf] = [least, line];
          if (greatest < left.greatest) [left.greatest, left.greatestOf] = [greatest, line];
        }
      }
  });
  for (const change of changes.values()) {
    const there = values.get(keyOf(change.owner, change.at));
    const zero = values.get(keyOf(change.owner, STANDING));
    // at zero itself the change is nothing, however wide the value there is wanted
    if (there === undefined || zero === undefined || there === zero) continue;
    if (there.least - zero.greatest > change.greatest + MET) say([there.leastOf, zero.greatestOf, change.greatestOf], change.at);
    if (there.greatest - zero.least < change.least - MET) say([there.greatestOf, zero.leastOf, change.leastOf], change.at);
  }
  return [...found.values()];
}
