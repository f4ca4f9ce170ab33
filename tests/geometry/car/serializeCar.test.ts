import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { CarDocument } from '../../../geometry/car/document';
import { parseCar } from '../../../geometry/car/parseCar';
import { serializeCar } from '../../../geometry/car/serializeCar';
import { documentOf, EVERYTHING, GOOD_CARS, WISHBONES } from './fixtures';

const SEED = 48;
const runs = (numRuns: number): { seed: number; numRuns: number } => ({ seed: SEED, numRuns });

type Json = string | number | boolean | null | Json[] | { [key: string]: Json };
type Path = readonly (string | number)[];

const clone = (document: CarDocument): Json => structuredClone(document) as unknown as Json;
const asCar = (value: Json): CarDocument => value as unknown as CarDocument;

/** Paths of all numbers and texts. */
function leavesOf(value: Json, path: Path = []): Path[] {
  if (typeof value === 'number' || typeof value === 'string') return [path];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => leavesOf(inner, [...path, Array.isArray(value) ? Number(key) : key]));
}

function edit(value: Json, path: Path, change: (old: Json) => Json): Json {
  if (path.length === 0) return change(value);
  const [step, ...rest] = path;
  if (Array.isArray(value)) return value.map((item, i) => (i === step ? edit(item, rest, change) : item));
  const holder = value as { [key: string]: Json };
  return { ...holder, [step]: edit(holder[step], rest, change) };
}

const linesOf = (text: string): string[] => text.split(/\r\n|\n|\r/);
function changedLines(before: string, after: string): number {
  const [a, b] = [linesOf(before), linesOf(after)];
  expect(b.length).toBe(a.length);
  return a.filter((line, i) => line !== b[i]).length;
}

describe('an untouched document', () => {
  it.each(GOOD_CARS)('of %s is written byte for byte', (_name, text) => {
    for (const given of [
      text,
      text.replaceAll('\n', '\r\n'),
      text.replaceAll(/\n +/g, '\n\t'),
      JSON.stringify(JSON.parse(text)),
      `${text}\n\n  `,
    ]) {
      const outcome = parseCar(given);
      if (!outcome.ok) throw new Error('refused');
      expect(serializeCar(outcome.value.document, outcome.value.text)).toBe(given);
    }
  });

  it('is written byte for byte in any spelling of its numbers and texts', () => {
    const text = WISHBONES.replace('-1, "toe": 0,', '-1.00e+0 ,"toe":-0.0 ,').replace('"As drawn": {}', '"\\u0041s drawn" :{ }');
    expect(text).not.toBe(WISHBONES);
    const outcome = parseCar(text);
    expect(outcome.ok && serializeCar(outcome.value.document, text)).toBe(text);
  });

  it('never gets a byte-order mark', () => {
    expect(serializeCar(documentOf(WISHBONES), `\uFEFF${WISHBONES}`)).toBe(WISHBONES);
  });
});

