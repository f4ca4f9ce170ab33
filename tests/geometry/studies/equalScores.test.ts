import { describe, expect, test } from 'vitest';
import { assembleCar, findSetup, inContractUnits, readingsOfAxle, toMechanism } from '../../../geometry/index';
import { EXACT_TO, scoreWidth } from '../../../geometry/studies/equalScores';
import { resolveQuestion } from '../../../geometry/studies/question';
import { PartsLook } from '../../../geometry/studies/seenParts';
import { sampleNamed } from '../../samples/samples';

const coupe = sampleNamed('marram-coupe').document;
const mechanism = toMechanism(coupe);
const start = findSetup(coupe, 'As built');
const may = [{ axle: 'rear', adjuster: 'armCam' }] as const;
const at = { travel: 20 };

describe('how near scores are equal', () => {
  // the rear toe is set by a cam, whose reset ends anywhere in its tolerance
  const setup = { ...start, rear: { ...start.rear, setToe: 0.1 } };
  const question = resolveQuestion(
    mechanism,
    {
      may,
      wanted: [
        { reading: 'toe', axle: 'rear', value: 0.1, tolerance: 0.02, at },
        { reading: 'camber', axle: 'front', value: -1, tolerance: 0.05 },
        { reading: 'barRatio', axle: 'front', value: 0.5, tolerance: 0.01 },
        { reading: 'track', axle: 'rear', value: 1500, tolerance: 1 },
      ],
    },
    setup,
  );
  const open = new PartsLook(mechanism, question).open();

  test('a reset leaves open what hangs on toe, and nothing else', () => {
    const [toe, camber, ratio, track] = open;
    expect(toe).toBeGreaterThan(5e-11);
    expect(toe).toBeLessThanOrEqual(EXACT_TO.angle);
    // a reading of the other axle has one value, whatever the toe here
    expect(camber).toBe(0);
    expect(ratio).toBe(0);
    expect(track).toBeGreaterThan(0);
  });

  test('what is left open covers by how much a reading really changes with the toe of a reset', () => {
    const read = (setToe: number) => {
      const car = assembleCar(mechanism, { ...setup, rear: { ...setup.rear, setToe } });
      const row = car.ok ? readingsOfAxle(car.value, 'rear', {}) : null;
      return row?.ok ? (inContractUnits(row.value).both['track'] as number) : NaN;
    };
    const perDegree = Math.abs(read(0.101) - read(0.099)) / 0.002;
    expect(open[3]).toBeGreaterThanOrEqual(Math.min(EXACT_TO.length, 2e-10 * perDegree));
  });

  test('without a reset only a billionth of the score is', () => {
    const free = resolveQuestion(
      mechanism,
      { may, wanted: [{ reading: 'track', axle: 'rear', value: 1500, tolerance: 1 }] },
      start,
    );
    const none = new PartsLook(mechanism, free).open();
    expect(none).toEqual([0]);
    expect(scoreWidth(free, none)(400)).toBeCloseTo(4e-7, 15);
  });

  test('two scores of a tight tolerance that a reset cannot touch stay apart', () => {
    // camber in front wanted to a millionth of a degree, beside a reset behind: 3.7e-7 of 1 apart are two scores
    const tight = resolveQuestion(
      mechanism,
      { may, wanted: [{ reading: 'camber', axle: 'front', value: -1, tolerance: 1e-6 }] },
      setup,
    );
    expect(scoreWidth(tight, new PartsLook(mechanism, tight).open())(1)).toBeLessThan(3.7e-7);
    expect(scoreWidth(tight, [EXACT_TO.angle])(1)).toBeGreaterThan(3.7e-7);
  });
});
