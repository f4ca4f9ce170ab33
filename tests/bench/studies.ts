import {
  answerStudy,
  findReading,
  findSetup,
  openStudy,
  toMechanism,
  type AdjusterDocument,
  type CarDocument,
  type QuestionDocument,
  type StudyOrder,
} from '../../geometry/index';

interface StudyBench {
  readonly name: string;
  readonly units: number;
  readonly runs: number;
  readonly work: () => unknown;
}

/** The car with some of its adjusters changed, so that the product of their steps is a round number. */
function withAdjusters(
  document: CarDocument,
  axle: 'front' | 'rear',
  changes: Readonly<Record<string, Partial<AdjusterDocument>>>,
): CarDocument {
  const described = document[axle];
  if (described === undefined) throw new Error(`no ${axle} axle`);
  const adjusters = Object.fromEntries(
    Object.entries(described.adjusters ?? {}).map(([name, adjuster]) => {
      const { locked: _, ...rest } = adjuster;
      return [name, changes[name] === undefined ? adjuster : ({ ...rest, ...changes[name] } as AdjusterDocument)];
    }),
  );
  const { limits: _, ...unlimited } = document;
  return { ...unlimited, [axle]: { ...described, adjusters } };
}

const wantedAtRest = (camber: number, height: number, caster: number): QuestionDocument['wanted'] => [
  { reading: 'camber', axle: 'front', side: 'both', value: camber, tolerance: 0.05 },
  { reading: 'rollCentreHeight', axle: 'front', range: [height, null], tolerance: 1 },
  { reading: 'caster', axle: 'front', side: 'both', value: caster, tolerance: 0.1 },
];

const overNine = { motion: 'bump', from: -40, to: 40, steps: 9 } as const;
const SIX_OVER_NINE: QuestionDocument['wanted'] = [
  { reading: 'toe', axle: 'front', side: 'both', over: overNine, change: true, range: [-0.05, 0.05], tolerance: 0.01 },
  { reading: 'camber', axle: 'front', side: 'both', over: overNine, range: [-4, -1], tolerance: 0.05 },
  { reading: 'rollCentreHeight', axle: 'front', over: overNine, range: [20, 120], tolerance: 2 },
  { reading: 'caster', axle: 'front', side: 'both', over: overNine, range: [4, 7], tolerance: 0.1 },
  { reading: 'track', axle: 'front', over: overNine, change: true, range: [-8, 8], tolerance: 1 },
  { reading: 'scrubRadius', axle: 'front', side: 'both', over: overNine, range: [5, 20], tolerance: 1 },
];

const question = (wanted: QuestionDocument['wanted'], adjusters: readonly string[]): QuestionDocument => ({
  setToe: true,
  wanted,
  may: adjusters.map((adjuster) => ({ axle: 'front', adjuster })),
});