describe(`an edited document, seed ${SEED}`, () => {
  const leaves = GOOD_CARS.map(([name, text]) => ({
    name,
    text,
    document: documentOf(text),
    paths: leavesOf(JSON.parse(text) as Json),
  }));
  const anyLeaf = fc.constantFrom(...leaves).chain((car) => fc.constantFrom(...car.paths).map((path) => ({ ...car, path })));

  it('differs in one line when one value was changed, whatever ends a line, and reads back as it was', () => {
    fc.assert(
      fc.property(
        anyLeaf,
        fc.double({ noNaN: true, noDefaultInfinity: true }),
        fc.constantFrom('\n', '\r\n'),
        (car, number, newline) => {
          const given = car.text.replaceAll('\n', newline);
          const edited = edit(clone(car.document), car.path, (old) =>
            typeof old === 'number' ? (Object.is(number, -0) ? 0 : number) : `${String(old)}é"`,
          );
          const written = serializeCar(asCar(edited), given);
          expect(JSON.parse(written)).toEqual(edited);
          const isSame = JSON.stringify(edited) === JSON.stringify(car.document);
          expect(changedLines(given, written)).toBe(isSame ? 0 : 1);
        },
      ),
      runs(400),
    );
  });

  it('reads back as it was after any number of edits, keys and entries put in and taken out too', () => {
    const anyJson = fc.oneof(
      fc.double({ noNaN: true, noDefaultInfinity: true }).map((number) => (Object.is(number, -0) ? 0 : number)),
      fc.string(),
      fc.constant<Json>(null),
      fc.constant<Json>({}),
      fc.constant<Json>([]),
      fc.constant<Json>({ a: 1, b: [1, 2, 3], c: { d: 'x' } }),
      fc.constant<Json>([[1, 2], { a: 1 }]),
    );
    const step = fc.record({
      spot: fc.nat(),
      kind: fc.constantFrom('set', 'remove', 'add', 'first', 'shuffle'),
      value: anyJson,
      key: fc.string(),
    });
    fc.assert(
      fc.property(fc.constantFrom(...leaves), fc.array(step, { minLength: 1, maxLength: 6 }), (car, steps) => {
        let edited = clone(car.document);
        for (const { spot, kind, value, key } of steps) {
          const paths = leavesOf(edited);
          if (paths.length === 0) break;
          const path = paths[spot % paths.length];
          const last = path[path.length - 1];
          edited = edit(edited, path.slice(0, -1), (holder) => {
            if (Array.isArray(holder)) {
              const index = Number(last);
              if (kind === 'remove') return holder.filter((_item, i) => i !== index);
              if (kind === 'set') return holder.map((item, i) => (i === index ? value : item));
              if (kind === 'shuffle') return [...holder].reverse();
              return kind === 'first' ? [value, ...holder] : [...holder, value];
            }
            const entries = Object.entries(holder as { [name: string]: Json }).filter(([name]) => name !== '__proto__');
            if (kind === 'remove') return Object.fromEntries(entries.filter(([name]) => name !== last));
            if (kind === 'set') return Object.fromEntries(entries.map(([name, old]) => [name, name === last ? value : old]));
            if (kind === 'shuffle') return Object.fromEntries([...entries].reverse());
            const fresh = key === '__proto__' ? 'proto' : key;
            return Object.fromEntries(kind === 'first' ? [[fresh, value], ...entries] : [...entries, [fresh, value]]);
          });
        }
        const written = serializeCar(asCar(edited), car.text);
        expect(JSON.parse(written)).toEqual(edited);
        expect(JSON.stringify(JSON.parse(written))).toBe(JSON.stringify(edited));
        // written once more, nothing moves
        expect(serializeCar(asCar(edited), written)).toBe(written);
      }),
      runs(400),
    );
  });

  it('keeps the order of keys, $schema, and everything on the other lines', () => {
    const car = documentOf(EVERYTHING);
    const added: CarDocument = {
      ...car,
      setups: { ...car.setups, Lower: { front: { both: { topPlate: 2 }, rideHeight: -20 } } },
    };
    const written = serializeCar(added, EVERYTHING);
    const before = '"Dry, 2nd": { "front": { "both": { "tieRod": 1.25 }, "barHole": { "left": "soft", "right": "hard" } } }';
    const lower =
      '"Lower": {\n      "front": {\n        "both": {\n          "topPlate": 2\n        },\n        "rideHeight": -20\n      }\n    }';
    expect(written).toBe(EVERYTHING.replace(before, `${before},\n    ${lower}`));
    const { ['Dry, 2nd']: _gone, ...rest } = added.setups ?? {};
    expect(serializeCar({ ...added, setups: rest }, written)).toBe(written.replace(`    ${before},\n`, ''));
  });

  it('writes a changed point where it stands, in the layout it has', () => {
    const car = documentOf(WISHBONES);
    const front = { ...car.front!, points: { ...car.front!.points, upperKnuckle: [-0.75, 27, 19] as const } };
    expect(serializeCar({ ...car, front }, WISHBONES)).toBe(
      WISHBONES.replace('"upperKnuckle": [-0.7, 27.0, 19.0]', '"upperKnuckle": [-0.75, 27.0, 19.0]'),
    );
  });

  it('takes a key that is undefined for one that is not there', () => {
    const car = documentOf(WISHBONES);
    const text = serializeCar({ ...car, notes: undefined, name: 'B' }, WISHBONES);
    expect(text).toBe(WISHBONES.replace('Wishbones, inches', 'B'));
  });
});

describe('a document without a text', () => {
  it.each(GOOD_CARS)('of %s is written in two-space indents and reads back as it was', (_name, text) => {
    // −0 is written 0
    const document = documentOf(JSON.stringify(JSON.parse(text)));
    const written = serializeCar(document);
    expect(JSON.parse(written)).toEqual(document);
    expect(JSON.stringify(JSON.parse(written))).toBe(JSON.stringify(document));
    expect(written.startsWith('{\n  "')).toBe(true);
    expect(written.endsWith('}\n')).toBe(true);
    const wheelCentre = document.front!.points['wheelCentre'];
    expect(written).toContain(`      "wheelCentre": [${wheelCentre.join(', ')}]`);
    expect(serializeCar(document, written)).toBe(written);
  });
});
