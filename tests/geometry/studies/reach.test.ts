import { describe, expect, test } from 'vitest';
import {
  findSetup,
  inContractUnits,
  assembleCar,
  answerStudy,
  createStudyWorker,
  openStudy,
  reachNow,
  readingsOfAxle,
  toMechanism,
  type CarMechanism,
  type QuestionDocument,
  type ReachAnswer,
  type SetupDocument,
  type StudyOrder,
} from '../../../geometry/index';
import { reachStudy } from '../../../geometry/studies/reach';
import { sampleNamed } from '../../samples/samples';
import { bruteForce } from './bruteForce';

const hatch = sampleNamed('saltmarsh-hatch').document;
const coupe = sampleNamed('marram-coupe').document;

const FRONT: QuestionDocument = {
  count: 4,
  wanted: [
    { reading: 'camber', axle: 'front', side: 'both', value: -2.4, tolerance: 0.05 },
    { reading: 'rollCentreHeight', axle: 'front', range: [70, null], tolerance: 4 },
  ],
  may: [
    { axle: 'front', adjuster: 'plateAcross' },
    { axle: 'front', adjuster: 'clampBolt' },
    { axle: 'front', adjuster: 'pin' },
  ],
};
const REAR: QuestionDocument = {
  count: 3,
  setToe: 0.1,
  wanted: [
    { reading: 'camber', axle: 'rear', side: 'left', at: { travel: 10 }, value: -2, tolerance: 0.1 },
    {
      reading: 'toe',
      axle: 'rear',
      side: 'both',
      over: { motion: 'bump', from: -30, to: 30, steps: 3 },
      change: true,
      range: [-0.05, 0.05],
      tolerance: 0.02,
    },
  ],
  may: [
    { axle: 'rear', adjuster: 'camberBolt' },
    { axle: 'rear', adjuster: 'toeShim' },
  ],
};

const top = hatch.front!.points['strutTop'];
const rightTop: readonly [number, number, number] = [top[0], -top[1] - 4, top[2]];

function reach(mechanism: CarMechanism, question: QuestionDocument, setup: SetupDocument): ReachAnswer {
  const reached = answerStudy(reachStudy(mechanism, question, setup));
  if (!reached.ok) throw new Error(reached.failure.message);
  return reached.value;
}

describe('against the whole product of steps', () => {
  const cases = [
    ['hatch, front, Baseline', hatch, 'Baseline', FRONT],
    ['hatch, front, Trial 3 with toe set', hatch, 'Trial 3', { ...FRONT, setToe: true }],
    [
      'hatch, a bushing, in roll and at lock',
      hatch,
      'Baseline',
      {
        count: 6,
        wanted: [
          { reading: 'caster', axle: 'front', side: 'both', value: 4.6, tolerance: 0.1, at: { roll: 1.5 } },
          { reading: 'mechanicalTrail', axle: 'front', side: 'right', range: [null, 24], tolerance: 1, at: { rack: 20 } },
        ],
        may: [
          { axle: 'front', adjuster: 'rearBush' },
          { axle: 'front', adjuster: 'plateAlong' },
        ],
      },
    ],
    [
      'hatch, Trial 3, a perch that changes nothing of what is wanted',
      hatch,
      'Trial 3',
      {
        setToe: true,
        wanted: [{ reading: 'camber', axle: 'front', side: 'both', value: -2, tolerance: 0.1 }],
        may: [
          { axle: 'front', adjuster: 'perch' },
          { axle: 'front', adjuster: 'clampBolt' },
        ],
      },
    ],
    [
      'hatch, Trial 3, wide ranges that many meet',
      hatch,
      'Trial 3',
      {
        count: 9,
        wanted: [{ reading: 'caster', axle: 'front', side: 'both', range: [3, 6], tolerance: 0.1 }],
        may: [
          { axle: 'front', adjuster: 'plateAlong' },
          { axle: 'front', adjuster: 'rearBush' },
          { axle: 'front', adjuster: 'plateAcross' },
        ],
      },
    ],
    [
      'coupe, both axles',
      coupe,
      'As built',
      {
        wanted: [
          { reading: 'camber', axle: 'front', side: 'both', value: -1.1, tolerance: 0.1 },
          { reading: 'camber', axle: 'rear', side: 'both', value: -1.8, tolerance: 0.1 },
        ],
        may: [
          { axle: 'front', adjuster: 'trackCam' },
          { axle: 'rear', adjuster: 'armCam' },
        ],
      },
    ],
  ] as const;
  test.each(cases)('%s: the same best, in the same order', (_, document, setup, question) => {
    const asked: QuestionDocument = question;
    const start = findSetup(document, setup);
    const withToe =
      asked.setToe === true
        ? { ...start, front: { ...start.front, setToe: start.front?.setToe ?? document.front?.wheel.toe ?? 0 } }
        : start;
    const brute = bruteForce(document, withToe, asked);
    const answer = reach(toMechanism(document), asked, start);
    expect(answer.all).toBe(true);
    expect(answer.answers.length).toBe(Math.min(asked.count ?? 5, brute.length));
    answer.answers.forEach(({ score, settings }, index) => {
      expect(Math.abs(score - brute[index].score)).toBeLessThanOrEqual(1e-9 * (1 + score));
      const given = asked.may.map((may) => ('adjuster' in may ? settings[may.axle]?.both?.[may.adjuster] : undefined));
      expect(given).toEqual(brute[index].settings);
    });
    expect(answer.tried).toBeGreaterThanOrEqual(brute.length);
  });

  test('rear, several positions and a change from zero', () => {
    const names = Object.keys(hatch.rear?.adjusters ?? {});
    expect(names).toContain('camberBolt');
    const may = REAR.may.filter((one) => 'adjuster' in one && names.includes(one.adjuster));
    const question = { ...REAR, may };
    const start = findSetup(hatch, 'Baseline');
    const brute = bruteForce(hatch, { ...start, rear: { ...start.rear, setToe: 0.1 } }, question);
    const answer = reach(toMechanism(hatch), question, start);
    expect(answer.answers.map(({ score }) => score)).toEqual(
      brute.slice(0, 3).map(({ score }) => expect.closeTo(score, 9) as unknown as number),
    );
  });
});

