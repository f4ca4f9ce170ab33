import type { AxleName, SetupDocument, SideName } from '../../car/document';
import type { CarMechanism } from '../../car/mechanism';
import { leastFirst } from '../../core/order';
import { mirror } from '../../core/vector';
import type { Failure } from '../../corner/failure';
import { assembleCar } from '../../setup/assembleCar';
import { roundOf, type Round, type Study } from '../../studies/study';
import {
  BOTH_SIDES,
  envelopeRows,
  fitUpCorners,
  noEnvelopeSentence,
  type EnvelopeRow,
  type FitUpCorner,
  type StoodSetup,
} from '../corners';
import { envelopeWarnings, type FitUpWarning } from '../fitUpWarnings';
import { openMeshWarnings } from '../meshes/openMeshes';
import { farWarnings, kindWarnings, shapelessWarnings } from '../partWarnings';
import { partMeshes, type MeshFiles } from '../meshes/partMeshes';
import { overGround, type OverGround } from '../overGround/overGround';
import type { PartMeshes } from '../pieces';
import type { MeshLibrary } from '../shapes/mesh';
import { hasMirrorImage, isMirrorImage } from './mirrorImage';
import { fieldOf, withPieces, type ClearanceCorner, type PairField } from './pairCorner';
import { pairRow, type ClearanceRow, type PairOfCorner } from './pairRow';
import { pairsOf } from './pairs';
import { Remedies, turnedOver, type Remedy } from './remedies';
import { findWorst } from './search';

/** What is asked: which corners, and the setups in use. */
export interface ClearanceQuestion {
  readonly axles: readonly AxleName[];
  readonly sides: readonly SideName[];
  /** by name, in the order of the answer's envelopes */
  readonly setups: readonly (readonly [string, SetupDocument])[];
  /** triangles of the parts that are a mesh, as their files have them */
  readonly meshes?: MeshFiles;
  /** the lowest points over the ground too */
  readonly ground?: boolean;
}

export interface ClearanceAnswer {
  /** least spare first */
  readonly rows: readonly ClearanceRow[];
  readonly envelope: readonly EnvelopeRow[];
  /** parts that could not be made, and corners that have no envelope */
  readonly missing: readonly string[];
  /** axles that nothing is known of, then what is to be known of the parts that were looked at */
  readonly warnings: readonly FitUpWarning[];
  /** where it was asked for */
  readonly ground?: Pick<OverGround, 'rows' | 'stances'>;
}

/** A pair of one corner, over the setups in which both of its parts are there. */
interface Task extends PairOfCorner {
  /** its mirror image is the same pair on the other side, and is read off it */
  readonly isBoth: boolean;
}

/** A row of the search, before its mirror image is set beside it. */
interface Searched {
  readonly row: ClearanceRow;
  readonly isBoth: boolean;
}

/** Rows whose remedies are looked for. */
const MOST_REMEDIED = 12;

/**
 * Least clearance of every pair that can move against each other, over the envelopes of the setups in use; then what would clear
 * those that keep their margin least.
 * @param library - searches meshes; null: nobody here looks at one
 */
