import fc from 'fast-check';
import { expect, test } from 'vitest';
import {
  readingsOfAxle,
  readingsInContractUnits,
  setupNames,
  toRadians,
  assembleCar,
  findSetup,
  toMechanism,
  type AxleName,
  type CarDocument,
  type ReadingValue,
} from '../../../geometry/index';
import { scaleOf, stepSetting } from '../../../renderer/compute/adjusterSteps';
import { editAxle, movePoint } from '../../../renderer/state/actions/editCar';
import {
  abandonTurn,
  beginTurn,
  chooseAgainst,
  chooseSetup,
  endTurn,
  joinSides,
  redoStep,
  separateSides,
  setRideHeight,
  setToe,
  turnAdjuster,
  undoStep,
} from '../../../renderer/state/actions/editSetup';
import { chooseAxle, holdAdjuster, moveTo, standStill } from '../../../renderer/state/actions/lookAt';
import { prefer } from '../../../renderer/state/actions/prefer';
import {
  addRecordLine,
  copySetup,
  deleteSetup,
  makeSetup,
  markOnCar,
  moveSetup,
  removeRecordLine,
  renameSetup,
  writeNotes,
  writeRecordValue,
} from '../../../renderer/state/actions/setups';
import { benchOf, type BenchStore } from '../../../renderer/state/benchStore';
import { openedBench } from '../carUnderTest';

const SEED = 40_961;
const ACTIONS_A_RUN = 50;
const RUNS = 20;

/** One action, drawn before it is known what the bench then holds: `pick` chooses among what is there. */
interface Drawn {
  readonly kind: number;
  readonly pick: number;
  readonly amount: number;
  readonly side: 'left' | 'right' | 'both';
}

const at = <Item>(items: readonly Item[], pick: number): Item | undefined => items[pick % Math.max(1, items.length)];

const bench = (store: BenchStore) => {
  const present = benchOf(store.getState());
  if (!present) throw new Error('a car is open');
  return present;
};

const turnOne = (store: BenchStore, { pick, amount, side }: Drawn): void => {
  const { axle } = store.getState();
  const found = at(Object.entries(bench(store).document[axle]?.adjusters ?? {}), pick);
  if (!found) return;
  const [name, adjuster] = found;
  const { min, max } = scaleOf(adjuster);
  turnAdjuster(store, name, name, side, min + ((amount + 1) / 2) * (max - min) * 0.3);
  turnAdjuster(store, name, name, side, stepSetting(adjuster, 0, Math.round(2 * amount)));
};

const editPart = (store: BenchStore, { pick, amount, side }: Drawn): void => {
  const { axle } = store.getState();
  const point = at(Object.entries(bench(store).document[axle]?.points ?? {}), pick);
  if (!point) return;
  const [name, [x, y, z]] = point;
  if (pick % 3 === 0) {
    editAxle(store, axle, 'Loaded radius', (before) => ({ ...before, wheel: { ...before.wheel, loadedRadius: 300 + amount } }));
    return;
  }
  const own = side === 'right' ? -y : y;
  movePoint(store, axle, side === 'right' ? 'right' : 'left', name, [x + amount, own + amount, z + amount], `Move ${name}`);
};

/** Everything that a person can do to what is kept, each once or more. */
const ACTIONS: readonly ((store: BenchStore, drawn: Drawn) => void)[] = [
  turnOne,
  turnOne,
  turnOne,
  (store, drawn) => {
    beginTurn(store);
    turnOne(store, drawn);
    turnOne(store, { ...drawn, amount: -drawn.amount });
    if (drawn.pick % 4 === 0) abandonTurn(store);
    else endTurn(store);
  },
  (store, { pick }) => {
    const name = at(Object.keys(bench(store).document[store.getState().axle]?.adjusters ?? {}), pick);
    if (name) separateSides(store, name, name);
  },
  (store, { pick, amount }) => {
    const name = at(Object.keys(bench(store).document[store.getState().axle]?.adjusters ?? {}), pick);
    if (name) joinSides(store, name, name, amount);
  },
  (store, { pick, amount }) => setToe(store, pick % 4 === 0 ? null : amount / 5),
  (store, { pick, amount }) => setRideHeight(store, pick % 4 === 0 ? null : amount * 12),
  editPart,
  (store, { pick }) => chooseSetup(store, at(setupNames(bench(store).document), pick) ?? ''),
  (store, { pick }) => chooseAgainst(store, at(setupNames(bench(store).document), pick) ?? ''),
  (store, { pick }) => chooseAgainst(store, at(setupNames(bench(store).document), pick) ?? '', { kind: 'saved' }),
  (store, { pick }) => chooseAxle(store, pick % 2 === 0 ? 'front' : 'rear'),
  (store, { amount }) => moveTo(store, { travel: 30 * amount }),
  (store, { amount }) => moveTo(store, { rollDeg: 2 * amount }),
  (store, { amount }) => store.getState().axle === 'front' && moveTo(store, { rack: 25 * amount }),
  (store) => standStill(store),
  (store, { pick }) => {
    const name = at(Object.keys(bench(store).document[store.getState().axle]?.adjusters ?? {}), pick);
    if (name) holdAdjuster(store, name);
  },
  (store, { pick }) => prefer(store, 'curves.over', pick % 2 === 0 ? 'roll' : 'bump'),
  (store, { pick }) => makeSetup(store, `Made ${pick}x`),
  (store, { pick }) => copySetup(store, at(setupNames(bench(store).document), pick) ?? ''),
  (store, { pick }) => renameSetup(store, at(setupNames(bench(store).document), pick) ?? '', `Named ${pick}x`),
  (store, { pick }) => deleteSetup(store, at(setupNames(bench(store).document), pick) ?? ''),
  (store, { pick, amount }) => moveSetup(store, at(setupNames(bench(store).document), pick) ?? '', Math.round(3 * amount)),
  (store, { pick }) => markOnCar(store, pick % 5 === 0 ? null : (at(setupNames(bench(store).document), pick) ?? null)),
  (store, { pick }) => writeNotes(store, bench(store).setup, pick % 5 === 0 ? '' : `note ${pick}`),
  (store, { pick }) => addRecordLine(store, bench(store).setup, `line ${pick}`, 'bar'),
  (store, { pick, amount }) => writeRecordValue(store, bench(store).setup, pick % 3, 'frontLeft', amount),
  (store, { pick }) => removeRecordLine(store, bench(store).setup, pick % 3),
  (store) => undoStep(store),
  (store) => redoStep(store),
];