describe('laws', () => {
  const mechanism = toMechanism(hatch);
  const start = findSetup(hatch, 'Baseline');

  test('the answer read back gives what it says', () => {
    const [best] = reach(mechanism, FRONT, start).answers;
    const car = assembleCar(mechanism, { ...start, front: { ...start.front, ...best.settings.front } });
    if (!car.ok) throw new Error(car.failure.message);
    const row = readingsOfAxle(car.value, 'front', {});
    if (!row.ok) throw new Error('the sample stands');
    const { left, right, both } = inContractUnits(row.value);
    const [camber, height] = best.wanted;
    expect([left['camber'], right['camber']]).toContain(camber.worst);
    expect(both['rollCentreHeight']).toBe(height.worst);
  });

  test('what is met already is met by the first answer with a score of nothing', () => {
    const now = assembleCar(mechanism, start);
    const row = now.ok ? readingsOfAxle(now.value, 'front', {}) : null;
    const camber = row?.ok ? (inContractUnits(row.value).left['camber'] as number) : NaN;
    const answer = reach(
      mechanism,
      {
        wanted: [{ reading: 'camber', axle: 'front', value: camber, tolerance: 0.05 }],
        may: [{ axle: 'front', adjuster: 'plateAcross' }],
      },
      start,
    );
    expect(answer.answers[0]).toMatchObject({ score: 0, met: true, settings: { front: { both: { plateAcross: 0 } } } });
    expect(answer.helps).toBeNull();
    const wide = { wanted: [{ reading: 'camber', axle: 'front', range: [-4, 0], tolerance: 0.1 }], may: [] } as const;
    expect(reachNow(mechanism, { ...wide, may: [{ axle: 'front', adjuster: 'plateAcross' }] }, start)).toMatchObject({
      score: 0,
      met: true,
    });
    const far = { ...FRONT, may: [{ axle: 'front', adjuster: 'plateAcross' }] } as const;
    expect(reachNow(mechanism, far, start)?.met).toBe(false);
  });

  test('an answer pasted into the setup and the car gives what it says, toe and moved points included', () => {
    const question: QuestionDocument = {
      setToe: 0.12,
      wanted: [
        { reading: 'toe', axle: 'front', side: 'both', value: 0.12, tolerance: 0.01 },
        { reading: 'camber', axle: 'front', side: 'both', at: { travel: 15 }, value: -2.6, tolerance: 0.05 },
      ],
      may: [
        { axle: 'front', adjuster: 'clampBolt' },
        { axle: 'front', point: 'strutTop', along: [0, 1, 0], range: [-9, -3], step: 3 },
        { axle: 'front', point: 'ballJoint', along: [0, 1, 0], range: [-2, 2], step: 2 },
      ],
    };
    // the right-hand top stands elsewhere, and has to be moved by itself
    const own = { ...hatch, front: { ...hatch.front!, right: { points: { strutTop: rightTop } } } };
    const { answers } = reach(toMechanism(own), question, start);
    for (const { settings, points, wanted } of answers) {
      expect(settings.front?.setToe).toBe(0.12);
      const front = {
        ...own.front,
        points: { ...own.front.points, ...points?.front?.points },
        right: { points: { ...own.front.right.points, ...points?.front?.right?.points } },
      };
      const pasted = {
        ...start,
        front: { ...start.front, ...settings.front, both: { ...start.front?.both, ...settings.front?.both } },
      };
      const car = assembleCar(toMechanism({ ...own, front }), pasted);
      if (!car.ok) throw new Error(car.failure.message);
      const cambers = (['left', 'right'] as const).map((side) => {
        const row = readingsOfAxle(car.value, 'front', { travel: 15 });
        return row.ok ? (inContractUnits(row.value)[side]['camber'] as number) : NaN;
      });
      expect(cambers.some((camber) => Math.abs(camber - wanted[1].worst) < 1e-9)).toBe(true);
      // what was not moved is not said
      for (const [name, point] of Object.entries(points?.front?.points ?? {})) expect(point).not.toEqual(own.front.points[name]);
    }
  });

  test('a tighter tolerance never makes a better score', () => {
    const scores = [0.2, 0.1, 0.05, 0.02].map((tolerance) => {
      const [camber, height] = FRONT.wanted;
      return reach(mechanism, { ...FRONT, wanted: [{ ...camber, tolerance }, height] }, start).answers[0].score;
    });
    expect(scores).toEqual([...scores].sort((a, b) => a - b));
  });

  test('a range that helps, let out by what it says, helps by what it says', () => {
    const question: QuestionDocument = {
      wanted: [{ reading: 'camber', axle: 'front', value: -3.4, tolerance: 0.1 }],
      may: [{ axle: 'front', adjuster: 'plateAcross' }],
    };
    const answer = reach(mechanism, question, start);
    expect(answer.reachable).toBe(false);
    expect(answer.helps).toMatchObject({ kind: 'range', axle: 'front', side: 'both', name: 'plateAcross', end: 'min', by: 1 });
    const plate = hatch.front?.adjusters?.['plateAcross'];
    if (plate?.kind !== 'slide' || !hatch.front) throw new Error('a top plate slides');
    const longer = {
      ...hatch,
      front: { ...hatch.front, adjusters: { ...hatch.front.adjusters, plateAcross: { ...plate, range: [-13, 8] as const } } },
    };
    const then = reach(toMechanism(longer), question, start);
    expect(answer.answers[0].score - then.answers[0].score).toBeCloseTo(answer.helps?.gain ?? NaN, 9);
  });

  test('an end that the best answer does not stand at helps too, where the steps beyond it come nearer', () => {
    const free = { ...hatch, limits: [] };
    const question: QuestionDocument = {
      wanted: [{ reading: 'camber', axle: 'front', value: -1.742, tolerance: 0.01 }],
      may: [
        { axle: 'front', adjuster: 'plateAcross' },
        { axle: 'front', adjuster: 'pin' },
      ],
    };
    const { answers, helps } = reach(toMechanism(free), question, start);
    expect(helps).toMatchObject({ kind: 'range', name: 'pin', end: 'min', by: 10 });
    expect(answers[0].settings.front?.both?.['pin']).not.toBe(0);
    const pin = hatch.front?.adjusters?.['pin'];
    if (pin?.kind !== 'slide' || !hatch.front) throw new Error('a pin is a slide');
    const adjusters = { ...hatch.front.adjusters, pin: { ...pin, range: [-10, 30] as const } };
    const then = reach(toMechanism({ ...free, front: { ...hatch.front, adjusters } }), question, start);
    expect(answers[0].score - then.answers[0].score).toBeCloseTo(helps?.gain ?? NaN, 9);
  });

  test('a limit is a wall, and the one in the way is named', () => {
    const walled = { ...hatch, limits: [{ reading: 'camber', axle: 'front' as const, min: -2.0, max: 0 }] };
    const question: QuestionDocument = {
      wanted: [{ reading: 'camber', axle: 'front', value: -2.3, tolerance: 0.05 }],
      may: [{ axle: 'front', adjuster: 'plateAcross' }],
    };
    const answer = reach(toMechanism(walled), question, start);
    expect(answer.answers.every(({ wanted }) => wanted[0].worst >= -2.0 - 1e-9)).toBe(true);
    expect(answer.helps).toMatchObject({ kind: 'limit', axle: 'front', name: 'camber', end: 'min', by: 0.1 });
    const relaxed = { ...walled, limits: [{ reading: 'camber', axle: 'front' as const, min: -2.1, max: 0 }] };
    const then = reach(toMechanism(relaxed), question, start);
    expect(answer.answers[0].score - then.answers[0].score).toBeCloseTo(answer.helps?.gain ?? NaN, 9);
  });

  test('sides apart are found apart, and a free point is moved on the drawing', () => {
    const apart = reach(
      mechanism,
      {
        wanted: [
          { reading: 'camber', axle: 'front', side: 'left', value: -1.8, tolerance: 0.05 },
          { reading: 'camber', axle: 'front', side: 'right', value: -1.2, tolerance: 0.05 },
        ],
        may: [{ axle: 'front', adjuster: 'plateAcross', sides: 'apart' }],
      },
      start,
    ).answers[0];
    expect(apart.settings.front?.left?.['plateAcross']).toBeLessThan(apart.settings.front?.right?.['plateAcross'] ?? NaN);
    const hole = reach(
      mechanism,
      {
        setToe: true,
        wanted: [
          {
            reading: 'toe',
            axle: 'front',
            over: { motion: 'bump', from: -30, to: 30, steps: 5 },
            change: true,
            range: [-0.02, 0.02],
            tolerance: 0.01,
          },
        ],
        may: [{ axle: 'front', point: 'tieRodEnd', along: [0, 0, 1], range: [-10, 10], step: 1 }],
      },
      start,
    ).answers[0];
    const drilled = hole.points?.front?.points['tieRodEnd'];
    const drawn = hatch.front?.points['tieRodEnd'];
    if (!drilled || !drawn) throw new Error('the point is answered');
    const moved = { ...hatch, front: { ...hatch.front!, points: { ...hatch.front!.points, tieRodEnd: drilled } } };
    const car = assembleCar(toMechanism(moved), { ...start, front: { ...start.front, setToe: hatch.front!.wheel.toe } });
    if (!car.ok) throw new Error(car.failure.message);
    const toeAt = (travel: number): number => {
      const row = readingsOfAxle(car.value, 'front', { travel });
      return row.ok ? (inContractUnits(row.value).left['toe'] as number) : NaN;
    };
    const worst = [-30, -15, 15, 30].map((travel) => toeAt(travel) - toeAt(0));
    expect(worst.some((change) => Math.abs(change - hole.wanted[0].worst) < 1e-9)).toBe(true);
  });

  test('the same to the last bit however its chunks are run, and from any search of the same seed', () => {
    const caster = { reading: 'caster', axle: 'front', value: 4.4, tolerance: 0.05 } as const;
    const inclination = { reading: 'kingpinInclination', axle: 'front', value: 13.9, tolerance: 0.05 } as const;
    const large: QuestionDocument = {
      wanted: [...FRONT.wanted, caster, inclination],
      may: [...FRONT.may, { axle: 'front', adjuster: 'rearBush' }, { axle: 'front', adjuster: 'plateAlong' }],
    };
    for (const question of [FRONT, large, { ...FRONT, wanted: [...FRONT.wanted, STRETCH] }]) {
      const forwards = worked(question, 1, false);
      expect(worked(question, 7, true)).toEqual(forwards);
      if (question !== large) expect(worked(question, 2, true)).toEqual(forwards);
    }
    const answer = reach(mechanism, large, start);
    expect(answer.all).toBe(false);
    expect(answer.starts?.agreed).toBeGreaterThan(3);
    // searched, a question that could be tried whole has the same answer
    const searched = answerStudy(reachStudy(mechanism, FRONT, start, 10));
    if (!searched.ok) throw new Error(searched.failure.message);
    expect(searched.value.all).toBe(false);
    expect(searched.value.answers[0]).toEqual(reach(mechanism, FRONT, start).answers[0]);
  }, 240_000);
});

