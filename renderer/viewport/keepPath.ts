import { pathCsv, pointPath } from '../../geometry/index';
import { nameOfKey } from '../adjusters/fitterWords';
import { assembleSetup } from '../compute/assembleBench';
import { saveFile } from '../look/saveFile';
import type { BenchState } from '../state/benchStore';
import { keptName } from '../state/carTitle';
import { chosenUnits } from '../state/chosenUnits';
import type { PointRef } from '../state/viewing';
import { reachOf } from './reachOf';

/** The way of a point over all travel as CSV, at either lock and straight ahead, for who leaves room for it. */
export const keepPath = (state: BenchState, { axle, side, point }: PointRef): void => {
  const bench = state.history?.present;
  const car = bench && assembleSetup(bench.document, bench.setup);
  if (!bench || !car?.ok) return;
  const { path, locks } = reachOf(bench, axle);
  const positions = locks.flatMap((rack) => path.map((travel) => ({ travel, rack })));
  const text = pathCsv(pointPath(car.value, axle, point, positions, [side]), chosenUnits(state).length);
  const name = keptName({ ...state, axle }, `${side} ${nameOfKey(point).toLowerCase()} path`);
  saveFile(`${name}.csv`, new Blob([text], { type: 'text/csv' }));
};
