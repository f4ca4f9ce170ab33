import type { LeastSpare } from '../fitup/clearance/leastGap';

/** How a screen or a terminal says it. */
interface ShortPairStyle {
  /** of a part, by its key */
  readonly nameOf: (key: string) => string;
  /** a length that is not negative, without its unit; from mm */
  readonly length: (mm: number) => string;
  /** said first where more than one axle is asked about */
  readonly withAxle: boolean;
}

/** "tyreFront – strutTube short by 2.9"; null where nothing is short, cuts or is open: then there is nothing to warn of. */
export function shortPairWords(
  { pair, axle, side, spare, verdict }: LeastSpare,
  { nameOf, length, withAxle }: ShortPairStyle,
): string | null {
  const names = pair.map(nameOf).join(' – ');
  const which = `${withAxle ? `${axle} ` : ''}${names}${side === 'both' ? '' : ` (${side})`}`;
  switch (verdict) {
    case 'short': {
      const by = length(-spare);
      // what rounds to nothing is short all the same
      return `${which} short${/[1-9]/.test(by) ? ` by ${by}` : ' by a hair'}`;
    }
    case 'cuts':
      return `${which} cut into each other`;
    case 'not-proved':
      return `${which} not proved to keep its margin`;
    case 'close':
    case 'clear':
      return null;
  }
}
