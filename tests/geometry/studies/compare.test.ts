import { expect, test } from 'vitest';
import {
  compare,
  findSetup,
  inContractUnits,
  readingsOfCar,
  toMechanism,
  withSetting,
  withAxleValue,
} from '../../../geometry/index';
import { sampleNamed, standing } from '../../samples/samples';

const hatch = sampleNamed('saltmarsh-hatch');
const mechanism = toMechanism(hatch.document);
const baseline = { mechanism, setup: findSetup(hatch.document, 'Baseline') };
const sprint = { mechanism, setup: findSetup(hatch.document, 'Sprint') };

test('every value is that of readings there, every difference one less the other, to the last bit', () => {
  const position = { travel: 12, rack: 6 };
  const { names, setups, differences } = compare([baseline, sprint], position);
  const rows = ['Baseline', 'Sprint'].map((name) => readingsOfCar(standing(hatch, name), position));
  for (const [index, setup] of setups.entries()) {
    if (!setup.ok) throw new Error(setup.failure.message);
    for (const { name, entry, axle, owner } of names) {
      const row = axle === 'wholeCar' ? null : rows[index][axle];
      if (row === null || owner === 'wholeCar') continue;
      if (!row.ok) throw new Error(row.failure.message);
      const { [owner]: read, why } = inContractUnits(row.value);
      expect(setup.value.values[name], name).toBe(read[entry.key]);
      if (read[entry.key] === null) expect(setup.value.why[name], name).toBe(why[`${owner}.${entry.key}`]);
    }
  }
  const [one, other] = setups.map((setup) => (setup.ok ? setup.value.values : {}));
  expect(differences[0]?.['front.left.camber']).toBe(0);
  expect(differences[1]?.['front.left.camber']).toBe((other['front.left.camber'] ?? NaN) - (one['front.left.camber'] ?? NaN));
  expect(differences[1]?.['front.left.camber']).not.toBe(0);
});

test('a setup that cannot stand is said, and the others stay', () => {
  const far = { mechanism, setup: withAxleValue(baseline.setup, 'front', 'rideHeight', 900) };
  const { setups, differences } = compare([baseline, far, sprint], {});
  expect(setups.map(({ ok }) => ok)).toEqual([true, false, true]);
  expect(differences[1]).toBeNull();
  expect(differences[2]).not.toBeNull();
});

test('another car with one axle less has its reasons', () => {
  const { rear: _rear, ...document } = hatch.document;
  const alone = {
    mechanism: toMechanism({ ...document, limits: [] }),
    setup: withSetting({}, 'front', 'plateAcross', 'both', 0),
  };
  const [, other] = compare([baseline, alone], {}).setups;
  if (!other.ok) throw new Error(other.failure.message);
  expect(other.value.values['rear.left.camber']).toBeNull();
  expect(other.value.why['rear.left.camber']).toBe('this car has no rear axle');
});
