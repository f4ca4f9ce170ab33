import { describe, expect, it } from 'vitest';
import { judgeVersion, type Migrations } from '../../../geometry/car/versions';

/** Two steps that never were, to try the way that a later version will go. */
type Document = Readonly<Record<string, unknown>>;
const MADE_UP: Migrations = new Map<number, (document: Document) => Document>([
  [1, ({ title, ...rest }) => ({ ...rest, name: title })],
  [2, (document) => ({ ...document, units: { length: 'mm' } })],
]);

describe('versions of the car file', () => {
  it('older ones are brought up one step after the other, and the file that was read stays as it is', () => {
    const given = Object.freeze({ format: 'jounce-car', version: 1, title: 'Old' });
    expect(judgeVersion(given, MADE_UP, 3)).toEqual({
      kind: 'older',
      version: 1,
      document: { format: 'jounce-car', version: 3, name: 'Old', units: { length: 'mm' } },
    });
    expect(judgeVersion({ version: 2, name: 'Old' }, MADE_UP, 3)).toMatchObject({ kind: 'older', version: 2 });
  });

  it('newer ones are refused with a word on what to do', () => {
    expect(judgeVersion({ version: 4 }, MADE_UP, 3)).toMatchObject({
      kind: 'newer',
      fault: { code: 'newer-version', path: ['version'], found: '4' },
    });
  });

  it.each([{ version: 3 }, { version: 0 }, { version: -1 }, { version: 1.5 }, { version: '1' }, {}, [], null, 7])(
    '%j is left to the schema',
    (document) => {
      expect(judgeVersion(document, MADE_UP, 3)).toEqual({ kind: 'current', document });
    },
  );
});
