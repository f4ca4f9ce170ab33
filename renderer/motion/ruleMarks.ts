/** A graduation of a motion rule. */
export interface RuleMark {
  readonly value: number;
  readonly size: 'fine' | 'plain' | 'zero';
  /** numeral under it; null on most */
  readonly label: string | null;
}

const NICE = [0.5, 1, 2, 4, 5, 10, 20, 30, 40, 50, 100];
const MAJORS = 5;
/** Room that a numeral takes with the gap to the next one [px]. */
const NUMERAL = 32;

/**
 * The graduations of a rule from `min` to `max`: a few numbered, four between two of them, zero heavy.
 * @param width - length of the rule [px]: the numbered ones are so far apart that their numerals stay clear of each other
 */
export const ruleMarks = (min: number, max: number, width = Infinity): readonly RuleMark[] => {
  const wanted = (max - min) * Math.max(1 / MAJORS, NUMERAL / Math.max(width, NUMERAL));
  const major = NICE.find((step) => step >= wanted - 1e-9) ?? 100 * Math.ceil(wanted / 100);
  const minor = major / (major % 4 === 0 ? 4 : 5);
  const marks: RuleMark[] = [];
  for (let index = Math.ceil(min / minor - 1e-9); index * minor <= max + 1e-9; index += 1) {
    const value = index * minor;
    const turns = value / major;
    const numbered = Math.abs(turns - Math.round(turns)) < 1e-6;
    const size = index === 0 ? 'zero' : numbered ? 'plain' : 'fine';
    const label = numbered ? `${value > 0 ? '+' : value < 0 ? '−' : ''}${Math.abs(Math.round(value * 10) / 10)}` : null;
    marks.push({ value, size, label });
  }
  return marks;
};
