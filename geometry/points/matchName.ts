import type { AxleDocument, SideName } from '../car/document';
import { STRUT_CLAMP_POINTS, STRUT_REQUIRED_POINTS } from '../car/rules/axleView';
import { nearestName } from '../car/suggest';

/** Case, blanks, underscores and hyphens make no difference between two names for the same point. */
const bare = (name: string): string => name.toLowerCase().replace(/[\s_-]+/g, '');

/** What a row's name says: the point, or the nearest one that may be meant; and the side where the name says one. */
export interface NameMatch {
  readonly point: string | null;
  readonly suggestion: string | null;
  readonly side: SideName | null;
}

/** Every name that a point of this axle may have: those that it has, and on a strut those it may have. */
export function pointNamesOf(axle: AxleDocument): readonly string[] {
  const own = Object.keys(axle.points);
  if (axle.layout !== 'strut') return own;
  return [...new Set([...STRUT_REQUIRED_POINTS, ...STRUT_CLAMP_POINTS, ...own])];
}

const nearest = (given: string, known: readonly string[]): string | null => {
  const name = nearestName(bare(given), known.map(bare));
  return known.find((point) => bare(point) === name) ?? null;
};

const find = (given: string, known: readonly string[]): string | null => {
  if (known.includes(given)) return given;
  const alike = known.filter((name) => bare(name) === bare(given));
  return alike.length === 1 ? alike[0] : null;
};

/** A side before or behind a name: set off by a blank, underscore or hyphen, or by its capital. */
const SIDES: readonly { readonly side: SideName; readonly setOff: RegExp; readonly capital: RegExp }[] = [
  { side: 'left', setOff: /^(?:left|l)[\s_-]+|[\s_-]+(?:left|l)$/i, capital: /(?<=[a-z0-9])Left$|^left(?=[A-Z])/ },
  { side: 'right', setOff: /^(?:right|r)[\s_-]+|[\s_-]+(?:right|r)$/i, capital: /(?<=[a-z0-9])Right$|^right(?=[A-Z])/ },
];

/** The name without the word for a side before or behind it: "armFront_R", "left arm front", "armFrontLeft". */
function withoutSide(given: string): { readonly name: string; readonly side: SideName } | null {
  for (const { side, setOff, capital } of SIDES) {
    const name = given.replace(setOff.test(given) ? setOff : capital, '');
    if (name !== given && name !== '') return { name, side };
  }
  return null;
}

/** The side that a name of a list says, in a word before or behind it; null where it says none. */
export const sideOfName = (given: string): SideName | null => withoutSide(given)?.side ?? null;

/**
 * The point of the car that a name of a list stands for.
 * @param known - names that there are
 * @returns the point where the names agree but for case, blanks, underscores and hyphens; else the nearest name
 */
export function matchName(given: string, known: readonly string[]): NameMatch {
  const whole = find(given, known);
  if (whole !== null) return { point: whole, suggestion: null, side: null };
  const sided = withoutSide(given);
  const point = sided ? find(sided.name, known) : null;
  if (sided && point !== null) return { point, suggestion: null, side: sided.side };
  return {
    point: null,
    suggestion: nearest(given, known) ?? (sided ? nearest(sided.name, known) : null),
    side: sided?.side ?? null,
  };
}
