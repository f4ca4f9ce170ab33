import { describe, expect, it } from 'vitest';
import { add, cross, dot, length, subtract, type Vector } from '../../../geometry/core/vector';
import { loadArrows } from '../../../geometry/fitup/loads/loadArrows';
import { caseOf, loadsOf, placed, sample, stand } from './loadedCars';

const car = stand(sample('saltmarsh-hatch'));
const loads = loadsOf(car, caseOf({ Fx: 2900, Fy: -1500, Fz: 3500, driven: true }));
const of = (view: Parameters<typeof loadArrows>[1]) =>
  loadArrows(loads, view).filter(({ axle, side }) => axle === 'front' && side === 'left');
const total = (forces: readonly { readonly force: Vector }[]): Vector => forces.map(({ force }) => force).reduce(add);

describe('forces as arrows', () => {
  it('what is given: at the contact centre, and at the wheel centre what a shaft drives', () => {
    const { contactCentre, wheelCentre } = placed(car, 'front', 'left');
    const given = of('body').filter(({ link }) => link === null);
    expect(given.map(({ at }) => at)).toEqual([contactCentre, wheelCentre]);
    expect(total(given)).toEqual([2900, -1500, 3500]);
  });

  it('arrows on the body add up to what is given; on the knuckle they hold it', () => {
    for (const [view, sign] of [
      ['body', -1],
      ['knuckle', 1],
    ] as const) {
      const arrows = of(view);
      const given = total(arrows.filter(({ link }) => link === null));
      const links = total(arrows.filter(({ link }) => link !== null));
      const left: Vector = [links[0] + sign * given[0], links[1] + sign * given[1], links[2] + sign * given[2]];
      expect(length(left), view).toBeLessThan(1e-6);
    }
  });

  it('along the links: away from a link that is pulled, towards one that is pushed', () => {
    const arrows = of('links').filter(({ link }) => link !== null);
    const pairs = new Map(arrows.map(({ link }) => [link, arrows.filter((one) => one.link === link)]));
    expect(pairs.has('tieRod') && pairs.has('strut') && pairs.has('armFront')).toBe(true);
    expect(new Set(arrows.map(({ sense }) => sense))).toEqual(new Set(['pull', 'push']));
    for (const [link, [first, second]] of pairs) {
      expect(length(add(first.force, second.force)), String(link)).toBeLessThan(1e-9);
      const out = dot(second.force, subtract(second.at, first.at));
      expect(out > 0).toBe(first.sense === 'pull');
      expect(length(cross(second.force, subtract(second.at, first.at))) / Math.abs(out)).toBeLessThan(1e-9);
    }
  });

  it('a force of 0 is no arrow: the bar where both wheels stand alike', () => {
    expect(of('body').some(({ link }) => link === 'bar')).toBe(false);
  });
});
