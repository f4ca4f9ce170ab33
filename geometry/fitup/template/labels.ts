type Point = readonly [number, number];

/** A rectangle along the axes [mm]. */
export interface Box {
  readonly min: Point;
  readonly max: Point;
}

/** What is to be named, and how much room its name takes [mm]. */
export interface Named {
  readonly at: Point;
  readonly width: number;
  readonly height: number;
}

/** Where a name stands. */
export interface Seat {
  readonly box: Box;
  /** from the name to what it names, where it stands off it; null where it is beside it */
  readonly leader: readonly [Point, Point] | null;
}

/** What names keep off. */
export interface Around {
  /** names stay in it; null: there is no edge */
  readonly area: Box | null;
  /** marks that a name never covers */
  readonly marks: readonly Box[];
  /** lines that a name never crosses */
  readonly lines: readonly (readonly [Point, Point])[];
  /** lines that a name crosses only where there is no other place */
  readonly outlines: readonly (readonly [Point, Point])[];
}

/** Between a name and anything else [mm]. */
const GAP_MM = 0.8;
/** How far off its point a name is tried, nearest first [mm]. */
const DISTANCES_MM = [3, 5, 8, 12, 17, 23, 30, 40, 52, 66, 82, 100] as const;
const WAYS = 16;
/** A name farther off than this has a leader [mm]. */
const BESIDE_MM = 4.5;
/** How fine the whole paper is searched where nothing near the point is free [mm]. */
const GRID_MM = 4;

/**
 * A place for every name, in their order: on the paper, on no other name, on no mark and on no line that is named; off the outlines
 * where that can be. The one nearest to its point is taken.
 * @returns null for a name that there is no room for
 */
export function seatNames(names: readonly Named[], { area, marks, lines, outlines }: Around): (Seat | null)[] {
  const taken: Box[] = [...marks];
  const kept: (readonly [Point, Point])[] = [...lines];
  return names.map((name) => {
    const isFree = ({ box }: Seat): boolean => {
      const wide = grown(box, GAP_MM);
      if (area !== null && !isWithin(box, area)) return false;
      return !taken.some((other) => overlap(wide, other)) && !kept.some(([from, to]) => meets(from, to, wide));
    };
    const seat = nearestSeat(name, isFree, outlines, taken) ?? (area === null ? null : anySeat(name, isFree, area));
    if (seat === null) return null;
    taken.push(seat.box);
    if (seat.leader !== null) kept.push(seat.leader);
    return seat;
  });
}

/** The nearest free place that covers no outline and whose leader crosses no name; failing that the one that does so least. */
function nearestSeat(
  name: Named,
  isFree: (seat: Seat) => boolean,
  outlines: Around['outlines'],
  taken: readonly Box[],
): Seat | null {
  let best: Seat | null = null;
  let fewest = Infinity;
  for (const distance of DISTANCES_MM)
    for (let i = 0; i < WAYS; i++) {
      const angle = (2 * Math.PI * (i + 0.5)) / WAYS;
      const seat = seatTowards(name, distance, [Math.cos(angle), Math.sin(angle)]);
      if (!isFree(seat)) continue;
      const { box, leader } = seat;
      const wide = grown(box, GAP_MM);
      let crossed = 0;
      for (const [from, to] of outlines) if (meets(from, to, wide)) crossed++;
      if (leader !== null) for (const other of taken) if (meets(leader[0], leader[1], other) && !holds(other, name.at)) crossed++;
      if (crossed === 0) return seat;
      if (crossed >= fewest) continue;
      fewest = crossed;
      best = seat;
    }
  return best;
}

/** Whatever place is free on the paper, nearest first. */
function anySeat(name: Named, isFree: (seat: Seat) => boolean, area: Box): Seat | null {
  let best: Seat | null = null;
  let nearest = Infinity;
  for (let x = area.min[0]; x + name.width <= area.max[0]; x += GRID_MM)
    for (let y = area.min[1]; y + name.height <= area.max[1]; y += GRID_MM) {
      const box: Box = { min: [x, y], max: [x + name.width, y + name.height] };
      const far = distanceTo(box, name.at);
      if (far >= nearest) continue;
      const seat = { box, leader: leaderOf(box, name.at) };
      if (!isFree(seat)) continue;
      best = seat;
      nearest = far;
    }
  return best;
}

/** A name whose nearest corner or side is a way off its point. */
function seatTowards({ at, width, height }: Named, distance: number, [x, y]: Point): Seat {
  const middle: Point = [at[0] + distance * x + 0.5 * width * sideOf(x), at[1] + distance * y + 0.5 * height * sideOf(y)];
  const box: Box = {
    min: [middle[0] - 0.5 * width, middle[1] - 0.5 * height],
    max: [middle[0] + 0.5 * width, middle[1] + 0.5 * height],
  };
  return { box, leader: leaderOf(box, at) };
}

/** Nearly across, a name stands in the middle of what it names. */
const sideOf = (share: number): number => (Math.abs(share) < 0.25 ? 0 : Math.sign(share));

const nearestIn = ({ min, max }: Box, at: Point): Point => [
  Math.max(min[0], Math.min(max[0], at[0])),
  Math.max(min[1], Math.min(max[1], at[1])),
];

function distanceTo(box: Box, at: Point): number {
  const near = nearestIn(box, at);
  const [x, y] = [near[0] - at[0], near[1] - at[1]];
  return Math.sqrt(x * x + y * y);
}

const leaderOf = (box: Box, at: Point): Seat['leader'] => (distanceTo(box, at) > BESIDE_MM ? [nearestIn(box, at), at] : null);

export const grown = ({ min, max }: Box, by: number): Box => ({
  min: [min[0] - by, min[1] - by],
  max: [max[0] + by, max[1] + by],
});

const isWithin = ({ min, max }: Box, area: Box): boolean =>
  min[0] >= area.min[0] && min[1] >= area.min[1] && max[0] <= area.max[0] && max[1] <= area.max[1];

const holds = ({ min, max }: Box, [x, y]: Point): boolean => x >= min[0] && x <= max[0] && y >= min[1] && y <= max[1];

const overlap = (a: Box, b: Box): boolean =>
  a.min[0] < b.max[0] && b.min[0] < a.max[0] && a.min[1] < b.max[1] && b.min[1] < a.max[1];

const meets = (from: Point, to: Point, box: Box): boolean => clip(from, to, box) !== null;

/** What of a straight line lies in a rectangle, its edge included; null for nothing. */
export function clip(from: Point, to: Point, { min, max }: Box): readonly [Point, Point] | null {
  let [first, last] = [0, 1];
  for (const i of [0, 1] as const) {
    const way = to[i] - from[i];
    if (way === 0) {
      if (from[i] < min[i] || from[i] > max[i]) return null;
      continue;
    }
    const [a, b] = [(min[i] - from[i]) / way, (max[i] - from[i]) / way];
    first = Math.max(first, Math.min(a, b));
    last = Math.min(last, Math.max(a, b));
  }
  if (first > last) return null;
  const at = (share: number): Point =>
    share === 0 ? from : share === 1 ? to : [from[0] + share * (to[0] - from[0]), from[1] + share * (to[1] - from[1])];
  return [at(first), at(last)];
}
