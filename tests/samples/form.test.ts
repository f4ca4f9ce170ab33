import { describe, expect, it } from 'vitest';
import { serializeCar, setupNames } from '../../geometry/index';
import { AXLES, SAMPLES, sampleNamed } from './samples';

const MOST_LINES = 480;

describe.each(SAMPLES)('$name', ({ document, text, warnings }) => {
  it('is read without a warning', () => {
    expect(warnings).toEqual([]);
  });

  it('says that it is invented', () => {
    expect(document.notes).toContain('An invented car');
  });

  it('is written back byte for byte', () => {
    expect(serializeCar(document, text)).toBe(text);
  });

  it('names the schema beside it, so that editors know its keys', () => {
    expect(document.$schema).toBe('./jounce-car-1.schema.json');
  });

  it('can be read by a person: not too long, coordinates in half millimetres', () => {
    expect(text.split('\n').length).toBeLessThan(MOST_LINES);
    for (const axle of AXLES) {
      for (const [name, point] of Object.entries(document[axle]!.points)) {
        expect(point.every((coordinate) => Number.isInteger(2 * coordinate)), `${axle} ${name}`).toBe(true);
      }
    }
  });

  it('names rules that are marked as samples where it limits or locks', () => {
    for (const { source } of document.limits ?? []) expect(source).toMatch(/^sample rules \d/);
    for (const axle of AXLES) {
      for (const { locked } of Object.values(document[axle]!.adjusters ?? {})) {
        if (locked !== undefined) expect(locked).toMatch(/^sample rules \d+\.\d+: /);
      }
    }
  });
});

describe('the three', () => {
  it('are a hatch with four setups, a coupe and a teaching car', () => {
    expect(SAMPLES.map(({ name }) => name)).toEqual(['chalkboard', 'marram-coupe', 'saltmarsh-hatch']);
    const { document } = sampleNamed('saltmarsh-hatch');
    expect(setupNames(document)).toHaveLength(4);
    expect(document.setups!['Baseline']).toEqual({});
    expect(document.front!.layout).toBe('strut');
    expect(document.rear!.trailingArm).toBeDefined();
    for (const part of ['spring', 'damper', 'antiRollBar'] as const) for (const axle of AXLES) expect(document[axle]![part]).toBeDefined();
  });
});
