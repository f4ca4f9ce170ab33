import { distance } from 'fastest-levenshtein';
import { shorten } from './fault';

const LONGEST_NAME = 60;
const SHORTEST_BEGINNING = 4;

/** The known name nearest to a mistyped one, or null when none is near enough to be meant. */
export function nearestName(given: string, known: readonly string[]): string | null {
  if (given.length === 0 || given.length > LONGEST_NAME) return null;
  const lower = given.toLowerCase();
  let best: string | null = null;
  let bestDistance = Infinity;
  for (const name of known) {
    const known = name.toLowerCase();
    // the beginning of a name is the name, cut short
    const d = lower.length >= SHORTEST_BEGINNING && known.startsWith(lower) ? 0.5 : distance(lower, known);
    if (d < bestDistance) {
      best = name;
      bestDistance = d;
    }
  }
  if (best === null) return null;
  // a third of the letters may differ: "armRaer", "ball_joint", "tierod" are meant, "wing" is not
  return bestDistance <= Math.max(1, Math.floor(Math.max(given.length, best.length) / 3)) ? best : null;
}

/** "did you mean `armRear`?" or null. */
export function suggest(given: string, known: readonly string[]): string | null {
  const name = nearestName(given, known);
  return name === null || name === given ? null : `did you mean \`${shorten(name)}\`?`;
}

/** "`a`, `b` or `c`", cut short when there are many. */
export function listNames(names: readonly string[], most = 12): string {
  if (names.length === 0) return 'none';
  const shown = names.slice(0, most).map((name) => `\`${shorten(name)}\``);
  const rest = names.length - shown.length;
  if (rest > 0) return `${shown.join(', ')} or one of ${rest} more`;
  return shown.length === 1 ? shown[0]! : `${shown.slice(0, -1).join(', ')} or ${shown[shown.length - 1]!}`;
}
