import { toRadians } from '../core/angle';
import { dot, mirror, scale, subtract, unit, type Vector } from '../core/vector';
import type { AxleDocument, SideName } from './document';

const UP: Vector = [0, 0, 1];

/**
 * Contact centre of one wheel at design, C = W − r · unit(n − (n·s)s) with n = Z.
 * @returns in the car frame and in the file's unit of length
 */
export function contactCentre(axle: AxleDocument, side: SideName): Vector {
  const own = side === 'right' ? axle.right : undefined;
  const wheel = { ...axle.wheel, ...own?.wheel };
  const rightCentre = own?.points?.['wheelCentre'];
  const centre = rightCentre === undefined ? axle.points['wheelCentre'] : mirror(rightCentre);
  const [camber, toe] = [toRadians(wheel.camber), toRadians(wheel.toe)];
  const spindle: Vector = [Math.cos(camber) * Math.sin(toe), Math.cos(camber) * Math.cos(toe), -Math.sin(camber)];
  const upInWheel = unit(subtract(UP, scale(spindle, dot(UP, spindle))));
  const contact = subtract(centre, scale(upInWheel, wheel.loadedRadius));
  return side === 'right' ? mirror(contact) : contact;
}
