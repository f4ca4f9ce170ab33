import { toRadians } from '../core/angle';
import { mirror, reject, unit, type Vector } from '../core/vector';
import type {
  Adjuster,
  AxleMechanism,
  Bar,
  Body,
  CarMechanism,
  Damper,
  SideMechanism,
  Spring,
  Steering,
  Wheel,
} from './mechanism';
import type {
  AdjusterDocument,
  AxleDocument,
  AxleName,
  BodyDocument,
  CarDocument,
  Seat,
  Triple,
  WheelDocument,
} from './document';

export const MM_PER_INCH = 25.4;
export const mmPerUnit = (document: CarDocument): number => (document.units?.length === 'in' ? MM_PER_INCH : 1);

/** The rods of a strut corner, by the names that the car file fixes: [name, inner point, outer point]. */
export const STRUT_RODS = [
  { name: 'armFront', inner: 'armFront', outer: 'ballJoint' },
  { name: 'armRear', inner: 'armRear', outer: 'ballJoint' },
  { name: 'tieRod', inner: 'rackEnd', outer: 'tieRodEnd' },
] as const;

/**
 * The document in millimetres and radians, left and right each in the left-hand frame.
 * The only conversion of units between file and library.
 * @param document - a car that passed `parseCar`
 */
export function toMechanism(document: CarDocument): CarMechanism {
  const mm = mmPerUnit(document);
  const front = document.front === undefined ? null : axleMechanism('front', document.front, mm);
  const rear = document.rear === undefined ? null : axleMechanism('rear', document.rear, mm);
  const wheelbase = front === null || rear === null ? null : meanWheelCentreX(front) - meanWheelCentreX(rear);
  return { document, mmPerUnit: mm, body: bodyOf(document.body, mm), front, rear, wheelbase };
}

export const meanWheelCentreX = (axle: AxleMechanism): number =>
  0.5 * (axle.left.points['wheelCentre'][0] + axle.right.points['wheelCentre'][0]);

const inMm = (point: Triple, mm: number): Vector => [point[0] * mm, point[1] * mm, point[2] * mm];
const lengthOrNull = (value: number | undefined, mm: number): number | null => (value === undefined ? null : value * mm);

function bodyOf(body: BodyDocument | undefined, mm: number): Body {
  const driven = body?.drivenAxle;
  const share = driven === 'front' ? 1 : driven === 'rear' ? 0 : driven === 'both' ? body?.driveFrontShare : undefined;
  return {
    mass: body?.mass ?? null,
    frontShare: body?.frontShare ?? null,
    leftShare: body?.leftShare ?? 0.5,
    centreOfGravityHeight: lengthOrNull(body?.centreOfGravityHeight, mm),
    unsprungFront: body?.unsprungFront ?? null,
    unsprungRear: body?.unsprungRear ?? null,
    brakeFrontShare: body?.brakeFrontShare ?? null,
    driveFrontShare: share ?? null,
  };
}

function axleMechanism(axle: AxleName, document: AxleDocument, mm: number): AxleMechanism {
  const rods =
    document.layout === 'strut'
      ? STRUT_RODS
      : Object.entries(document.rods ?? {}).map(([name, [inner, outer]]) => ({ name, inner, outer }));
  const left: Record<string, Vector> = {};
  for (const [name, point] of Object.entries(document.points)) left[name] = inMm(point, mm);
  const right: Record<string, Vector> = { ...left };
  for (const [name, point] of Object.entries(document.right?.points ?? {})) right[name] = mirror(inMm(point, mm));
  const heightAt = document.heightAt === undefined ? null : inMm(document.heightAt.point, mm);
  const side = (name: 'left' | 'right', points: Record<string, Vector>, wheel: WheelDocument): SideMechanism => ({
    side: name,
    points,
    wheel: wheelOf(wheel, mm),
    heightAt,
  });
  const trailingArm = document.trailingArm;
  const adjusters = Object.entries(document.adjusters ?? {}).map(([name, adjuster]) => adjusterOf(name, adjuster, rods, mm));
  return {
    axle,
    layout: document.layout,
    left: side('left', left, document.wheel),
    right: side('right', right, { ...document.wheel, ...document.right?.wheel }),
    rods,
    trailingArm: trailingArm === undefined ? null : { pivot: trailingArm.pivot, axis: unit(trailingArm.axis) },
    steering: steeringOf(document, mm),
    spring: springOf(document, mm),
    damper: damperOf(document, mm),
    bar: barOf(document, mm),
    travel: document.travel === undefined ? null : [document.travel[0] * mm, document.travel[1] * mm],
    adjusters,
    toeAdjuster: adjusters.find((adjuster) => adjuster.name === document.toeAdjuster) ?? null,
  };
}

/** A wheel of the file, or of a setup laid over it, in mm and radians. */
export function wheelOf(document: WheelDocument, mm: number): Wheel {
  return {
    camber: toRadians(document.camber),
    toe: toRadians(document.toe),
    loadedRadius: document.loadedRadius * mm,
    tyreRadius: lengthOrNull(document.tyreRadius, mm),
    tyreWidth: lengthOrNull(document.tyreWidth, mm),
    rimDiameter: lengthOrNull(document.rimDiameter, mm),
    rimWidth: lengthOrNull(document.rimWidth, mm),
    tyreRate: document.tyreRate ?? null,
    document,
  };
}