const isClose = (a: ReadingValue, b: ReadingValue): boolean => {
  if (a === null || b === null) return a === b;
  const [these, those] = [typeof a === 'number' ? [a] : a, typeof b === 'number' ? [b] : b];
  const size = Math.max(1, ...those.map(Math.abs));
  return these.every((value, index) => Math.abs(value - (those[index] ?? NaN)) <= 1e-9 * size);
};

/** The readings of the state, asked anew of a car that nothing was remembered of. */
const expectReadingsFromScratch = (store: BenchStore): void => {
  const { answer, position, axle } = store.getState();
  const { document, setup } = bench(store);
  const copy = JSON.parse(JSON.stringify(document)) as CarDocument;
  const car = assembleCar(toMechanism(copy), setupNames(copy).includes(setup) ? findSetup(copy, setup) : {});
  if (!car.ok) return expect(answer?.ok).toBe(false);
  const where = { travel: position.travel, rack: position.rack };
  const row = readingsOfAxle(car.value, axle, position.rollDeg === 0 ? where : { ...where, roll: toRadians(position.rollDeg) });
  expect(answer?.ok).toBe(row.ok);
  if (!row.ok || !answer?.ok) return;
  for (const [owner, kind] of [
    ['left', 'corner'],
    ['right', 'corner'],
    ['both', 'axle'],
  ] as const) {
    const expected = readingsInContractUnits(row.value[owner], kind);
    for (const [key, value] of Object.entries(expected))
      expect(isClose(answer.value.row[owner][key] ?? null, value), `${axle} ${owner} ${key}`).toBe(true);
  }
};

const drawn = fc.record({
  kind: fc.nat({ max: ACTIONS.length - 1 }),
  pick: fc.nat({ max: 999 }),
  amount: fc.double({ min: -1, max: 1, noNaN: true }),
  side: fc.constantFrom('left' as const, 'right' as const, 'both' as const),
});

test(`${RUNS * ACTIONS_A_RUN} random actions: every undo brings back the exact document, and the readings are those of the engine (seed ${SEED})`, () => {
  const seen = new Set<AxleName | 'roll' | 'pitch' | 'right'>();
  fc.assert(
    fc.property(fc.array(drawn, { minLength: ACTIONS_A_RUN, maxLength: ACTIONS_A_RUN }), fc.boolean(), (actions, isFirst) => {
      const store = openedBench(isFirst ? 'car-23' : 'car-21');
      actions.forEach((one, index) => {
        const before = store.getState().history;
        ACTIONS[one.kind]?.(store, one);
        const after = store.getState().history;
        if (!before || !after) throw new Error('a car is open');
        const { axle, position, answer } = store.getState();
        seen.add(axle);
        if (position.rollDeg !== 0) seen.add('roll');
        if (answer?.ok && answer.value.row.car.pitch !== 0) seen.add('pitch');
        if (bench(store).document[axle]?.right) seen.add('right');
        const isStep = after.past.length > before.past.length && after.future.length === 0;
        if (isStep) {
          const steps = after.past.length - before.past.length;
          for (let step = 0; step < steps; step += 1) undoStep(store);
          expect(store.getState().history?.present.document).toBe(before.present.document);
          for (let step = 0; step < steps; step += 1) redoStep(store);
          expect(store.getState().history?.present.document).toBe(after.present.document);
        }
        if (index % 5 === 0) expectReadingsFromScratch(store);
      });
      expectReadingsFromScratch(store);
      for (let left = store.getState().history?.past.length ?? 0; left > 0; left -= 1) undoStep(store);
      expect(JSON.stringify(bench(store).document)).toBe(JSON.stringify(store.getState().file?.asRead));
    }),
    { seed: SEED, numRuns: RUNS, endOnFailure: true },
  );
  expect([...seen].sort()).toEqual(['front', 'pitch', 'rear', 'right', 'roll']);
});
