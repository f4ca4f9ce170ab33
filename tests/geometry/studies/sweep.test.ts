import { expect, test } from 'vitest';
import {
  findSetup,
  inContractUnits,
  positionOf,
  readingsOfCar,
  stepsBetween,
  sweep,
  sweepCsvLines,
  toMechanism,
  type Position,
  type Sweep,
} from '../../../geometry/index';
import { sweepStudy } from '../../../geometry/studies/sweep';
import { carPath, jounce } from '../../electron/command/jounce';
import { carDocument } from '../../renderer/carUnderTest';
import { sampleNamed, standing } from '../../samples/samples';

const hatch = sampleNamed('saltmarsh-hatch');
const mechanism = toMechanism(hatch.document);
const setup = findSetup(hatch.document, 'Baseline');

const swept = (positions: readonly Position[]): Sweep => {
  const made = sweep(mechanism, { setup, axles: ['front', 'rear'], positions });
  if (!made.ok) throw new Error(made.failure.message);
  return made.value;
};

test('a row is the readings there; a position out of reach is a row with its reason', () => {
  const positions: readonly Position[] = [{ travel: 20, rack: 8 }, { travel: { left: 5, right: -900 } }];
  const { axles, wholeCar } = swept(positions);
  const there = readingsOfCar(standing(hatch, 'Baseline'), positions[0]);
  if (!there.front?.ok) throw new Error('it can be there');
  const { left, why, rack } = inContractUnits(there.front.value);
  expect(axles[0].rows[0]).toMatchObject({ left, why, rack });
  expect(axles[0].rows[1]).toMatchObject({ error: { kind: 'unreachable', message: expect.any(String) } });
  expect(axles[1].axle).toBe('rear');
  expect(wholeCar[0].values['rake']).toBeTypeOf('number');
  expect(wholeCar[1].values['rake']).toBeNull();
  expect(wholeCar[1].why['rake']).toContain('cannot be there');
});

test('the same however its chunks are run', () => {
  const positions = stepsBetween(-40, 40, 501).map((travel) => ({ travel }));
  const question = { setup, axles: ['front'] as const, positions };
  const round = sweepStudy(mechanism, question).round();
  expect(round.chunks).toBe(3);
  const parts = [2, 0, 1].map((chunk) => [chunk, sweepStudy(mechanism, question).round().run(chunk)] as const);
  const merged = round.merge(parts.sort(([a], [b]) => a - b).map(([, part]) => structuredClone(part)));
  const whole = sweep(mechanism, question);
  expect(merged).toEqual({ answer: whole.ok ? whole.value : null });
});

test('its CSV is the command line’s, letter by letter', async () => {
  const flags = ['--motion', 'roll', '--from', '-2', '--to', '2', '--steps', '5', '--csv', '-'];
  const { stdout } = await jounce(['sweep', carPath(23), ...flags]);
  const document = carDocument('car-23');
  const inputs = stepsBetween(-2, 2, 5);
  const positions = inputs.map((roll) => positionOf({ roll }) as Position);
  const made = sweep(toMechanism(document), { setup: findSetup(document, 'Baseline'), axles: ['front', 'rear'], positions });
  if (!made.ok) throw new Error(made.failure.message);
  const axles = made.value.axles.map(({ axle, rows }) => ({ axle, rows, prefix: `${axle}.` }));
  const wholeCar = made.value.wholeCar.map(({ values }) => values);
  expect([...sweepCsvLines(inputs, 'deg', axles, wholeCar)].join('')).toBe(stdout);
});
