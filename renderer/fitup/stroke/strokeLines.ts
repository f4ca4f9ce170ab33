import { THREAD_LIMITS, type EnvelopeRow, type SideName, type StrokeRow, type ThreadRow } from '../../../geometry/index';
import { nameOfKey } from '../../adjusters/fitterWords';
import type { Verdict } from '../../compute/limits';

/** Where one wheel is, travel from design [mm]. */
export interface StrokePlace {
  readonly travel: number;
  readonly rack: number;
}

/** One thing with an end, of one wheel in one setup. Lengths in mm, angles in rad, threads in diameters. */
export interface StrokeValue {
  readonly setup: string;
  readonly value: number | null;
  /** null: the file does not say */
  readonly allowed: number | null;
  /** what is left of it; below 0 it is past its end; null: not known, or it has no end */
  readonly spare: number | null;
  /** the spare as a part of what it is of: what is least stands first */
  readonly share: number | null;
  /** null: nothing to judge it by */
  readonly verdict: Verdict | null;
  /** what else there is to say: "loose", "on its rubber" */
  readonly state: 'loose' | 'binds' | 'never' | 'on rubber' | null;
  readonly at: StrokePlace | null;
  /** of a thread, how far it reaches [mm]; of a hose, its least distance [mm] */
  readonly beside: number | null;
  readonly why: string | null;
}

/** What a line is of. */
export type StrokeKind = 'damper' | 'spring' | 'bar' | 'shaft' | 'span' | 'thread';

/** One thing with an end, of one wheel: the setup in which least is left, and every other one. */
export interface StrokeLine {
  readonly key: string;
  readonly kind: StrokeKind;
  readonly side: SideName;
  readonly name: string;
  /** what is measured, with its place: "of damper" */
  readonly note: string;
  readonly measure: 'length' | 'angle' | 'times';
  /** of a hose or a thread, its name in the file */
  readonly of: string;
  readonly worst: StrokeValue;
  readonly every: readonly StrokeValue[];
}

/** Of a damper's stroke, and of what a shaft may do, less than this part left is close: our suggestion. */
const CLOSE_SHARE = 0.15;
/** Of a hose: it goes straight before it tears. Our suggestion. */
const CLOSE_SPAN = 0.05;

const judge = (share: number | null, close: number): Verdict | null =>
  share === null ? null : share < 0 ? 'broken' : share < close ? 'close' : 'within';

type Head = Pick<StrokeLine, 'kind' | 'name' | 'note' | 'measure' | 'of'>;
type One = readonly [id: string, head: Head, value: StrokeValue];

const NOTHING = { allowed: null, spare: null, share: null, verdict: null, state: null, at: null, beside: null, why: null };

const damper = (row: StrokeRow): readonly One[] => {
  const { solidLeft, droopLeft, setup, standing, why } = row;
  const stroke = solidLeft === null || droopLeft === null ? null : solidLeft + droopLeft;
  const at = { travel: standing, rack: 0 };
  const one = (key: 'bumpLeft' | 'solidLeft' | 'droopLeft', name: string, kind: 'mark' | 'end'): One => {
    const left = row[key];
    const share = left === null || stroke === null || stroke <= 0 ? null : left / stroke;
    const isPast = left !== null && left < 0;
    // the first touch is a mark and no end: a wheel may stand on its rubber
    const verdict =
      kind === 'mark' ? (left === null ? null : isPast ? 'close' : 'within') : isPast ? 'broken' : judge(share, CLOSE_SHARE);
    return [
      key,
      { kind: 'damper', name, note: 'of damper, where it stands', measure: 'length', of: '' },
      {
        ...NOTHING,
        setup,
        value: left,
        spare: left,
        share,
        verdict,
        state: kind === 'mark' && isPast ? 'on rubber' : null,
        at,
        why: why[key] ?? null,
      },
    ];
  };
  return [
    one('bumpLeft', 'Damper, to first touch', 'mark'),
    one('solidLeft', 'Damper, to solid', 'end'),
    one('droopLeft', 'Damper, to fully open', 'end'),
  ];
};

