import { describe, expect, it } from 'vitest';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { parseCar } from '../../../geometry/index';
import { FAULT_CODES } from '../../../geometry/car/faultCodes';
import type { AxleDocument, CarDocument } from '../../../geometry/car/document';
import { GOOD_CARS } from './fixtures';

const SEED = 20260516;
const COUNT = 10_000;
/** A file of 10 kB takes about 1 ms; a hang takes for ever. The machine may be busy. */
const LONGEST_MS = 5000;

type Pick = (count: number) => number;

const PIECES = [
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  '"',
  '\\',
  '0',
  '-',
  '1e309',
  'null',
  'true',
  '""',
  '[]',
  '{}',
  '\0',
  '\u2028',
  'é',
  '//',
  "'",
  '9',
];

/** Breaks the text itself, where a hand or a bad disk would. */
function mutateText(text: string, pick: Pick): string {
  const at = pick(text.length);
  const span = 1 + pick(pick(4) === 0 ? 400 : 4);
  const piece = PIECES[pick(PIECES.length)];
  switch (pick(5)) {
    case 0:
      return text.slice(0, at) + text.slice(at + span);
    case 1:
      return text.slice(0, at) + piece + text.slice(at);
    case 2:
      return text.slice(0, at) + piece + text.slice(at + span);
    case 3:
      return text.slice(0, at);
    default: {
      const from = pick(text.length);
      return text.slice(0, at) + text.slice(from, from + span) + text.slice(at);
    }
  }
}

type Json = string | number | boolean | null | Json[] | { [key: string]: Json };

const VALUES: readonly Json[] = [
  null,
  true,
  '',
  'x',
  0,
  -1,
  1e9,
  1e10,
  1e308,
  [],
  {},
  [0, 0, 0],
  [1, 2],
  { kind: 'slide' },
  'wheelCentre',
  'toString',
];

/** Breaks one value of the document: what stays is JSON. */
function mutateValue(text: string, pick: Pick): string {
  const document = JSON.parse(text) as Json;
  const spots: { readonly holder: { [key: string]: Json }; readonly key: string }[] = [];
  const collect = (value: Json): void => {
    if (typeof value !== 'object' || value === null) return;
    const holder = value as { [key: string]: Json };
    for (const key of Object.keys(holder)) {
      spots.push({ holder, key });
      collect(holder[key]);
    }
  };
  collect(document);
  const { holder, key } = spots[pick(spots.length)];
  const other = spots[pick(spots.length)];
  switch (pick(4)) {
    case 0:
      if (Array.isArray(holder)) holder.splice(Number(key), 1);
      else delete holder[key];
      break;
    case 1:
      holder[key] = VALUES[pick(VALUES.length)];
      break;
    case 2:
      holder[key] = structuredClone(other.holder[other.key]);
      break;
    default:
      if (Array.isArray(holder)) holder.push(holder[pick(holder.length)]);
      else {
        holder[`${key}x`] = holder[key];
        delete holder[key];
      }
  }
  return JSON.stringify(document, null, 2);
}

/**
 * What every accepted file must keep, judged here anew and in other words than the program's:
 * JSON, the format, numbers within bounds, three coordinates to a point, rods between known points, known adjusters in range.
 */
function breaksARule(text: string): string | null {
  const car = JSON.parse(text) as CarDocument;
  const head: readonly unknown[] = [car.format, car.version, typeof car.name, car.name !== ''];
  if (JSON.stringify(head) !== '["jounce-car",1,"string",true]') return 'head';
  const odd = oddNumber(car, 'car');
  if (odd !== null) return odd;
  const axles = [car.front, car.rear];
  if (axles.every((axle) => axle === undefined)) return 'no axle';
  const broken = axles.map((axle) => (axle === undefined ? null : breaksAxle(axle))).find((what) => what !== null);
  if (broken !== undefined) return broken;
  for (const setup of Object.values(car.setups ?? {})) {
    for (const name of ['front', 'rear'] as const) {
      const [axle, part] = [car[name], setup[name]];
      if (part === undefined) continue;
      if (axle === undefined) return 'setup of no axle';
      for (const side of [part.both, part.left, part.right]) {
        for (const [key, value] of Object.entries(side ?? {})) {
          const adjusters = axle.adjusters ?? {};
          if (!Object.hasOwn(adjusters, key)) return 'setting';
          const adjuster = adjusters[key];
          const [min, max] = 'range' in adjuster ? adjuster.range : [-90, 360];
          if (value !== null && !(value >= min && value <= max)) return 'setting range';
        }
      }
    }
  }
  return null;
}

