import { add, cross, length, scale, type Vector } from '../../core/vector';
import type { CornerLoads } from './cornerLoads';

/**
 * How far the body of a corner that is worst in balance is from it: what is left of its forces, and of its moments about the
 * origin of the car ÷ the wheel's radius, ÷ the largest force there is. Found from the rows alone, as they are handed out: a body
 * is in balance when what its ends put on others is what others put on it.
 */
export function worstImbalance({ rows, given }: CornerLoads, radius: number): number {
  const sums = new Map<string, { force: Vector; moment: Vector }>();
  let largest = 0;
  const put = (on: string, at: Vector, force: Vector, moment: Vector | null, sense: 1 | -1): void => {
    const sum = sums.get(on) ?? { force: [0, 0, 0], moment: [0, 0, 0] };
    const turned = moment === null ? cross(at, force) : add(cross(at, force), moment);
    sums.set(on, { force: add(sum.force, scale(force, sense)), moment: add(sum.moment, scale(turned, sense)) });
    largest = Math.max(largest, length(force));
  };
  for (const { at, force, moment } of given) put('knuckle', at, force, moment, 1);
  for (const row of rows) {
    // joints say again what links have said, and the stand-in of a spring is no body
    if (row.kind === 'joint') continue;
    for (const { on, at, force, moment } of row.ends) {
      put(on, at, force, moment, 1);
      put(row.link, at, force, moment, -1);
    }
  }
  let worst = 0;
  for (const [on, { force, moment }] of sums)
    if (on !== 'body' && on !== 'otherArm') worst = Math.max(worst, length(force), length(moment) / radius);
  return largest === 0 ? 0 : worst / largest;
}