const spring = (row: StrokeRow, envelope: EnvelopeRow | undefined): readonly One[] => {
  const { setup, looseAt, bindAt, looseLeft, bindLeft, why } = row;
  const { open, solid } = envelope ?? { open: null, solid: null };
  const whole = open === null || solid === null ? null : solid - open;
  const one = (key: 'looseAt' | 'bindAt', name: string): One => {
    const [at, left, end] = key === 'looseAt' ? [looseAt, looseLeft, open] : [bindAt, bindLeft, solid];
    const happens = at !== null;
    const within = at === null || end === null ? null : key === 'looseAt' ? end - at : at - end;
    const spare = happens ? within : left;
    const place = at ?? end;
    return [
      key,
      {
        kind: 'spring',
        name,
        note: happens ? 'travel from design' : 'of spring, at the damper’s end',
        measure: 'length',
        of: '',
      },
      {
        ...NOTHING,
        setup,
        value: happens ? at : left,
        spare,
        share: spare === null || whole === null ? null : spare / whole,
        verdict: happens ? (key === 'looseAt' ? 'close' : 'broken') : left === null ? null : 'within',
        state: happens ? (key === 'looseAt' ? 'loose' : 'binds') : left === null ? null : 'never',
        at: place === null ? null : { travel: place, rack: 0 },
        why: happens || left !== null ? null : (why[key] ?? null),
      },
    ];
  };
  return [one('looseAt', 'Spring comes loose'), one('bindAt', 'Spring’s coils touch')];
};

const bar = ({ barTwist, setup, why }: StrokeRow): readonly One[] =>
  barTwist === null
    ? []
    : (['greatest', 'least'] as const).map((key): One => [
        `barTwist.${key}`,
        {
          kind: 'bar',
          name: key === 'greatest' ? 'Bar twist, this wheel up' : 'Bar twist, other wheel up',
          note: 'between its arms, at most',
          measure: 'angle',
          of: '',
        },
        {
          ...NOTHING,
          setup,
          value: barTwist[key],
          at: barTwist.at[key],
          beside: barTwist.at[key].other,
          why: why['barTwist'] ?? null,
        },
      ]);

const SHAFT = [
  ['plungeIn', 'Shaft pushed in', 'between its joints, from design', 'length'],
  ['plungeOut', 'Shaft pulled out', 'between its joints, from design', 'length'],
  ['angleInner', 'Shaft’s inner joint', 'bent by, at most', 'angle'],
  ['angleOuter', 'Shaft’s outer joint', 'bent by, at most', 'angle'],
] as const;

const shaft = ({ shaft: found, setup, standing, why }: StrokeRow): readonly One[] =>
  found === null
    ? []
    : SHAFT.map(([key, name, note, measure]): One => {
        const [value, allowed] = [found[key], found.allowed[key]];
        const spare = value === null || allowed === null ? null : allowed - value;
        const share = spare === null || allowed === null || allowed <= 0 ? spare : spare / allowed;
        return [
          key,
          { kind: 'shaft', name, note, measure, of: '' },
          {
            ...NOTHING,
            setup,
            value,
            allowed,
            spare,
            share,
            verdict: judge(share, CLOSE_SHARE),
            at: found.at[key] ?? { travel: standing, rack: 0 },
            why: value === null ? (why[`shaft.${key}`] ?? null) : null,
          },
        ];
      });

const spans = ({ spans: found, setup, why }: StrokeRow): readonly One[] =>
  Object.entries(found).map(([name, span]): One => {
    const share = span === null ? null : span.spare / span.length;
    return [
      `spans.${name}`,
      { kind: 'span', name: nameOfKey(name), note: 'between its ends, at most', measure: 'length', of: name },
      span === null
        ? { ...NOTHING, setup, value: null, why: why[`spans.${name}`] ?? null }
        : {
            ...NOTHING,
            setup,
            value: span.greatest,
            allowed: span.length,
            spare: span.spare,
            share,
            verdict: judge(share, CLOSE_SPAN),
            at: span.at.greatest,
            beside: span.least,
          },
    ];
  });

