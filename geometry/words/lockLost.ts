import type { AxleName, SideName } from '../car/document';
import type { Numbers } from '../studies/carNumbers';

/**
 * The price of a rack stop in words: lock alone, since nothing else of the car changes.
 * @param changes - of `steerAngle` and `turningCircle` at the stop against the end that the rack had, by dotted name [deg, mm]
 * @param angle - degrees with their unit, @param length - mm with theirs, as they are read
 */
export function lockLostWords(
  changes: Numbers,
  { axle, side }: { readonly axle: AxleName; readonly side: SideName },
  angle: (degrees: number) => string,
  length: (mm: number) => string,
): string {
  const [steer, circle] = [changes[`${axle}.${side}.steerAngle`] ?? null, changes[`${axle}.both.turningCircle`] ?? null];
  const words = [
    ...(steer === null ? [] : [`this wheel steers ${angle(Math.abs(steer))} less`]),
    ...(circle === null ? [] : [`turning circle ${length(Math.abs(circle))} ${circle < 0 ? 'smaller' : 'larger'}`]),
  ];
  return words.length === 0 ? 'lock is lost' : words.join(', ');
}
