/** How much room things have on the page [pt]. */
export interface Density {
  /** side of a part's drawing */
  readonly drawing: number;
  /** over and under what stands in a row */
  readonly padding: number;
  /** what is at zero is drawn too; else it is a line of words */
  readonly drawsZero: boolean;
  /** height of a row that is written in by hand */
  readonly row: number;
}

/** From roomy to close: the first that takes the fewest pages is printed. */
export const DENSITIES: readonly Density[] = [
  { drawing: 36, padding: 3, drawsZero: true, row: 18.5 },
  { drawing: 26, padding: 1.5, drawsZero: false, row: 17.5 },
  { drawing: 22, padding: 0.6, drawsZero: false, row: 15 },
];
