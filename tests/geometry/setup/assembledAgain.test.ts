import { expect, test } from 'vitest';
import { assembleCar, readingsOfCar, toMechanism, type SetupDocument } from '../../../geometry/index';
import { SAMPLES } from '../../samples/samples';

/** Other wheels, then the first ones again; and another toe in between. */
const PLAIN: SetupDocument = {};
const OTHERS: readonly SetupDocument[] = [
  { front: { wheel: { loadedRadius: 290 } }, rear: { wheel: { loadedRadius: 290 } } },
  { front: { setToe: 0.1 }, rear: { setToe: 0.2 } },
];

test.each(SAMPLES.map((sample) => [sample.name, sample] as const))(
  'the answer for %s does not depend on what its mechanism was asked before',
  (_, { document }) => {
    const answer = (mechanism: ReturnType<typeof toMechanism>, setup: SetupDocument) => {
      const car = assembleCar(mechanism, setup);
      return car.ok ? readingsOfCar(car.value, { travel: 12 }) : car.failure;
    };
    const used = toMechanism(document);
    for (const setup of [PLAIN, ...OTHERS, PLAIN, ...OTHERS]) {
      expect(answer(used, setup)).toStrictEqual(answer(toMechanism(document), setup));
    }
  },
);
