import type { AxleName, SideName } from '../../car/document';
import type { CarMechanism } from '../../car/mechanism';
import { mirror, type Vector } from '../../core/vector';
import type { Failure } from '../../corner/failure';
import { assembleCar } from '../../setup/assembleCar';
import type { AssembledSide } from '../../setup/assembleSide';
import { findSetup } from '../../setup/setups';
import { roundOf, type Study } from '../../studies/study';
import { envelopeOf, type Envelope } from '../envelope';
import { marginOf } from '../margins';
import { piecesOf, type MissingPiece, type PartMeshes, type Piece } from '../pieces';
import { placed } from '../placement';
import { joinedAt, pairsOf } from './pairs';
import { GridPlacements } from './placements';
import type { Field } from './fieldSearch';
import { findWorst } from './search';

/** What is asked: which corners, and the setups in use. */
export interface ClearanceQuestion {
  readonly axles: readonly AxleName[];
  readonly sides: readonly SideName[];
  readonly setups: readonly string[];
}

/**
 * - `clear`: the margin is kept, proved over the whole envelope; `close`: kept, with less than a quarter of it to spare
 * - `short`: the margin is not kept; `cuts`: they cut into each other
 * - `not-proved`: kept wherever it was looked, but positions between could be nearer than the margin
 */
export type ClearanceVerdict = 'clear' | 'close' | 'short' | 'cuts' | 'not-proved';

/** The worst of one pair on one corner, over all positions of all setups asked for. Lengths in mm, car frame. */
export interface ClearanceRow {
  readonly pair: readonly [string, string];
  readonly axle: AxleName;
  readonly side: SideName;
  /** least distance; negative where they cut into each other, 0 where no depth is known */
  readonly clearance: number;
  /** how much less it could be between the positions that were tried */
  readonly bound: number;
  readonly cuts: boolean;
  /** required margin, and what is left of the clearance over it */
  readonly needs: number;
  readonly spare: number;
  readonly verdict: ClearanceVerdict;
  readonly at: { readonly setup: string; readonly travel: number; readonly rack: number };
  /** nearest point of each */
  readonly points: readonly [Vector, Vector];
}

export interface EnvelopeRow {
  readonly setup: string;
  readonly axle: AxleName;
  readonly side: SideName;
  readonly open: number;
  readonly touch: number | null;
  readonly solid: number;
  readonly rackMin: number;
  readonly rackMax: number;
  readonly unreachable: readonly { readonly travel: number; readonly rack: number; readonly message: string }[];
}

export interface ClearanceAnswer {
  /** least spare first */
  readonly rows: readonly ClearanceRow[];
  readonly envelope: readonly EnvelopeRow[];
  /** parts that could not be made, and corners that have no envelope */
  readonly missing: readonly string[];
}

/** One corner in one setup, ready to be searched. */
interface Corner {
  readonly setup: string;
  readonly side: AssembledSide;
  readonly envelope: Envelope;
  readonly placements: GridPlacements;
  readonly pieces: readonly Piece[];
}

/** A pair of one corner, over the setups in which both of its parts are there. */
interface Task {
  readonly axle: AxleName;
  readonly side: SideName;
  readonly pair: readonly [string, string];
}

/**
 * Least clearance of every pair that can move against each other, over the envelopes of the setups in use.
 * @param meshes - of the parts that are one
 */
export function clearanceStudy(mechanism: CarMechanism, question: ClearanceQuestion, meshes: PartMeshes): Study<ClearanceAnswer> {
  const prepared = prepare(mechanism, question, meshes);
  if ('failure' in prepared)
    return { failure: prepared.failure, round: () => roundOf({ doing: '', chunks: 0, run: () => null, merge: () => EMPTY }) };
  const { corners, missing } = prepared;
  const tasks = tasksOf(corners);
  return {
    failure: null,
    round: () =>
      roundOf({
        doing: 'Clearances',
        chunks: tasks.length,
        isLong: true,
        run: (chunk) => rowOf(mechanism, corners, tasks[chunk]),
        merge: (rows) => ({
          answer: {
            rows: rows.filter((row) => row !== null).sort((a, b) => a.spare - b.spare),
            envelope: corners.map(({ envelope }) => envelopeRow(envelope)),
            missing,
          },
        }),
      }),
  };
}

