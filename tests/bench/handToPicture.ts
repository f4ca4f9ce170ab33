import type { AxleName, PlacedAxle } from '../../geometry/index';
import { sweepSetup } from '../../renderer/compute/curves';
import { placeSetup } from '../../renderer/compute/placeSetup';
import { beginTurn, turnAdjuster } from '../../renderer/state/actions/editSetup';
import { openCarText } from '../../renderer/state/actions/openCar';
import { benchOf, comparedWith, createBenchStore } from '../../renderer/state/benchStore';
import { buildAxleModel } from '../../renderer/viewport/axleModel';
import { buildMaterials } from '../../renderer/viewport/materials';

const AXLES = ['front', 'rear'] as const;
const CURVES = ['toe', 'camber', 'rollCentreHeight'];
const ADJUSTER = 'plateAcross';
/** So many settings in turn that nothing is remembered from the last time round. */
const SETTINGS = 40;
const MM_PER_SETTING = 0.25;
const HELD = { travel: 0, rollDeg: 0, rack: 0 };
const TRAVEL_MM = 80;

/**
 * One move of the hand as the window works it out: the adjuster's new number, all readings of the setup and of the compared
 * one, three curves of both axles for both setups, and new places of the solids of both axles.
 */
export function handToPicture(sample: string): () => number {
  const store = createBenchStore();
  openCarText(store, 'sample', 'sample', sample);
  const document = benchOf(store.getState())?.document;
  if (!document) throw new Error('the sample does not open');
  beginTurn(store);
  const materials = buildMaterials();

  const placed = (axle: AxleName): { placed: PlacedAxle; rack: number } => {
    const state = store.getState();
    if (state.shown && axle === state.axle) return state.shown.row;
    const bench = benchOf(state);
    const at = bench && placeSetup(bench.document, bench.setup, axle, state.position);
    if (!at) throw new Error('the sample stands');
    return { placed: at, rack: 0 };
  };
  const models = AXLES.map((axle) => {
    const described = document[axle];
    if (!described) throw new Error('the sample has both axles');
    return { axle, model: buildAxleModel(described, placed(axle).placed, 1, materials) };
  });

  let turn = 0;
  return () => {
    turn = (turn + 1) % SETTINGS;
    turnAdjuster(store, ADJUSTER, 'top plate', 'both', -turn * MM_PER_SETTING);
    const state = store.getState();
    const bench = benchOf(state);
    const other = comparedWith(state);
    if (!bench || !other || !state.answer?.ok) throw new Error('the setup stands and is compared');
    let sum = 0;
    for (const axle of AXLES) {
      const span = { over: 'bump', from: -TRAVEL_MM, to: TRAVEL_MM, held: HELD } as const;
      for (const one of [{ document: bench.document, setup: bench.setup }, other]) {
        const swept = sweepSetup(one.document, one.setup, axle, span, CURVES);
        if (!swept.ok) throw new Error(swept.failure.message);
        for (const key of CURVES) sum += swept.value.curves.get(key)?.left.values[60] ?? 0;
      }
    }
    for (const { axle, model } of models) {
      const now = placed(axle);
      model.place(now.placed, now.rack);
    }
    return sum;
  };
}
