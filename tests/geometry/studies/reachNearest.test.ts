import { describe, expect, test } from 'vitest';
import { answerStudy, findSetup, toMechanism, type QuestionDocument } from '../../../geometry/index';
import { reachStudy } from '../../../geometry/studies/reach';
import { sampleNamed } from '../../samples/samples';

const hatch = sampleNamed('saltmarsh-hatch').document;
const mechanism = toMechanism(hatch);

const reach = (...[car, question, setup]: Parameters<typeof reachStudy>) => {
  const reached = answerStudy(reachStudy(car, question, setup));
  if (!reached.ok) throw new Error(reached.failure.message);
  return reached.value;
};

describe('of equal answers the one nearest to the setup', () => {
  test('of many equals those nearest to the setup are the answers, though a toe reset ends anywhere in its tolerance', () => {
    const free = { ...hatch, limits: [] };
    // what is left of toe is the same wherever the plates stand, and so small that it shows the reset's last digits
    const question: QuestionDocument = {
      count: 4,
      setToe: 0.1,
      wanted: [{ reading: 'toe', axle: 'front', value: 0.1 + 2e-5, tolerance: 1e-6 }],
      may: [
        { axle: 'front', adjuster: 'plateAcross' },
        { axle: 'front', adjuster: 'plateAlong' },
      ],
    };
    const { answers, helps } = reach(toMechanism(free), question, findSetup(hatch, 'Trial 3'));
    expect(answers.map(({ settings }) => settings.front?.both)).toEqual([
      { plateAcross: -6, plateAlong: 0 },
      { plateAcross: -7, plateAlong: 0 },
      { plateAcross: -6, plateAlong: -1 },
      { plateAcross: -6, plateAlong: 1 },
    ]);
    expect(helps).toBeNull();
    // nor does one step more help, by no more than those digits
    const narrow = { ...question, wanted: [{ ...question.wanted[0], range: [0.1 + 2e-5, null] as const, value: undefined }] };
    expect(reach(toMechanism(free), narrow, findSetup(hatch, 'Baseline')).helps).toBeNull();
  });

  test.each([200_000, 10])(
    'a part that changes nothing of what is wanted stays where it is (all tried up to %i)',
    (mostTried) => {
      const question: QuestionDocument = {
        wanted: [{ reading: 'camber', axle: 'front', value: -2.2, tolerance: 0.02 }],
        may: [
          { axle: 'front', adjuster: 'perch' },
          { axle: 'front', adjuster: 'plateAcross' },
          { axle: 'rear', adjuster: 'perch', sides: 'apart' },
        ],
      };
      const few = { ...question, may: question.may.slice(0, 2) };
      for (const asked of mostTried === 10 ? [question, few] : [few]) {
        const reached = answerStudy(reachStudy(mechanism, asked, findSetup(hatch, 'Wet'), mostTried));
        if (!reached.ok) throw new Error(reached.failure.message);
        const { answers, all } = reached.value;
        expect(all).toBe(mostTried > 10);
        expect(answers).toHaveLength(5);
        expect(new Set(answers.map(({ settings }) => settings.front?.both?.['plateAcross'])).size).toBe(5);
        // where the setup has them: three turns up in front, one behind
        expect(answers.map(({ settings }) => settings.front?.both?.['perch'])).toEqual([3, 3, 3, 3, 3]);
        if (asked === question) expect(answers.map(({ settings }) => settings.rear?.left?.['perch'])).toEqual([1, 1, 1, 1, 1]);
      }
    },
  );

  test('a part that only a limit asks for is moved as far as that needs', () => {
    // the rules hold the perch at two turns or less, and the setup has it at three
    const walled = { ...hatch, limits: [{ setting: 'perch', axle: 'front' as const, max: 2 }] };
    const question: QuestionDocument = {
      wanted: [{ reading: 'camber', axle: 'front', value: -2.2, tolerance: 0.02 }],
      may: [
        { axle: 'front', adjuster: 'perch' },
        { axle: 'front', adjuster: 'plateAcross' },
      ],
    };
    const { answers } = reach(toMechanism(walled), question, findSetup(hatch, 'Wet'));
    expect(answers.map(({ settings }) => settings.front?.both?.['perch'])).toEqual([2, 2, 2, 2, 2]);
  });
});