export function clearanceStudy(
  mechanism: CarMechanism,
  question: ClearanceQuestion,
  library: MeshLibrary | null = null,
): Study<ClearanceAnswer> {
  const meshes = partMeshes(mechanism.document, mechanism.mmPerUnit, question.meshes ?? {}, library ?? noLibrary);
  const prepared = prepare(mechanism, question, meshes);
  if ('failure' in prepared) return { failure: prepared.failure, round: () => roundOf({ ...NOTHING, run: () => null }) };
  const { corners, lacking, stood, missing } = prepared;
  const fieldsOf = (task: PairOfCorner): PairField[] =>
    corners
      .filter(({ envelope }) => envelope.axle === task.axle && envelope.side === task.side)
      .map((corner) => fieldOf(mechanism, corner, task.pair))
      .filter((field) => field !== null);
  const envelope = envelopeRows(corners);
  const partWarnings = (): FitUpWarning[] => {
    const own = corners.map(({ axle, side, made }) => ({ axle, side, pieces: made.pieces }));
    const meshes = openMeshWarnings(own.flatMap(({ pieces }) => pieces));
    return [...meshes, ...kindWarnings(mechanism.document), ...farWarnings(own), ...shapelessWarnings(own)];
  };
  const first = (): Round<ClearanceAnswer> => {
    const tasks = tasksOf(corners, question.sides);
    return roundOf({
      doing: 'looking at every pair',
      chunks: tasks.length,
      isLong: true,
      run: (chunk): Searched | null => {
        const row = pairRow(fieldsOf(tasks[chunk]), tasks[chunk]);
        return row === null ? null : { row, isBoth: tasks[chunk].isBoth };
      },
      merge: (rows) => ({
        next: leastFirst(
          rows.filter((row) => row !== null),
          ({ row }) => row.spare,
        ),
      }),
    });
  };
  const second = (searched: readonly Searched[]): Round<ClearanceAnswer> => {
    const short = searched.filter(({ row: { verdict } }) => verdict === 'short' || verdict === 'cuts').slice(0, MOST_REMEDIED);
    const remedies = new Remedies(mechanism, new Map(question.setups), meshes);
    return roundOf({
      doing: 'looking for what would clear it',
      chunks: short.length,
      isLong: true,
      run: (chunk): readonly (readonly Remedy[])[] => {
        const { row, isBoth } = short[chunk];
        const fields = fieldsOf(row);
        const worst = findWorst(fields, fields[0].needs)!;
        const found = remedies.of(fields, worst);
        return isBoth ? [found, remedies.mirrored(fields[worst.field], found)] : [found];
      },
      merge: (found) => ({
        answer: withGround({
          rows: searched.flatMap((one) => {
            const [own, others] = found[short.indexOf(one)] ?? [];
            const row = { ...one.row, wouldClear: own ?? [] };
            return one.isBoth ? [row, { ...mirroredRow(one.row), wouldClear: others ?? [] }] : [row];
          }),
          envelope,
          missing,
          warnings: [...lacking, ...partWarnings()],
        }),
      }),
    });
  };
  const withGround = (answer: ClearanceAnswer): ClearanceAnswer => {
    if (question.ground !== true) return answer;
    const { missing: left, ...ground } = overGround(mechanism, stood, question.axles, question.sides, meshes);
    return { ...answer, missing: [...missing, ...left], ground };
  };
  return { failure: null, round: (from) => (from === undefined ? first() : second(from as readonly Searched[])) };
}

const noLibrary = (): never => {
  throw new Error('clearanceStudy: meshes are searched where a library for them is given');
};

const NOTHING = { doing: '', chunks: 0, merge: () => ({ answer: { rows: [], envelope: [], missing: [], warnings: [] } }) };

interface Prepared {
  readonly corners: readonly ClearanceCorner[];
  readonly stood: readonly StoodSetup[];
  /** axles that have no envelope */
  readonly lacking: readonly FitUpWarning[];
  readonly missing: readonly string[];
}

function prepare(
  mechanism: CarMechanism,
  { axles, sides, setups }: ClearanceQuestion,
  meshes: PartMeshes,
): Prepared | { readonly failure: Failure } {
  const stood: StoodSetup[] = [];
  for (const [name, setup] of setups) {
    const car = assembleCar(mechanism, setup);
    if (!car.ok) return { failure: car.failure };
    stood.push({ name, car: car.value });
  }
  const missing = new Set<string>();
  const corners: ClearanceCorner[] = [];
  const lacking: FitUpCorner[] = [];
  for (const corner of fitUpCorners(stood, axles)) {
    if (!sides.includes(corner.side.mechanism.side)) continue;
    if (corner.envelope === null) {
      missing.add(noEnvelopeSentence(corner));
      lacking.push(corner);
      continue;
    }
    const made = withPieces(mechanism, corner, corner.envelope, meshes);
    for (const piece of made.made.missing) missing.add(`The part "${piece.name}" is left out: it needs ${piece.missing}.`);
    corners.push(made);
  }
  return { corners, lacking: envelopeWarnings(lacking), stood, missing: [...missing] };
}

function tasksOf(corners: readonly ClearanceCorner[], sides: readonly SideName[]): Task[] {
  const tasks = new Map<string, Task>();
  const isMirrored = (axle: AxleName): boolean =>
    BOTH_SIDES.every((side) => sides.includes(side)) &&
    corners.every(({ car, axle: of }) => of.axle !== axle || isMirrorImage(car[axle]!));
  const mirroredAxles = (['front', 'rear'] as const).filter(isMirrored);
  for (const { envelope, made } of corners) {
    const { axle, side } = envelope;
    for (const [first, second] of pairsOf(made.pieces)) {
      const isBoth = mirroredAxles.includes(axle) && hasMirrorImage(first) && hasMirrorImage(second);
      if (isBoth && side === 'right') continue;
      const task: Task = { axle, side, pair: [first.name, second.name], isBoth };
      tasks.set(JSON.stringify(task), task);
    }
  }
  return [...tasks.values()];
}

/** The same on the right-hand wheel, with the rack turned over. */
const mirroredRow = (row: ClearanceRow): ClearanceRow => ({
  ...row,
  side: 'right',
  at: { ...row.at, rack: turnedOver(row.at.rack) },
  points: [mirror(row.points[0]), mirror(row.points[1])],
});