const STRETCH = {
  reading: 'toe',
  axle: 'front',
  over: { motion: 'bump', from: -30, to: 30, steps: 5 },
  change: true,
  range: [-0.02, 0.02],
  tolerance: 0.01,
} as const;

/** As so many workers do it, each with the order as it arrived in the mail, and the last chunk first where `backwards`. */
function worked(question: QuestionDocument, workers: number, backwards: boolean): ReachAnswer {
  const order: StudyOrder = { study: 'reach', document: hatch, setup: findSetup(hatch, 'Baseline'), question };
  const hands = Array.from({ length: workers }, () => createStudyWorker());
  for (const hand of hands) hand(structuredClone({ order }));
  const study = openStudy(order);
  let number = 0;
  for (let from: unknown = undefined; ; number += 1) {
    const round = study.round(from);
    const parts = new Array<unknown>(round.chunks);
    const chunks = Array.from({ length: round.chunks }, (_, chunk) => chunk);
    for (const chunk of backwards ? chunks.reverse() : chunks) {
      const made = hands[chunk % workers](structuredClone({ round: number, from, chunk }));
      if (made !== null) parts[made.chunk] = structuredClone(made.part);
    }
    const outcome = round.merge(parts);
    if ('answer' in outcome) return outcome.answer as ReachAnswer;
    from = outcome.next;
  }
}
