import {
  assembleCar,
  drawnParts,
  envelopeRows,
  envelopeWarnings,
  fitUpCorners,
  jointTilts,
  jointWarnings,
  linkLoads,
  loadCases,
  ofSide,
  openStudy,
  paperPlane,
  placeAxle,
  sectionOf,
  spanEnds,
  strokeRows,
  strokeWarnings,
  sweptSpaceSteps,
  templateGround,
  templateOf,
  tilesOf,
  toMechanism,
  toRadians,
  type CarMechanism,
  type Failure,
  type FitUpCorner,
  type FitUpWarning,
  type MeshLibrary,
  type Result,
  type StoodSetup,
} from '../../../geometry/index';
import { memoLast } from '../memoLast';
import type { FitUpOrder, FitUpProgress, FitUpResult, OverSetups, TemplateSide } from './fitUpOrder';
import { planeOnSide } from './planeOnSide';

type Of<Job extends FitUpOrder['job']> = Extract<FitUpOrder, { readonly job: Job }>;

/** Of documents that come by post each is another object: what was made of the last one is kept by the caller's thread. */
const mechanismOf = memoLast((document: FitUpOrder['document']): CarMechanism => toMechanism(document), 2);

/**
 * Answers what fit-up asks. Takes its time: for a thread that draws nothing.
 * @param library - makes meshes ready to be searched
 * @param tell - told how far it has come
 */
export const answerFitUp = <Order extends FitUpOrder>(
  order: Order,
  library: MeshLibrary,
  tell: (progress: FitUpProgress) => void = () => undefined,
): FitUpResult<Order> => answerAny(order, library, tell) as FitUpResult<Order>;

const answerAny = (order: FitUpOrder, library: MeshLibrary, tell: (progress: FitUpProgress) => void): FitUpResult => {
  switch (order.job) {
    case 'clearance':
      return clearance(order, library, tell);
    case 'joints':
      return joints(order);
    case 'stroke':
      return stroke(order);
    case 'loads':
      return loads(order);
    case 'keepOut':
      return keepOut(order, library, tell);
    case 'template':
      return { ok: true, value: template(order) };
    case 'drawn':
      return drawn(order);
  }
};

const clearance = (
  { document, question }: Of<'clearance'>,
  library: MeshLibrary,
  tell: (progress: FitUpProgress) => void,
): FitUpResult<Of<'clearance'>> => {
  const study = openStudy({ study: 'clearance', document, question }, mechanismOf(document), library);
  if (study.failure !== null) return { ok: false, failure: study.failure };
  for (let round = study.round(); ;) {
    const { doing, chunks: of } = round;
    tell({ doing, done: 0, of });
    const parts: unknown[] = [];
    for (let chunk = 0; chunk < of; chunk += 1) {
      parts.push(round.run(chunk));
      tell({ doing, done: chunk + 1, of });
    }
    const outcome = round.merge(parts);
    if ('answer' in outcome) return { ok: true, value: outcome.answer };
    round = study.round(outcome.next);
  }
};

interface Stood {
  readonly corners: readonly FitUpCorner[];
  readonly left: readonly FitUpWarning[];
}

/** Setups that cannot be put together are left out and said; where none can, that is the answer. */
const stand = ({ document, setups, axles }: OverSetups): Result<Stood, Failure> => {
  const mechanism = mechanismOf(document);
  const stood: StoodSetup[] = [];
  const left: FitUpWarning[] = [];
  let failed: Failure | null = null;
  for (const [name, setup] of setups) {
    const car = assembleCar(mechanism, setup);
    if (car.ok) stood.push({ name, car: car.value });
    else {
      failed ??= car.failure;
      left.push({ code: 'setup-unreachable', path: 'setups', message: `${name} is left out: ${car.failure.message}` });
    }
  }
  return stood.length === 0 && failed !== null
    ? { ok: false, failure: failed }
    : { ok: true, value: { corners: fitUpCorners(stood, axles), left } };
};