const THREAD_VERDICTS = { enough: 'within', watch: 'close', out: 'broken' } as const;

const threadSpare = ({ engaged, diameter, material }: ThreadRow): number | null =>
  material === null ? null : engaged - THREAD_LIMITS[material].watch * diameter;

const threads = ({ threads: found, setup, standing, why }: StrokeRow): readonly One[] =>
  found.map((thread): One => {
    const spare = threadSpare(thread);
    return [
      `threads.${thread.kind}.${thread.name}`,
      {
        kind: 'thread',
        name: thread.kind === 'studs' ? 'Wheel studs' : `${nameOfKey(thread.name)}, thread`,
        note: thread.ends === 2 ? 'engaged, each end' : 'engaged',
        measure: 'times',
        of: thread.name,
      },
      {
        ...NOTHING,
        setup,
        value: thread.times,
        allowed: thread.material === null ? null : THREAD_LIMITS[thread.material].watch,
        spare,
        share: spare === null ? null : spare / thread.engaged,
        verdict: thread.verdict === null ? null : THREAD_VERDICTS[thread.verdict],
        at: { travel: standing, rack: 0 },
        beside: thread.engaged,
        why: why[`threads.${thread.name}`] ?? null,
      },
    ];
  });

const RANK: Readonly<Record<Verdict, number>> = { broken: 0, close: 1, within: 2 };
const rankOf = ({ verdict }: StrokeValue): number => (verdict === null ? 3 : RANK[verdict]);

/** What has less left before what has more; what cannot be judged last. */
const byLeft = (a: StrokeValue, b: StrokeValue): number => {
  const rank = rankOf(a) - rankOf(b);
  if (rank !== 0) return rank;
  if (a.share !== null && b.share !== null) return a.share - b.share;
  if (a.share !== null || b.share !== null) return a.share === null ? 1 : -1;
  return Math.abs(b.value ?? 0) - Math.abs(a.value ?? 0);
};

/** Everything that has an end, of each wheel, over the setups: least left first. */
export const strokeLines = (rows: readonly StrokeRow[], envelopes: readonly EnvelopeRow[]): readonly StrokeLine[] => {
  const found = new Map<string, { readonly side: SideName; readonly values: [Head, StrokeValue][] }>();
  for (const row of rows) {
    const envelope = envelopes.find((one) => one.setup === row.setup && one.axle === row.axle && one.side === row.side);
    for (const [id, head, value] of [
      ...damper(row),
      ...spring(row, envelope),
      ...bar(row),
      ...shaft(row),
      ...spans(row),
      ...threads(row),
    ]) {
      const key = `${row.axle}|${row.side}|${id}`;
      const line = found.get(key) ?? { side: row.side, values: [] };
      line.values.push([head, value]);
      found.set(key, line);
    }
  }
  const lines = [...found].map(([key, { side, values }]): StrokeLine => {
    const [head, worst] = values.reduce((least, next) => (byLeft(next[1], least[1]) < 0 ? next : least));
    return { key, side, ...head, worst, every: values.map(([, value]) => value) };
  });
  return lines.sort((a, b) => byLeft(a.worst, b.worst));
};

/** How many lines are past an end, to be watched (close to it, or a loose spring), and clear. */
export const strokeCounts = (lines: readonly StrokeLine[]): readonly { readonly verdict: Verdict; readonly words: string }[] => {
  const of = (verdict: Verdict): number => lines.filter(({ worst }) => worst.verdict === verdict).length;
  return (['broken', 'close', 'within'] as const)
    .map((verdict) => ({ verdict, count: of(verdict) }))
    .filter(({ count }) => count > 0)
    .map(({ verdict, count }) => ({
      verdict,
      words: `${count} ${verdict === 'broken' ? 'past its end' : verdict === 'close' ? 'to watch' : 'clear'}`,
    }));
};
