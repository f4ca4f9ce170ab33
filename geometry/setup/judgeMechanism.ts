import { toMechanism } from '../car/toMechanism';
import type { CarDocument, SideName } from '../car/document';
import type { MechanismFault } from '../car/parseCar';
import type { AxleMechanism, SideMechanism } from '../car/mechanism';
import { singularValues } from '../core/linear';
import { OVER_CENTRE, SINGULAR } from '../core/tolerances';
import { dot, subtract } from '../core/vector';
import { evaluateStrut, strutKernel, strutSlope, tieRodTriple } from '../corner/strutKernel';
import { designJacobian } from '../corner/multiLinkKernel';
import { linkageOf, NO_ADJUSTMENT } from './linkages';

/** Axles nearer together than this are not two axles of a car [mm]. */
const SHORTEST_WHEELBASE_MM = 10;

/**
 * Refuses a design that has no branch to follow: links that do not hold the wheel, a tie rod over centre.
 * @param document - in order as far as the file goes
 */
export function judgeMechanism(document: CarDocument): readonly MechanismFault[] {
  const car = toMechanism(document);
  const faults: MechanismFault[] = [];
  for (const axle of [car.front, car.rear]) {
    if (axle === null) continue;
    for (const side of ['left', 'right'] as const) {
      if (side === 'right' && document[axle.axle]?.right?.points === undefined) continue;
      faults.push(...(axle.layout === 'strut' ? judgeStrut(axle, axle[side]) : judgeMultiLink(axle, axle[side])));
    }
  }
  if (car.wheelbase !== null && !(car.wheelbase > SHORTEST_WHEELBASE_MM)) {
    faults.push({
      code: 'axles-exchanged',
      path: 'rear.points.wheelCentre',
      found: `rear wheels ${car.wheelbase.toFixed(1)} mm behind the front ones`,
      expected: 'an x of the rear wheel centres below that of the front ones: X points forward',
      hint: 'was x measured rearward? then its sign is the other one',
    });
  }
  return faults;
}

const pathOf = (axle: AxleMechanism, side: SideName): string => (side === 'left' ? axle.axle : `${axle.axle}.right`);

function judgeStrut(axle: AxleMechanism, side: SideMechanism): MechanismFault[] {
  const design = linkageOf(axle, side, NO_ADJUSTMENT);
  const path = `${pathOf(axle, side.side)}.points`;
  const ballJoint = design.rods[0].outer;
  const isAbove = design.guide!.top[2] > ballJoint[2];
  const rise = dot(subtract(design.guide!.top, ballJoint), design.guide!.axis);
  if (!(rise > 0 && isAbove))
    return [
      {
        code: 'strut-upside-down',
        path: `${path}.strutTop`,
        found: 'a strut top below the ball joint',
        expected: 'the axis to run up from strutFoot to strutTop, past the ball joint',
        hint: 'are strutFoot and strutTop exchanged?',
      },
    ];
  const triple = tieRodTriple(design);
  if (!(Math.abs(triple) > OVER_CENTRE)) {
    return [
      {
        code: 'over-centre',
        path: `${path}.tieRodEnd`,
        found: `a tie rod ${Math.abs(triple).toPrecision(2)} of its lever from over centre at design`,
        expected: 'a tie rod that stands across its steering lever',
        hint: null,
      },
    ];
  }
  const kernel = strutKernel(design, design);
  const isClosed = !('armsShortBy' in kernel) && evaluateStrut(kernel, 0, 0) === 0;
  if (!isClosed || !(Math.abs(strutSlope()) > SINGULAR * side.wheel.loadedRadius)) {
    return [
      {
        code: 'singular-linkage',
        path,
        found: 'a wheel that does not rise with its lower arm at design',
        expected: 'a linkage that holds the wheel in all but one motion',
        hint: 'is the ball joint right above or below the arm’s axis?',
      },
    ];
  }
  return [];
}

function judgeMultiLink(axle: AxleMechanism, side: SideMechanism): MechanismFault[] {
  const design = linkageOf(axle, side, NO_ADJUSTMENT);
  // the five constraints and the wheel centre's height
  const rows = designJacobian(design, side.wheel.loadedRadius);
  rows.push([0, 0, 0, 0, 0, 1]);
  const { values } = singularValues(rows);
  const smallest = values[values.length - 1];
  if (smallest > SINGULAR) return [];
  return [
    {
      code: 'singular-linkage',
      path: `${pathOf(axle, side.side)}.points`,
      found: `links that leave the wheel more than one motion (smallest scaled singular value ${smallest.toExponential(1)})`,
      expected: 'five constraints that are independent of each other',
      hint: 'parallel rods, or rods that all meet one point, do not hold a wheel',
    },
  ];
}
