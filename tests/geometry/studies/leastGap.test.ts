import { describe, expect, test } from 'vitest';
import {
  answerStudy,
  findReading,
  findSetup,
  openStudy,
  toMechanism,
  withSetting,
  type AxleName,
  type CarDocument,
  type QuestionDocument,
  type SetupDocument,
} from '../../../geometry/index';
import { clearanceStudy } from '../../../geometry/fitup/clearance/clearance';
import { gapMeshes, leastGap } from '../../../geometry/fitup/clearance/leastGap';
import { searchMesh } from '../../../geometry/meshes/meshSearch';
import { partMeshFiles } from '../../../renderer/compute/fitup/partMeshFiles';
import { sampleNamed } from '../../samples/samples';

const meshesOf = (document: CarDocument) => partMeshFiles(document.parts).meshes;

/** The least clearance of all rows that the study of clearance has. */
const leastOfAll = (document: CarDocument, setup: SetupDocument, axle: AxleName): number => {
  const asked = { axles: [axle], sides: ['left', 'right'], setups: [['', setup]], meshes: meshesOf(document) } as const;
  const whole = answerStudy(clearanceStudy(toMechanism(document), asked, searchMesh));
  if (!whole.ok) throw new Error(whole.failure.message);
  return Math.min(...whole.value.rows.map(({ clearance }) => clearance));
};

const { document: hatch } = sampleNamed('saltmarsh-hatch');

describe('the least gap', () => {
  // the worst of a pair is found to 0.05 mm
  test.each([
    ['saltmarsh-hatch', 'Sprint', 'rear'],
    ['marram-coupe', 'As built', 'front'],
    ['chalkboard', 'Leaning in', 'rear'],
  ] as const)('of %s, %s, %s is that of the nearest pair', (name, setup, axle) => {
    const { document } = sampleNamed(name);
    const mechanism = toMechanism(document);
    const of = findSetup(document, setup);
    const gap = leastGap(mechanism, of, [axle], gapMeshes(mechanism, meshesOf(document), searchMesh));
    expect(Math.abs((gap.mm ?? NaN) - leastOfAll(document, of, axle))).toBeLessThanOrEqual(0.05);
  });

  test('is not known without parts, without an envelope, or with a mesh that nobody searches', () => {
    const whyOf = (document: CarDocument, axle: AxleName): string => {
      const mechanism = toMechanism(document);
      const gap = leastGap(mechanism, findSetup(document, 'Baseline'), [axle], gapMeshes(mechanism, {}, null));
      return gap.mm === null ? gap.why : '';
    };
    const { parts: _, ...bare } = hatch;
    expect(whyOf(bare, 'front')).toBe('the car file gives no parts');
    const { damper: __, ...rear } = hatch.rear!;
    expect(whyOf({ ...hatch, rear }, 'rear')).toMatch(/rear axle has no envelope/);
    expect(whyOf(hatch, 'front')).toMatch(/the part "archLiner" needs/);
  });
});

test('a way has the least gap of the combination that it ends in', () => {
  const setup = findSetup(hatch, 'Baseline');
  const entry = findReading('camber')!;
  const question = { setup, entry, value: -1.6, axle: 'rear', side: 'both', toeReset: undefined, at: {}, pairs: false } as const;
  const order = {
    study: 'ways',
    document: hatch,
    question: { ...question, withLocked: false, meshes: meshesOf(hatch) },
  } as const;
  const made = answerStudy(openStudy(order, undefined, searchMesh));
  if (!made.ok) throw new Error(made.failure.message);
  const [way] = made.value.ways;
  expect(made.value).not.toHaveProperty('why');
  const name = way.adjusters[0];
  const there = withSetting(setup, 'rear', name, 'both', way.settings.rear?.both?.[name] ?? null);
  expect(Math.abs((way.leastGap ?? NaN) - leastOfAll(hatch, there, 'rear'))).toBeLessThanOrEqual(0.05);
});

test('an answer of reach has the least gap of its settings and of the points that it moves; without parts it has the reason', () => {
  const setup = findSetup(hatch, 'Baseline');
  const question: QuestionDocument = {
    count: 1,
    wanted: [{ reading: 'camber', axle: 'rear', value: -1.6, tolerance: 0.1 }],
    may: [
      { axle: 'rear', adjuster: 'upperRod' },
      { axle: 'rear', point: 'upperKnuckle', along: [0, 1, 0], range: [-2, -1], step: 1 },
    ],
  };
  const rear = Object.keys(hatch.rear?.adjusters ?? {});
  const points = Object.keys(hatch.rear?.points ?? {});
  expect([rear, points]).toEqual([expect.arrayContaining(['upperRod']), expect.arrayContaining(['upperKnuckle'])]);
  const order = { study: 'reach', document: hatch, setup, question, meshes: meshesOf(hatch) } as const;
  const made = answerStudy(openStudy(order, undefined, searchMesh));
  if (!made.ok) throw new Error(made.failure.message);
  const [best] = made.value.answers;
  const moved: CarDocument = {
    ...hatch,
    rear: { ...hatch.rear!, points: { ...hatch.rear!.points, ...best.points?.rear?.points } },
  };
  const there = { ...setup, rear: { ...setup.rear, both: { ...setup.rear?.both, ...best.settings.rear?.both } } };
  expect(Math.abs((best.leastGap ?? NaN) - leastOfAll(moved, there, 'rear'))).toBeLessThanOrEqual(0.05);

  const { parts: _, ...bare } = hatch;
  const without = answerStudy(openStudy({ ...order, document: bare }));
  if (!without.ok) throw new Error(without.failure.message);
  expect(without.value.answers[0].leastGap).toBeNull();
  expect(without.value.why).toEqual({ leastGap: 'the car file gives no parts' });
});