const EMPTY = { answer: { rows: [], envelope: [], missing: [] } };

interface Prepared {
  readonly corners: readonly Corner[];
  readonly missing: readonly string[];
}

function prepare(
  mechanism: CarMechanism,
  { axles, sides, setups }: ClearanceQuestion,
  meshes: PartMeshes,
): Prepared | { readonly failure: Failure } {
  const { document, mmPerUnit } = mechanism;
  const corners: Corner[] = [];
  const missing = new Set<string>();
  for (const setup of setups) {
    const car = assembleCar(mechanism, findSetup(document, setup));
    if (!car.ok) return { failure: car.failure };
    for (const axle of axles) {
      const assembled = car.value[axle];
      if (assembled === null) continue;
      for (const name of sides) {
        const side = assembled[name];
        const envelope = envelopeOf(assembled.mechanism, setup, side);
        if ('missing' in envelope) {
          missing.add(`The ${axle} axle has no envelope without ${envelope.missing}.`);
          continue;
        }
        const made = piecesOf(document, mmPerUnit, assembled.mechanism, side, meshes);
        for (const piece of made.missing) missing.add(missingWords(piece));
        corners.push({ setup, side, envelope, placements: new GridPlacements(envelope), pieces: made.pieces });
      }
    }
  }
  return { corners, missing: [...missing] };
}

const missingWords = ({ name, missing }: MissingPiece): string => `The part "${name}" is left out: it needs ${missing}.`;

function tasksOf(corners: readonly Corner[]): Task[] {
  const tasks = new Map<string, Task>();
  for (const { envelope, pieces } of corners) {
    for (const [first, second] of pairsOf(pieces)) {
      const task: Task = { axle: envelope.axle, side: envelope.side, pair: [first.name, second.name] };
      tasks.set(JSON.stringify(task), task);
    }
  }
  return [...tasks.values()];
}

function rowOf(mechanism: CarMechanism, corners: readonly Corner[], task: Task): ClearanceRow | null {
  const { document, mmPerUnit } = mechanism;
  const fields: Field[] = [];
  let needs = 0;
  for (const { side, envelope, placements, pieces } of corners) {
    if (envelope.axle !== task.axle || envelope.side !== task.side) continue;
    const first = pieces.find(({ name }) => name === task.pair[0]);
    const second = pieces.find(({ name }) => name === task.pair[1]);
    if (first === undefined || second === undefined) continue;
    const axle = mechanism[task.axle]!;
    fields.push({ side, envelope, placements, first, second, ...joinedAt(document, mmPerUnit, axle, side, [first, second]) });
    needs = marginOf(first, second, document.margins, mmPerUnit);
  }
  const worst = findWorst(fields, needs);
  if (worst === null) return null;
  const { gap, bound, travel, rack } = worst;
  const { envelope } = fields[worst.field];
  const clearance = gap.isCutOnly ? Math.min(0, gap.distance) : gap.distance;
  const cuts = gap.isCutOnly || clearance < 0;
  const inCar = (point: Vector): Vector => {
    const now = placed(worst.placement, point);
    return envelope.side === 'left' ? now : mirror(now);
  };
  return {
    ...task,
    clearance,
    bound,
    cuts,
    needs,
    spare: clearance - needs,
    verdict: verdictOf(clearance, bound, needs, cuts),
    at: { setup: envelope.setup, travel, rack },
    points: [inCar(gap.points[0]), inCar(gap.points[1])],
  };
}

/** Kept with less than this share of the margin to spare is close. */
const CLOSE_SHARE = 0.25;

function verdictOf(clearance: number, bound: number, needs: number, cuts: boolean): ClearanceVerdict {
  if (cuts) return 'cuts';
  if (clearance < needs) return 'short';
  if (clearance - bound < needs) return 'not-proved';
  return clearance < needs * (1 + CLOSE_SHARE) ? 'close' : 'clear';
}

const envelopeRow = ({ setup, axle, side, open, touch, solid, rackMin, rackMax, unreachable }: Envelope): EnvelopeRow => ({
  setup,
  axle,
  side,
  open,
  touch,
  solid,
  rackMin,
  rackMax,
  unreachable,
});
