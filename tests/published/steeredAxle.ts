import { toRadians, type AxleDocument, type Triple, type Vector } from '../../geometry/index';
import { add, dot, scale, subtract, unit } from '../../geometry/core/vector';
import { turnedAbout, type Line } from './turn';

interface SteeredAxle {
  readonly layout: 'strut' | 'multi-link';
  /** degrees */
  readonly kingpinInclination: number;
  readonly caster: number;
  readonly camber?: number;
  /** from the wheel centre to a point of the steering axis [mm]; [0, 0, 0] puts the wheel centre on it */
  readonly offset?: Vector;
}

export const WHEEL_CENTRE: Triple = [0, 750, 310];
const RACK_END: Triple = [-130, 330, 330];
const TIE_ROD_END: Triple = [-140, 690, 340];

/** The steering axis: along (−tan caster, −tan kingpin inclination, 1). */
export function kingpinOf({ kingpinInclination, caster, offset = [0, 0, 0] }: SteeredAxle): Line {
  const direction = unit([-Math.tan(toRadians(caster)), -Math.tan(toRadians(kingpinInclination)), 1]);
  return { point: add(WHEEL_CENTRE, offset), direction };
}

/** A steered corner whose joints stand on a steering axis that is chosen: strut or double wishbone, all else invented. */
export function steeredAxle(wanted: SteeredAxle, rest: Partial<AxleDocument> = {}): AxleDocument {
  const { point, direction } = kingpinOf(wanted);
  const along = (mm: number): Vector => add(point, scale(direction, mm));
  const wheel = { camber: wanted.camber ?? 0, toe: 0, loadedRadius: 310 };
  if (wanted.layout === 'strut') {
    const points = {
      armFront: [140, 360, 200],
      armRear: [-190, 350, 205],
      ballJoint: along(-110),
      strutTop: along(520),
      // the strut's own axis is another line than the steering axis
      strutFoot: add(along(220), [6, 24, 0]),
      rackEnd: RACK_END,
      tieRodEnd: TIE_ROD_END,
      wheelCentre: WHEEL_CENTRE,
    } satisfies Record<string, Vector>;
    return { layout: 'strut', points, wheel, steering: { axis: [0, 1, 0] }, ...rest };
  }
  return {
    layout: 'multi-link',
    points: {
      wheelCentre: WHEEL_CENTRE,
      lowerFrontBody: [140, 360, 200],
      lowerRearBody: [-190, 350, 205],
      lowerKnuckle: along(-110),
      upperFrontBody: [90, 420, 440],
      upperRearBody: [-160, 430, 430],
      upperKnuckle: along(150),
      rackEnd: RACK_END,
      tieRodEnd: TIE_ROD_END,
    },
    rods: {
      lowerFront: ['lowerFrontBody', 'lowerKnuckle'],
      lowerRear: ['lowerRearBody', 'lowerKnuckle'],
      upperFront: ['upperFrontBody', 'upperKnuckle'],
      upperRear: ['upperRearBody', 'upperKnuckle'],
      tieRod: ['rackEnd', 'tieRodEnd'],
    },
    wheel,
    steering: { axis: [0, 1, 0], rod: 'tieRod' },
    ...rest,
  };
}

/**
 * Rack and travel of the left corner that turn the knuckle about the standing steering axis by an angle, arms at rest: the tie
 * rod keeps its length between the turned end Q′ and the rack's, (Q′ − R − r·ŷ)² = L², a quadratic in r.
 */
export function positionFor(wanted: SteeredAxle, degrees: number): { readonly travel: number; readonly rack: number } {
  const line = kingpinOf(wanted);
  const home = subtract(TIE_ROD_END, RACK_END);
  const [x, y, z] = subtract(turnedAbout(TIE_ROD_END, line, degrees), RACK_END);
  const rack = y - Math.sqrt(dot(home, home) - x * x - z * z);
  return { rack, travel: turnedAbout(WHEEL_CENTRE, line, degrees)[2] - WHEEL_CENTRE[2] };
}
