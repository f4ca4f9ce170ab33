import { sideOfName, type AxleDocument } from '../../../geometry/index';
import { roleOf } from '../pointRows';

/** Words that people write for the same thing, each to the words that the roles of points are made of (common practice, no source). */
const MEANT: Readonly<Record<string, readonly string[]>> = {
  lca: ['lower', 'arm'],
  tca: ['lower', 'arm'],
  uca: ['upper', 'arm'],
  control: ['arm'],
  wishbone: ['arm'],
  bj: ['ball'],
  lbj: ['lower', 'ball'],
  balljoint: ['ball'],
  ball: ['ball'],
  joint: [],
  track: ['tie'],
  tie: ['tie'],
  tierod: ['tie', 'rod'],
  trackrod: ['tie', 'rod'],
  steering: ['tie'],
  rack: ['tie', 'inner'],
  inner: ['inner'],
  inboard: ['inner'],
  body: ['inner'],
  chassis: ['inner'],
  subframe: ['inner'],
  outer: ['outer'],
  outboard: ['outer'],
  knuckle: ['outer'],
  upright: ['outer'],
  carrier: ['outer'],
  center: ['wheel', 'centre'],
  centre: ['wheel', 'centre'],
  hub: ['wheel'],
  spindle: ['wheel'],
  mount: [],
  mounting: [],
  tower: ['strut', 'upper'],
  tr: ['tie', 'rod'],
  top: ['upper'],
  upr: ['upper'],
  bottom: ['lower'],
  foot: ['lower'],
  lwr: ['lower'],
  damper: ['strut'],
  shock: ['strut'],
  bolt: ['bolt'],
  clamp: ['bolt'],
  pinch: ['bolt'],
  frt: ['front'],
  fwd: ['front'],
  forward: ['front'],
  aft: ['rear'],
  back: ['rear'],
  toe: ['tie'],
};

/** Two words of one line cannot both be meant. */
const OPPOSITES: readonly (readonly [string, string])[] = [
  ['front', 'rear'],
  ['upper', 'lower'],
  ['inner', 'outer'],
];

/** What a point of a strut is, word by word; those of other layouts are told by their rods. */
const STRUT: Readonly<Record<string, readonly string[]>> = {
  armFront: ['lower', 'arm', 'front', 'inner'],
  armRear: ['lower', 'arm', 'rear', 'inner'],
  ballJoint: ['lower', 'ball', 'outer'],
  strutTop: ['strut', 'upper'],
  strutFoot: ['strut', 'lower'],
  clampUpper: ['strut', 'bolt', 'upper'],
  clampLower: ['strut', 'bolt', 'lower'],
  rackEnd: ['tie', 'inner', 'rod'],
  tieRodEnd: ['tie', 'outer', 'rod'],
  wheelCentre: ['wheel', 'centre'],
};
/** Words that say only where: a row that says nothing else must say three of them. */
const WHERE = new Set(['front', 'rear', 'upper', 'lower', 'inner', 'outer']);

const wordsOf = (text: string): ReadonlySet<string> =>
  new Set(
    text
      .replace(/(?<=[a-z0-9])(?=[A-Z])/g, ' ')
      .toLowerCase()
      .split(/[^a-z]+/)
      .filter((word) => word !== '' && !['l', 'r', 'left', 'right', 'lh', 'rh', 'to', 'end', 'of', 'the'].includes(word))
      .flatMap((word) => MEANT[word] ?? [word]),
  );

const profileOf = (axle: AxleDocument, point: string): ReadonlySet<string> => {
  const strut = axle.layout === 'strut' ? STRUT[point] : undefined;
  return strut ? new Set(strut) : new Set([...wordsOf(point), ...wordsOf(roleOf(axle, point))]);
};

/** How well a row's name fits a point: the words that they share; −∞ where most of its words are others, one contradicts, or they only say where. */
const fit = (row: ReadonlySet<string>, point: ReadonlySet<string>): number => {
  const shared = [...row].filter((word) => point.has(word));
  if (2 * shared.length < row.size) return -Infinity;
  if (shared.length < 3 && shared.every((word) => WHERE.has(word))) return -Infinity;
  const against = OPPOSITES.flatMap(([one, other]) => [
    [one, other],
    [other, one],
  ]).filter(([said = '', opposite = '']) => row.has(said) && !row.has(opposite) && point.has(opposite) && !point.has(said));
  return against.length > 0 ? -Infinity : shared.length - 0.1 * (point.size - shared.length);
};

/**
 * The points that rows with names of their own most likely are: "LCA front bush" is armFront. A guess by words alone, for the
 * person to look at. Only where one point fits best, and no other row of the same side fits it as well.
 * @param names - names of rows that are no point yet
 * @param free - points that no row has taken
 */
export const likelyPoints = (
  axle: AxleDocument,
  names: readonly string[],
  free: readonly string[],
): Readonly<Record<string, string>> => {
  const profiles = free.map((point) => ({ point, words: profileOf(axle, point) }));
  const guesses = names.flatMap((name) => {
    const words = wordsOf(name);
    const fits = profiles.map(({ point, words: of }) => ({ name, point, score: fit(words, of) }));
    const best = Math.max(...fits.map(({ score }) => score));
    const top = fits.filter(({ score }) => score === best);
    return best > 0.5 && top.length === 1 ? top : [];
  });
  const isAlone = (guess: (typeof guesses)[number]): boolean =>
    guesses.every(
      (other) =>
        other === guess ||
        other.point !== guess.point ||
        sideOfName(other.name) !== sideOfName(guess.name) ||
        other.score < guess.score,
    );
  return Object.fromEntries(guesses.filter(isAlone).map(({ name, point }) => [name, point]));
};
