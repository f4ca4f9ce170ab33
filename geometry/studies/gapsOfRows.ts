import type { AxleName, SetupDocument } from '../car/document';
import type { CarMechanism } from '../car/mechanism';
import { gapMeshes, leastGap, whyNoGaps, type LeastGap, type LeastSpare } from '../fitup/clearance/leastGap';
import type { MeshFiles } from '../fitup/meshes/partMeshes';
import type { PartMeshes } from '../fitup/pieces';
import type { MeshLibrary } from '../fitup/shapes/mesh';
import { roundOf, type Round } from './study';

/** What a study needs to measure the least clearance of its answers. */
export interface GapsAsked {
  /** triangles of the parts that are a mesh */
  readonly files?: MeshFiles | undefined;
  /** searches them; null: nobody here does */
  readonly library: MeshLibrary | null;
}

/** A row of an answer that has a least clearance. */
export interface WithGap {
  /** of any two parts of the axles that are asked about, over all that the wheels can do [mm]; null until measured or not known */
  readonly leastGap: number | null;
  /** the pair with the least to spare over its margin there; null where `leastGap` is */
  readonly leastSpare: LeastSpare | null;
}

/** A row whose gaps are not measured. */
export const NO_GAP: WithGap = { leastGap: null, leastSpare: null };

/** Why rows have no least clearance: `leastGap` where none has one, else by the row, as in `ways[2].leastGap`. */
export type WhyNoGap = Readonly<Record<string, string>>;

/** The last round of a study: the least clearance of each row that is answered, and of nothing else. One chunk a row. */
export class GapsOfRows {
  private meshes: PartMeshes | null = null;

  constructor(
    private readonly mechanism: CarMechanism,
    private readonly asked: GapsAsked,
    private readonly axles: readonly AxleName[],
  ) {}

  /** Whether there is nothing to measure: null, or why. */
  get none(): string | null {
    return whyNoGaps(this.mechanism);
  }

  of({ mechanism, setup }: { readonly mechanism: CarMechanism; readonly setup: SetupDocument }): LeastGap {
    this.meshes ??= gapMeshes(this.mechanism, this.asked.files, this.asked.library);
    return leastGap(mechanism, setup, this.axles, this.meshes);
  }

  /** @param list - the rows' name in the answer */
  round<Row extends WithGap, Answer>(
    list: string,
    rows: readonly Row[],
    carOf: (row: number) => { readonly mechanism: CarMechanism; readonly setup: SetupDocument },
    finish: (rows: readonly Row[], why: WhyNoGap | undefined) => Answer,
  ): Round<Answer> {
    return roundOf<LeastGap, Answer>({
      doing: 'measuring the least gap of each answer',
      chunks: rows.length,
      isLong: true,
      run: (row) => this.of(carOf(row)),
      merge: (gaps) => {
        const why = Object.fromEntries(
          gaps.flatMap((gap, row) => (gap.mm === null ? [[`${list}[${row}].leastGap`, gap.why] as const] : [])),
        );
        const found = rows.map((row, index) => {
          const gap = gaps[index];
          return gap.mm === null ? row : { ...row, leastGap: gap.mm, leastSpare: gap.spare };
        });
        return { answer: finish(found, Object.keys(why).length === 0 ? undefined : why) };
      },
    });
  }
}