function steeringOf(document: AxleDocument, mm: number): Steering | null {
  const steering = document.steering;
  if (steering === undefined) return null;
  const { travel } = steering;
  const ends =
    typeof travel === 'number'
      ? ([-travel * mm, travel * mm] as const)
      : travel === undefined
        ? null
        : ([travel[0] * mm, travel[1] * mm] as const);
  const rod = document.layout === 'strut' ? 'tieRod' : (steering.rod ?? '');
  return { axis: unit(steering.axis), travel: ends, perTurn: lengthOrNull(steering.perTurn, mm), rod };
}

function springOf(document: AxleDocument, mm: number): Spring | null {
  const spring = document.spring;
  if (spring === undefined) return null;
  const points =
    spring.upper === undefined || spring.lower === undefined
      ? null
      : { upper: spring.upper, lower: spring.lower, lowerOn: spring.lowerOn ?? 'knuckle' };
  const helper = spring.helper;
  return {
    points,
    rate: spring.rate ?? null,
    freeLength: lengthOrNull(spring.freeLength, mm),
    installed: lengthOrNull(spring.installed, mm),
    solidLength: lengthOrNull(spring.solidLength, mm),
    helper:
      helper === undefined
        ? null
        : { rate: helper.rate, freeLength: helper.freeLength * mm, solidLength: helper.solidLength * mm },
  };
}

function damperOf(document: AxleDocument, mm: number): Damper | null {
  const damper = document.damper;
  if (damper === undefined) return null;
  const points =
    damper.upper === undefined || damper.lower === undefined
      ? null
      : { upper: damper.upper, lower: damper.lower, lowerOn: damper.lowerOn ?? 'knuckle' };
  return {
    points,
    stroke: lengthOrNull(damper.stroke, mm),
    bumpStopAt: lengthOrNull(damper.bumpStopAt, mm),
    droopStopAt: lengthOrNull(damper.droopStopAt, mm),
    open: lengthOrNull(damper.open, mm),
    closed: lengthOrNull(damper.closed, mm),
  };
}

function barOf(document: AxleDocument, mm: number): Bar | null {
  const bar = document.antiRollBar;
  if (bar === undefined) return null;
  return {
    pivot: inMm(bar.pivot, mm),
    axis: unit(bar.axis ?? [0, 1, 0]),
    armEnd: inMm(bar.armEnd, mm),
    linkEnd: inMm(bar.linkEnd, mm),
    linkOn: bar.linkOn,
    rate: bar.rate ?? null,
    holes: (bar.holes ?? []).map((hole) => ({ name: hole.name, armEnd: inMm(hole.armEnd, mm), rate: hole.rate ?? null })),
  };
}

function adjusterOf(name: string, document: AdjusterDocument, rods: AxleMechanism['rods'], mm: number): Adjuster {
  // a seat left out: the body for a point on the body, the knuckle for a point on the knuckle
  const seatOf = (point: string, seat: Seat | undefined): Seat => seat ?? (isOnKnuckle(point, rods) ? 'knuckle' : 'body');
  const range = (pair: readonly [number, number], scale: number): readonly [number, number] => [pair[0] * scale, pair[1] * scale];
  switch (document.kind) {
    case 'slide': {
      const along = document.along === 'spindle' ? 'spindle' : unit(document.along);
      return {
        name,
        document,
        kind: 'slide',
        moves: document.moves,
        along,
        seat: seatOf(document.moves, document.seat),
        range: range(document.range, mm),
      };
    }
    case 'eccentric-bolt':
      return {
        name,
        document,
        kind: 'eccentric-bolt',
        moves: document.moves,
        slot: unit(document.slot),
        throw: document.throw * mm,
        seat: seatOf(document.moves, document.seat),
      };
    case 'offset-bushing': {
      const axis = unit(document.axis);
      const twelve = unit(reject(document.twelve, axis));
      return {
        name,
        document,
        kind: 'offset-bushing',
        moves: document.moves,
        axis,
        twelve,
        offset: document.offset * mm,
        seat: seatOf(document.moves, document.seat),
      };
    }
    case 'clamp-eccentric':
      return {
        name,
        document,
        kind: 'clamp-eccentric',
        pivot: document.pivot,
        bolt: document.bolt,
        axis: unit(document.axis),
        throw: document.throw * mm,
      };
    case 'turnbuckle':
      return {
        name,
        document,
        kind: 'turnbuckle',
        rod: document.rod,
        perTurn: document.perTurn * mm,
        range: range(document.range, 1),
      };
    case 'perch':
      return {
        name,
        document,
        kind: 'perch',
        perTurn: document.perTurn * mm,
        range: range(document.range, 1),
        moves: document.moves ?? 'seat',
      };
  }
}

/** Whether a point is carried by the knuckle: the outer end of a rod, or the wheel centre. */
export const isOnKnuckle = (point: string, rods: AxleMechanism['rods']): boolean =>
  point === 'wheelCentre' ||
  point === 'strutFoot' ||
  point === 'clampUpper' ||
  point === 'clampLower' ||
  rods.some((rod) => rod.outer === point);