const joints = (order: OverSetups): FitUpResult<Of<'joints'>> => {
  const stood = stand(order);
  if (!stood.ok) return stood;
  const { corners, left } = stood.value;
  const rows = jointTilts(corners);
  const warnings = [...left, ...envelopeWarnings(corners), ...jointWarnings(rows)];
  return { ok: true, value: { rows, envelope: envelopeRows(corners), warnings } };
};

const stroke = (order: OverSetups): FitUpResult<Of<'stroke'>> => {
  const stood = stand(order);
  if (!stood.ok) return stood;
  const { corners, left } = stood.value;
  const rows = strokeRows(corners);
  const warnings = [...left, ...envelopeWarnings(corners), ...strokeWarnings(rows)];
  return { ok: true, value: { rows, envelope: envelopeRows(corners), warnings } };
};

const loads = ({ document, setup: [, setup], axles, at, cases }: Of<'loads'>): FitUpResult<Of<'loads'>> => {
  const car = assembleCar(mechanismOf(document), setup);
  if (!car.ok) return car;
  const { travel, rack, rollDeg } = at;
  return linkLoads(car.value, cases ?? loadCases(car.value), { travel, rack, roll: toRadians(rollDeg) }, axles);
};

const keepOut = (
  { document, question }: Of<'keepOut'>,
  library: MeshLibrary,
  tell: (progress: FitUpProgress) => void,
): FitUpResult<Of<'keepOut'>> => {
  const steps = sweptSpaceSteps(mechanismOf(document), question, library);
  for (;;) {
    const step = steps.next();
    if (step.done === true)
      return 'failure' in step.value ? { ok: false, failure: step.value.failure } : { ok: true, value: step.value };
    tell({ doing: 'space that is swept, per cent', done: Math.round(100 * step.value), of: 100 });
  }
};

const template = ({ document, made, setups, axle, sides, plane: numbers, paper }: Of<'template'>): readonly TemplateSide[] =>
  sides.map((side) => {
    const plane = paperPlane(planeOnSide(numbers, side));
    if ('fault' in plane) return { side, message: plane.message };
    const all = sectionOf(made.mesh, plane);
    if ('missedBy' in all) {
      const far = Math.abs(all.missedBy).toFixed(1);
      return {
        side,
        message: `all that is swept lies ${far} mm or more ${all.missedBy > 0 ? 'in front of' : 'behind'} the plane`,
      };
    }
    const outlines = sides.length > 1 ? ofSide(all, plane, side) : all;
    if (outlines.length === 0) return { side, message: 'the plane cuts nothing that is swept on this side' };
    const ground = templateGround(document, made, { axles: [axle], side, setups, plane });
    const drawing = templateOf(outlines, ground);
    return {
      side,
      drawing,
      plane,
      grid: tilesOf(
        outlines,
        paper,
        drawing.points.map(({ at }) => at),
      ),
    };
  });

const drawn = ({ document, setup: [, setup], axle, side, at, meshes }: Of<'drawn'>): FitUpResult<Of<'drawn'>> => {
  const mechanism = mechanismOf(document);
  const car = assembleCar(mechanism, setup);
  if (!car.ok) return car;
  const standing = car.value[axle]?.standing[side] ?? 0;
  const { rollDeg = 0 } = at;
  const rolled =
    rollDeg === 0
      ? null
      : placeAxle(car.value, axle, {
          travel: at.from === 'standing' ? at.travel : at.travel - standing,
          rack: at.rack,
          roll: toRadians(rollDeg),
        });
  if (rolled !== null && !rolled.ok) return rolled;
  const level = at.from === 'standing' ? standing + at.travel : at.travel;
  const place = { travel: rolled === null ? level : rolled.value.travel[side], rack: at.rack };
  const parts = drawnParts(mechanism, car.value, axle, side, place, meshes);
  if (!parts.ok) return parts;
  const spans = spanEnds(mechanism, car.value, axle, side, place);
  if (!spans.ok) return spans;
  return { ok: true, value: { parts: parts.value, spans: spans.value, standing } };
};
