import { describe, it } from 'vitest';
import { linkLoads, type Position } from '../../geometry/index';
import { dot, subtract, unit } from '../../geometry/core/vector';
import { caseOf, forces, placed } from '../geometry/fitup/loadedCars';
import { statics } from '../geometry/fitup/statics';
import { assembled, AXLES, axlesApart, carsOf, documentsOf, randomPositions, SIDES } from './assembled';
import { Breaches } from './breaches';
import { oneDozenIn } from './randomCars';

const SEEDS = oneDozenIn(5);
const GIVEN = { Fx: -3100, Fy: -5200, Fz: 6150, Mz: 85_000 };

describe('the loads in the links of any car', () => {
  it(`are in balance on every body to 1e-9 of the load, with adjusters moved too, ${SEEDS.length} cars`, () => {
    const breaches = new Breaches();
    for (const { seed, document, setup, car, draw } of carsOf(SEEDS, axlesApart))
      for (const axle of AXLES)
        for (const position of randomPositions(draw, document[axle]!, 3))
          for (const driven of [false, true]) {
            const answer = linkLoads(car, [caseOf({ ...GIVEN, driven })], position, [axle]);
            if (!answer.ok) continue;
            const [{ residual }] = answer.value.cases;
            breaches.limit(residual, 1e-9, () => `seed ${seed} ${setup} ${axle} ${JSON.stringify(position)} driven ${driven}`);
          }
    breaches.expectNone(500);
  });

  it(`are those of six equations in the car's frame, as designed, ${SEEDS.length} cars`, () => {
    const breaches = new Breaches();
    for (const { seed, document: drawn, draw } of documentsOf(SEEDS)) {
      const document = axlesApart(drawn);
      const car = assembled(document, 'Design')!;
      for (const axle of AXLES) {
        const positions: Position[] = [{}, ...randomPositions(draw, document[axle]!, 1)];
        for (const position of positions) {
          const answer = linkLoads(car, [caseOf(GIVEN)], position, [axle]);
          if (!answer.ok) continue;
          // a link that does not reach has no force to compare
          const hasBar = document[axle]!.antiRollBar !== undefined;
          if (hasBar && SIDES.some((side) => placed(car, axle, side, position).bar === null)) continue;
          const { rows } = answer.value.cases[0];
          for (const side of SIDES) {
            const other = statics(document, car, axle, side, position, forces(GIVEN));
            const size = Math.max(10_000, ...other.rods.map(Math.abs));
            const at = placed(car, axle, side, position);
            car[axle]!.mechanism.rods.forEach(({ name }, i) => {
              const row = rows.find((one) => one.side === side && one.link === name);
              if (row === undefined) return;
              const { inner, outer } = at.rods[i];
              const found = row.kind === 'beam' ? -dot(row.ends[1].force, unit(subtract(outer, inner))) : row.axial!;
              const where = () => `seed ${seed} ${axle} ${side} ${JSON.stringify(position)} ${name}: ${found}, ${other.rods[i]}`;
              breaches.limit(Math.abs(found - other.rods[i]) / size, 1e-6, where);
            });
          }
        }
      }
    }
    breaches.expectNone(2000);
  });
});
