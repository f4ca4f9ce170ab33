import type { AxleName, SetupDocument } from '../car/document';
import type { MeshFiles } from '../fitup/meshes/partMeshes';
import type { ReadingEntry } from '../readings/readingEntry';
import type { Position } from '../readings/rows';
import type { Sides } from '../setup/setupEdits';
import type { BrokenLimit } from './brokenLimits';
import type { Numbers } from './carNumbers';
import type { WhyNoGap, WithGap } from './gapsOfRows';
import type { AskedToe } from './toeReset';
import type { Reached } from './tried';

export interface WaysQuestion {
  readonly setup: SetupDocument;
  /** a reading of a corner or an axle that is one number */
  readonly entry: ReadingEntry;
  /** [mm or degrees] */
  readonly value: number;
  readonly axle: AxleName;
  /** whose reading, and the wheels on which adjusters are turned */
  readonly side: Sides;
  /** how near counts as reached; the reading's own `set` when not given */
  readonly tolerance?: number;
  readonly toeReset: AskedToe;
  readonly at: Position;
  readonly pairs: boolean;
  readonly withLocked: boolean;
  /** told too: what would reach if a limit of the file did not stand in the way */
  readonly withWalls?: true;
  /** triangles of the parts that are a mesh, for the least gap */
  readonly meshes?: MeshFiles;
}

/** One adjuster, or two, and what they do. The gaps of walls are not measured. */
export interface Way extends WithGap {
  readonly adjusters: readonly string[];
  /** as in a setup, in the file's unit, on real steps; with the toe that is set after them, where one is asked for */
  readonly settings: SetupDocument;
  readonly value: Reached;
  /** the worse wheel's, in contract units */
  readonly missBy: number;
  readonly reaches: boolean;
  /** between the steps, where the value is met exactly; the nearest there is where it is not */
  readonly continuous: { readonly settings: SetupDocument; readonly value: Reached };
  /** by adjuster, 0…1 of the way to the end of its range on that side; null for a bushing */
  readonly rangeUsed: Readonly<Record<string, number | null>>;
  /** of every other reading, by dotted name, in contract units */
  readonly changes: Numbers;
}

/** Parts that would bring the value there and break a limit: no way, and said with what it breaks. */
export interface Wall extends Way {
  readonly broken: readonly BrokenLimit[];
}

export interface Ways {
  readonly from: Reached;
  readonly ways: readonly Way[];
  /** why there is no least gap */
  readonly why?: WhyNoGap;
  /** where they were asked for: of parts with no way of their own that reaches, those that change least first */
  readonly walls?: readonly Wall[];
}
