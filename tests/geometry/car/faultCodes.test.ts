import { describe, expect, it } from 'vitest';
import { FAULT_CODES } from '../../../geometry/car/faultCodes';
import { BAD_FILES } from '../../fixtures/bad';

/** Refused before it is a document: wholeFile.test.ts. Found on the linkage itself: linkageFaults.test.ts. */
const TRIED_ELSEWHERE = [
  'file-too-large',
  'utf-16',
  'not-utf-8',
  'empty-file',
  'nesting-too-deep',
  'not-an-object',
  'meshes-too-large',
  'more-faults',
];
const OF_THE_LINKAGE = ['singular-linkage', 'over-centre', 'strut-upside-down', 'axles-exchanged'];

describe('fault codes', () => {
  it('have a bad file each', () => {
    const tried = new Set([...BAD_FILES.map((file) => file.code), ...TRIED_ELSEWHERE, ...OF_THE_LINKAGE]);
    expect(Object.keys(FAULT_CODES).filter((code) => !tried.has(code))).toEqual([]);
  });

  it('are kebab-case and explained in sentences', () => {
    for (const [code, meaning] of Object.entries(FAULT_CODES)) {
      expect(code).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(meaning).toMatch(/^.{20,}[.]$/);
    }
  });
});