/** @param hatch - struts in front @param coupe - five rods in front */
export function studyBenches(hatch: CarDocument, coupe: CarDocument): readonly StudyBench[] {
  const struts = withAdjusters(hatch, 'front', { plateAcross: { range: [-9, 8] }, plateAlong: { range: [-4, 4] } });
  const few = withAdjusters(struts, 'front', { plateAcross: { range: [-4, 4] }, rodShim: { range: [0, 8.5] } });
  const rods = withAdjusters(coupe, 'front', {
    trackCam: { mark: 7.5 } as Partial<AdjusterDocument>,
    upperRear: { range: [-3.25, 3.25] },
    rackShim: { range: [-4, 4] },
  });
  const FOUR = ['plateAcross', 'rodShim', 'plateAlong', 'rearBush'];
  const reach = (document: CarDocument, setup: string, asked: QuestionDocument, combinations: number): (() => unknown) =>
    answering({ study: 'reach', document, setup: fitted(document, setup), question: asked }, (answer) => {
      if (answer.tried !== combinations) throw new Error(`${answer.tried} combinations, not ${combinations}`);
    });
  const RODS = ['trackCam', 'tensionBush', 'upperRear', 'rackShim'];
  const onRods = question(wantedAtRest(-1.6, 40, 6), RODS);
  const atRest = { travel: 0, rack: 0, roll: 0 };
  const camber = findReading('camber');
  if (camber === undefined) throw new Error('camber is a reading');
  const fromSetup = { setup: findSetup(hatch, 'Baseline') };
  return [
    {
      name: 'reach 48,600, strut',
      units: 1,
      runs: 5,
      work: reach(struts, 'Baseline', question(wantedAtRest(-2.4, 60, 5), FOUR), 48_600),
    },
    {
      name: 'reach 48,600, five rods',
      units: 1,
      runs: 5,
      work: reach(rods, 'Track day', onRods, 48_600),
    },
    {
      // the part of the row above that looks for what would help
      name: 'reach 48,600, five rods: helps',
      units: 1,
      runs: 5,
      work: lastRound({ study: 'reach', document: rods, setup: fitted(rods, 'Track day'), question: onRods }),
    },
    { name: 'reach 48,600 over nine', units: 1, runs: 3, work: reach(struts, 'Baseline', question(SIX_OVER_NINE, FOUR), 48_600) },
    {
      name: 'reach 1,944 over nine',
      units: 1,
      runs: 5,
      work: reach(few, 'Baseline', question(SIX_OVER_NINE, ['plateAcross', 'rodShim', 'rearBush']), 1944),
    },
    {
      name: 'influence, whole car',
      units: 1,
      runs: 9,
      work: answering({
        study: 'influence',
        document: hatch,
        question: { ...fromSetup, axles: ['front', 'rear'], side: 'both', toeReset: undefined, at: atRest, withLocked: false },
      }),
    },
    {
      name: 'map 120 x 120',
      units: 1,
      runs: 5,
      work: answering({
        study: 'map',
        document: hatch,
        question: {
          ...fromSetup,
          x: { kind: 'adjuster', axle: 'front', side: 'both', name: 'plateAcross' },
          y: { kind: 'adjuster', axle: 'front', side: 'both', name: 'clampBolt' },
          nx: 120,
          ny: 120,
          entry: camber,
          axle: 'front',
          owner: 'left',
          at: atRest,
        },
      }),
    },
  ];
}

/** A setup with every bushing fitted, so that each has its marks and nothing else. */
function fitted(document: CarDocument, name: string): ReturnType<typeof findSetup> {
  const setup = findSetup(document, name);
  const bushings = Object.entries(document.front?.adjusters ?? {}).filter(([, { kind }]) => kind === 'offset-bushing');
  const both = { ...setup.front?.both, ...Object.fromEntries(bushings.map(([bushing]) => [bushing, 0])) };
  return { ...setup, front: { ...setup.front, both } };
}

function answering<Order extends StudyOrder>(
  order: Order,
  judge: (answer: { readonly tried: number }) => void = () => undefined,
): () => unknown {
  const mechanism = toMechanism(order.document);
  return () => {
    const answered = answerStudy(openStudy(order, mechanism));
    if (!answered.ok) throw new Error(answered.failure.message);
    judge(answered.value as unknown as { readonly tried: number });
  };
}

/** The last round of a study alone, started from what the rounds before it found once. */
function lastRound(order: StudyOrder): () => unknown {
  const study = openStudy(order, toMechanism(order.document));
  let round: ReturnType<typeof study.round> | null = null;
  const worked = (one: NonNullable<typeof round>): ReturnType<typeof one.merge> =>
    one.merge(Array.from({ length: one.chunks }, (_, chunk) => one.run(chunk)));
  return () => {
    for (;;) {
      const one: NonNullable<typeof round> = round ?? study.round();
      const outcome = worked(one);
      if ('answer' in outcome) {
        if (round === null) throw new Error(`${order.study} had one round only`);
        return;
      }
      round = study.round(outcome.next);
    }
  };
}
