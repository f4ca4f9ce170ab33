import type { AxleName, SideName } from '../car/document';
import { toDegrees } from '../core/angle';
import { formatNumber, formatShort } from '../format/format';
import { noEnvelopeSentence, type FitUpCorner } from './corners';
import type { JointRow } from './joints/jointTilts';
import type { StrokeRow } from './stroke/stroke';
import type { ThreadRow } from './stroke/threads';

/** Codes of what fit-up has to say; codes never change their meaning. */
export const FITUP_WARNING_CODES = {
  'no-joints': 'The file gives no joints of the axles asked for.',
  'no-envelope': 'The file does not say where travel or lock ends: nothing can be said of the whole envelope.',
  'mesh-open': 'A part whose mesh is not closed: it has no inside, and what stands within it is not told.',
  'kind-without-margin': 'A part of a kind that no margin is given for: the default counts.',
  'no-shape': 'What moves at a wheel and has no shape in the file: nothing is known of what comes near it.',
  'part-far': 'A part that is metres away from its own wheel: of another unit or place, most likely.',
  'positions-unreachable': 'Positions of the envelope at which the links do not close: nothing is known there.',
  'joint-past-rated': 'A joint tilts more than its maker allows.',
  'stands-past-stop': 'A wheel stands on its bump rubber, or past an end of its damper.',
  'spring-by-weight': 'Where the spring comes loose is worked out from the weight on its corner, for want of its lengths.',
  'spring-loose': 'A spring comes loose within the travel.',
  'spring-binds': 'The coils of a spring touch within the travel.',
  'shaft-past-end': 'A drive shaft plunges or bends more than the file allows.',
  'span-short': 'A hose or cable is shorter than the distance that it has to bridge.',
  'thread-out': 'A thread holds by less than 1.0 × its diameter in steel, 1.5 × in aluminium (common practice, no source).',
  'thread-watch': 'A thread holds by less than 1.5 × its diameter in steel, 2.0 × in aluminium (common practice, no source).',
  'thread-material': 'What a thread holds by is enough in steel and not in aluminium: the file does not say which it is.',
  'setup-unreachable': 'A setup in which the car cannot be put together; it is left out.',
} as const satisfies Readonly<Record<string, string>>;

export type FitUpWarningCode = keyof typeof FITUP_WARNING_CODES;

export interface FitUpWarning {
  readonly code: FitUpWarningCode;
  readonly path: string;
  readonly message: string;
}

/** Warnings in their order, each message once. */
class Warnings {
  private readonly found = new Map<string, FitUpWarning>();

  add(code: FitUpWarningCode, path: string, message: string): void {
    const key = `${code} ${path} ${message}`;
    if (!this.found.has(key)) this.found.set(key, { code, path, message });
  }

  get all(): readonly FitUpWarning[] {
    return [...this.found.values()];
  }
}

const mm = (value: number): string => `${formatNumber(value, 1)} mm`;
const degrees = (value: number): string => `${formatNumber(toDegrees(value), 1)}°`;
const whereOf = ({ setup, axle, side }: { setup: string; axle: AxleName; side: SideName }): string => `${setup}, ${axle} ${side}`;

export function jointWarnings(rows: readonly JointRow[]): readonly FitUpWarning[] {
  const warnings = new Warnings();
  if (rows.length === 0)
    warnings.add('no-joints', 'joints', 'The file gives no joints: see joints in the guide to the car file.');
  for (const { point, axle, side, tilt, rated, spare, at } of rows)
    if (tilt !== null && spare !== null && spare < 0)
      warnings.add(
        'joint-past-rated',
        `joints.${point}`,
        `${axle} ${side} ${point}: ${degrees(tilt)} of tilt, ${degrees(rated)} allowed, in ${at!.setup} at travel ${mm(at!.travel)}, rack ${mm(at!.rack)}.`,
      );
  return warnings.all;
}