/** Keys whose entries may be null: settings, and the open end of a question's range. */
const MAY_HOLD_NULL = ['both', 'left', 'right', 'range'];

function oddNumber(value: unknown, key: string): string | null {
  if (typeof value === 'number') return Math.abs(value) <= 1e9 ? null : `number ${value}`;
  if (typeof value !== 'object' || value === null) return null;
  for (const [name, inner] of Object.entries(value)) {
    if (inner === null && !MAY_HOLD_NULL.includes(key)) return `null in ${key}`;
    const odd = oddNumber(inner, name);
    if (odd !== null) return odd;
  }
  return null;
}

function breaksAxle(axle: AxleDocument): string | null {
  const names = Object.keys(axle.points);
  for (const point of Object.values<readonly unknown[]>(axle.points)) {
    if (point.length !== 3 || point.some((x) => typeof x !== 'number' || Math.abs(x) > 1e5)) return 'point';
  }
  if (!names.includes('wheelCentre')) return 'wheel centre';
  if (axle.layout === 'strut') {
    const needed = ['armFront', 'armRear', 'ballJoint', 'strutTop', 'strutFoot', 'rackEnd', 'tieRodEnd'];
    if (needed.some((name) => !names.includes(name))) return 'strut points';
  } else {
    const rods = Object.values<readonly string[]>(axle.rods ?? {});
    if (rods.length !== (axle.trailingArm === undefined ? 5 : 3)) return 'rod count';
    for (const rod of rods) {
      if (rod.length !== 2 || rod.some((end) => !names.includes(end))) return 'rod';
      const [a, b] = rod.map((end) => axle.points[end]);
      // 1 mm in inches
      if (Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2]) < 0.039) return 'rod length';
    }
  }
  if (!(axle.wheel.loadedRadius > 0)) return 'radius';
  const adjusters = axle.adjusters ?? {};
  if (axle.toeAdjuster !== undefined && !Object.hasOwn(adjusters, axle.toeAdjuster)) return 'toe adjuster';
  for (const adjuster of Object.values(adjusters)) {
    if (adjuster.kind !== 'perch' && 'moves' in adjuster && !names.includes(adjuster.moves)) return 'moves';
    if ('range' in adjuster && !(adjuster.range[0] < adjuster.range[1])) return 'range';
  }
  return null;
}

describe(`mutated files, seed ${SEED}`, () => {
  it(`${COUNT} of them: never a crash, never a hang, never a silent acceptance`, { timeout: 600_000 }, () => {
    const random = xoroshiro128plus(SEED);
    const pick: Pick = (count) => uniformInt(random, 0, count - 1);
    const codes = Object.keys(FAULT_CODES);
    let accepted = 0;
    for (let i = 0; i < COUNT; i++) {
      const [name, good] = GOOD_CARS[pick(GOOD_CARS.length)];
      let text = pick(2) === 0 ? mutateText(good, pick) : mutateValue(good, pick);
      if (pick(5) === 0) text = mutateText(text, pick);
      const where = `seed ${SEED}, file ${i} from ${name}`;
      const started = performance.now();
      const outcome = parseCar(text);
      expect(performance.now() - started, where).toBeLessThan(LONGEST_MS);
      if (outcome.ok) {
        accepted++;
        expect(breaksARule(text), where).toBeNull();
        continue;
      }
      const { faults } = outcome.failure;
      if (faults.length === 0) throw new Error(`${where}: refused without a fault`);
      const lines = text.split(/\r\n|\r|\n/);
      for (const fault of faults) {
        if (!codes.includes(fault.code)) throw new Error(`${where}: unlisted code ${fault.code}`);
        if (fault.line === null) continue;
        // every place is a place of the text
        const line = lines[fault.line - 1];
        if (line === undefined || fault.column === null || fault.column < 1 || fault.column > line.length + 1)
          throw new Error(`${where}: ${JSON.stringify(fault)}`);
      }
    }
    // a changed coordinate is a good file; if everything were refused this test would say nothing
    expect(accepted).toBeGreaterThan(COUNT / 100);
    expect(accepted).toBeLessThan(COUNT / 2);
  });
});
