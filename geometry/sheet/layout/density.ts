/** How much room things have on the page [pt]. */
export interface Density {
  /** side of a part's drawing */
  readonly drawing: number;
  /** over and under what stands in a row */
  readonly padding: number;
  /** what is at zero is drawn too; else it is a line of words */
  readonly drawsZero: boolean;
  /** what is said of a setting runs on behind it, and the cautions behind one another */
  readonly runsOn: boolean;
  /** over a heading */
  readonly before: number;
  /** settings that stand among the targets again stand two in a line, and few notes behind their heading */
  readonly isPaired: boolean;
  /** height of a row that is written in by hand */
  readonly row: number;
}

/** From roomy to close: the first that takes the fewest pages is printed. */
export const DENSITIES: readonly Density[] = [
  { drawing: 36, padding: 3, drawsZero: true, runsOn: false, before: 9, isPaired: false, row: 18.5 },
  { drawing: 26, padding: 1.5, drawsZero: false, runsOn: false, before: 9, isPaired: false, row: 17.5 },
  { drawing: 24, padding: 1, drawsZero: false, runsOn: true, before: 7, isPaired: false, row: 16 },
  { drawing: 20.5, padding: 0.6, drawsZero: false, runsOn: true, before: 4, isPaired: true, row: 14.5 },
];
