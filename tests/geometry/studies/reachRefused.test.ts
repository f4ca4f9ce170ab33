import { describe, expect, test } from 'vitest';
import {
  answerStudy,
  findReading,
  findSetup,
  map,
  toMechanism,
  type CarMechanism,
  type QuestionDocument,
  type ReachAnswer,
  type SetupDocument,
} from '../../../geometry/index';
import { reachStudy } from '../../../geometry/studies/reach';
import { sampleNamed } from '../../samples/samples';

const hatch = sampleNamed('saltmarsh-hatch').document;
const coupe = sampleNamed('marram-coupe').document;

function reach(mechanism: CarMechanism, question: QuestionDocument, setup: SetupDocument): ReachAnswer {
  const reached = answerStudy(reachStudy(mechanism, question, setup));
  if (!reached.ok) throw new Error(reached.failure.message);
  return reached.value;
}

describe('what cannot be answered', () => {
  const mechanism = toMechanism(hatch);
  const start = findSetup(hatch, 'Baseline');
  const tieRod: QuestionDocument = {
    setToe: true,
    wanted: [{ reading: 'camber', axle: 'front', value: -2, tolerance: 0.1 }],
    may: [{ axle: 'front', adjuster: 'tieRod' }],
  };

  test('what the toe reset turns cannot be moved beside it, in reach and on a map', () => {
    const refused = answerStudy(reachStudy(mechanism, tieRod, start));
    expect(refused).toMatchObject({ ok: false, failure: { kind: 'setup' } });
    expect(refused.ok ? '' : refused.failure.message).toContain('front tieRod is turned by the toe reset');
    const { setToe: _, ...front } = start.front ?? {};
    expect(answerStudy(reachStudy(mechanism, { ...tieRod, setToe: false }, { ...start, front })).ok).toBe(true);
    const camber = findReading('camber');
    if (camber === undefined) throw new Error('camber is a reading');
    const part = (name: string) => ({ kind: 'adjuster', axle: 'front', side: 'both', name }) as const;
    const drawn = map(mechanism, {
      setup: { ...start, front: { ...front, setToe: 0.1 } },
      x: part('plateAcross'),
      y: part('tieRod'),
      nx: 2,
      ny: 2,
      entry: camber,
      axle: 'front',
      owner: 'left',
      at: { travel: 0, rack: 0, roll: 0 },
    });
    expect(drawn).toMatchObject({ ok: false, failure: { kind: 'setup' } });
  });

  test('a wanted reading without value and a position out of reach say why', () => {
    const { spring: _, ...front } = coupe.front!;
    const bare = { ...coupe, front };
    const question: QuestionDocument = {
      wanted: [
        { reading: 'springForce', axle: 'front', side: 'left', value: 3000, tolerance: 10 },
        { reading: 'camber', axle: 'front', side: 'right', at: { travel: 900 }, value: -1, tolerance: 0.1 },
      ],
      may: [{ axle: 'front', adjuster: 'trackCam' }],
    };
    const { answers, why } = reach(toMechanism(bare), question, findSetup(coupe, 'As built'));
    expect(answers).toEqual([]);
    expect(Object.keys(why ?? {})).toEqual(['front.left.springForce', 'front.right.camber']);
    expect(why?.['front.left.springForce']).toMatch(/spring/);
  });

  test('what would help says what the wanted readings would be', () => {
    const question: QuestionDocument = {
      wanted: [{ reading: 'camber', axle: 'front', value: -3.4, tolerance: 0.1 }],
      may: [{ axle: 'front', adjuster: 'plateAcross' }],
    };
    const { answers, helps, helped } = reach(mechanism, question, start);
    const [best] = answers;
    if (best === undefined || helped === undefined) throw new Error('the range of the plate ends too early');
    expect(((best.wanted[0].missBy / 0.1) ** 2 + (helps?.gain ?? NaN) * -1) / (helped[0].missBy / 0.1) ** 2).toBeCloseTo(1, 2);
    expect(helped[0].missBy).toBeLessThan(best.wanted[0].missBy);
  });
});