/** What is missing of the envelopes, and where they cannot be reached. */
export function envelopeWarnings(corners: readonly FitUpCorner[]): readonly FitUpWarning[] {
  const warnings = new Warnings();
  for (const { axle, setup, side, envelope, missing } of corners) {
    if (envelope === null) {
      warnings.add('no-envelope', axle.axle, noEnvelopeSentence({ axle, missing }));
      continue;
    }
    const { unreachable } = envelope;
    if (unreachable.length === 0) continue;
    const where = whereOf({ setup, axle: axle.axle, side: side.mechanism.side });
    const count = unreachable.length === 1 ? 'one position' : `${unreachable.length} positions`;
    warnings.add(
      'positions-unreachable',
      axle.axle,
      `${where}: ${count} of the envelope cannot be reached. ${unreachable[0].message}`,
    );
  }
  return warnings.all;
}

export function strokeWarnings(rows: readonly StrokeRow[]): readonly FitUpWarning[] {
  const warnings = new Warnings();
  for (const row of rows) {
    const where = whereOf(row);
    const { axle, bumpLeft, solidLeft, droopLeft, looseAt, bindAt, shaft } = row;
    if (solidLeft !== null && solidLeft < 0)
      warnings.add('stands-past-stop', `${axle}.damper`, `${where}: the damper would stand ${mm(-solidLeft)} past solid.`);
    else if (bumpLeft !== null && bumpLeft < 0)
      warnings.add('stands-past-stop', `${axle}.damper`, `${where}: the wheel stands ${mm(-bumpLeft)} into its bump rubber.`);
    if (droopLeft !== null && droopLeft < 0)
      warnings.add('stands-past-stop', `${axle}.damper`, `${where}: the damper would stand ${mm(-droopLeft)} past fully open.`);
    if (row.isByWeight)
      warnings.add(
        'spring-by-weight',
        `${axle}.spring`,
        `${axle}: where the spring comes loose is worked out from the weight on its corner; give spring.freeLength and spring.installed.`,
      );
    if (looseAt !== null)
      warnings.add('spring-loose', `${axle}.spring`, `${where}: the spring is loose below travel ${mm(looseAt)}.`);
    if (bindAt !== null)
      warnings.add('spring-binds', `${axle}.spring`, `${where}: the spring’s coils touch from travel ${mm(bindAt)}.`);
    if (shaft !== null) {
      for (const [key, words, of] of SHAFT_WORDS) {
        const [is, allowed] = [shaft[key], shaft.allowed[key]];
        if (is !== null && allowed !== null && is > allowed)
          warnings.add(
            'shaft-past-end',
            `${axle}.driveShaft`,
            `${where}: the drive shaft ${words} ${of(is)}, ${of(allowed)} allowed.`,
          );
      }
    }
    for (const [name, span] of Object.entries(row.spans))
      if (span !== null && span.spare < 0)
        warnings.add(
          'span-short',
          `spans.${name}`,
          `${where}: ${name} has to bridge ${mm(span.greatest)} and is ${mm(span.length)} long.`,
        );
    for (const thread of row.threads) {
      const found = threadWarning(axle, thread);
      if (found !== null) warnings.add(found.code, found.path, `${where}: ${found.message}`);
    }
  }
  return warnings.all;
}

const SHAFT_WORDS = [
  ['plungeIn', 'is pushed in by', mm],
  ['plungeOut', 'is pulled out by', mm],
  ['angleInner', 'bends its inner joint by', degrees],
  ['angleOuter', 'bends its outer joint by', degrees],
] as const;

/** What there is to say of a thread as it stands; null: nothing. */
export function threadWarning(axle: AxleName, thread: ThreadRow): FitUpWarning | null {
  const { name, kind, engaged, times, material, verdict } = thread;
  if (verdict === 'enough') return null;
  const path = kind === 'studs' ? `${axle}.wheel.studs` : `${axle}.adjusters.${name}.thread`;
  const what = kind === 'studs' ? 'the wheel’s studs hold' : `each end of ${name} holds`;
  const has = `${what} by ${mm(engaged)}, ${formatNumber(times, 2)} × the diameter`;
  if (verdict === null)
    return {
      code: 'thread-material',
      path,
      message: `${has}: enough in steel, not in aluminium, and the file does not say which.`,
    };
  const asked = material === 'aluminium' ? [1.5, 2] : [1, 1.5];
  const least = verdict === 'out' ? asked[0] : asked[1];
  return {
    code: verdict === 'out' ? 'thread-out' : 'thread-watch',
    path,
    message: `${has}; ${formatShort(least)} × is the least that is ${verdict === 'out' ? 'ever used' : 'asked for'} in ${material ?? 'steel'} (common practice).`,
  };
}
