import { describe, expect, it } from 'vitest';
import { parseCar } from '../../../geometry/car/parseCar';
import { FAULT_CODES } from '../../../geometry/car/faultCodes';
import { BAD_FILES } from '../../fixtures/bad';

describe('bad files, broken by hand', () => {
  it('are two hundred or more', () => {
    expect(BAD_FILES.length).toBeGreaterThanOrEqual(200);
  });

  it.each(BAD_FILES.map((file) => [file.title, file] as const))('%s', (_title, file) => {
    const outcome = parseCar(file.text);
    if (outcome.ok) throw new Error('the file was accepted');
    const { faults } = outcome.failure;
    const found = faults.find((fault) => fault.code === file.code && fault.path === file.path);
    expect(found, JSON.stringify(faults, null, 1)).toBeDefined();
    if (file.place !== null) expect({ line: found?.line, column: found?.column }).toEqual(file.place);
    if (file.hint !== undefined) expect(found?.hint).toContain(file.hint);
    expect(faults.length, JSON.stringify(faults, null, 1)).toBe(file.faults);
  });

  it('have every fault with a listed code, a place and an expectation', () => {
    for (const file of BAD_FILES) {
      const outcome = parseCar(file.text);
      if (outcome.ok) continue;
      for (const fault of outcome.failure.faults) {
        expect(Object.keys(FAULT_CODES)).toContain(fault.code);
        expect(fault.line).not.toBeNull();
        expect(fault.column).not.toBeNull();
        expect(fault.expected).toBeTruthy();
      }
    }
  });
});
