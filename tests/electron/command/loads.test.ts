import { describe, expect, test } from 'vitest';
import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { ROOT } from '../../../electron/building/products.mjs';
import { carPath, jounce, jounceJson, type Json } from './jounce';

const HATCH = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');
const keysOf = (value: Json | undefined): string[] => Object.keys(value ?? {}).sort();

describe('loads', () => {
  test('answers in the form of the contract', async () => {
    const { status, document } = await jounceJson(['loads', HATCH]);
    expect(status).toBe(0);
    expect(keysOf(document)).toEqual(['at', 'by', 'car', 'cases', 'contract', 'notes', 'setup', 'units', 'warnings']);
    const cases = document['cases'] as Json;
    expect(cases.map((one) => one['name'])).toEqual(['Standing', 'Cornering', 'Braking', 'Driving', 'Kerb strike']);
    expect(cases.map((one) => one['invented'])).toEqual([false, true, true, true, true]);
    for (const one of cases) {
      expect(keysOf(one)).toEqual(['carried', 'g', 'given', 'invented', 'name', 'remarks', 'residual', 'rows', 'rule']);
      expect(one['residual'] as unknown as number).toBeLessThan(1e-9);
      for (const row of one['rows'] as Json) {
        expect(keysOf(row)).toEqual(['axial', 'axle', 'bending', 'buckling', 'ends', 'kind', 'link', 'side', 'why']);
        for (const what of ['axial', 'bending', 'buckling'])
          expect(row[what] === null, `${String(row['link'])} ${what}`).toBe(typeof row['why']?.[what] === 'string');
        for (const end of row['ends'] as Json) expect(keysOf(end)).toEqual(['at', 'force', 'moment', 'on', 'point']);
      }
    }
    expect(String(document['notes']?.[0])).toContain('Not proof of strength');
    const standing = cases[0]?.['given']?.['front']?.['left'];
    // 1290 kg, 62 % of it in front, half of that on each side
    expect(standing?.['Fz']).toBeCloseTo((1290 * 0.62 * 9.80665) / 2, 6);
  });

  test('a case by its accelerations: loads add up to the weight, sideways to mass × g', async () => {
    const { document } = await jounceJson(['loads', HATCH, '--g', '-0.9,-0.4', '--travel', '15,-15']);
    const [one] = document['cases'] as Json;
    expect(one?.['invented']).toBe(false);
    const wheels = ['front', 'rear'].flatMap((axle) => ['left', 'right'].map((side) => one?.['given']?.[axle]?.[side]));
    const sum = (key: string): number => wheels.reduce((total, wheel) => total + (wheel?.[key] as unknown as number), 0);
    const weight = 1290 * 9.80665;
    expect(sum('Fz')).toBeCloseTo(weight, 6);
    expect(sum('Fy')).toBeCloseTo(-0.9 * weight, 6);
    expect(sum('Fx')).toBeCloseTo(-0.4 * weight, 6);
    expect(wheels.map((wheel) => wheel?.['driven'])).toEqual([false, false, false, false]);
    // braking moves mass × g × height ÷ wheelbase to the front, on top of 62 %
    const front = ['left', 'right'].reduce(
      (total, side) => total + (one?.['given']?.['front']?.[side]?.['Fz'] as unknown as number),
      0,
    );
    const wheelbase = ((await jounceJson(['readings', HATCH])).document['wholeCar']?.['wheelbaseLeft'] ??
      NaN) as unknown as number;
    expect(front).toBeCloseTo(weight * (0.62 + (0.4 * 480) / wheelbase), -1);
    const driving = (await jounceJson(['loads', HATCH, '--g', '0,0.3'])).document['cases'] as Json;
    expect(driving[0]?.['given']?.['front']?.['left']?.['driven']).toBe(true);
    expect(driving[0]?.['given']?.['rear']?.['left']?.['Fx']).toBe(0);
  });

  test('cases of the file take the place of those that are invented; a right-hand side mirrors', async () => {
    const text = await readFile(HATCH, 'utf8');
    const loads = '"loads": { "Mine": { "rear": { "both": { "Fy": -500, "Fz": 3000, "Mz": 12 } } } },\n  "setups":';
    const stdin = text.replace('"setups":', loads);
    const { document } = await jounceJson(['loads', '-'], { stdin });
    const [one, ...more] = document['cases'] as Json;
    expect(more).toEqual([]);
    expect(one).toMatchObject({ name: 'Mine', invented: false, g: null, rule: null });
    expect(one?.['given']?.['rear']).toEqual({
      left: { Fx: 0, Fy: -500, Fz: 3000, Mz: 12, driven: false },
      right: { Fx: 0, Fy: 500, Fz: 3000, Mz: -12, driven: false },
    });
    const ofRear = (one?.['rows'] as Json).filter((row) => row['axle'] === 'rear' && row['link'] === 'upper');
    expect(ofRear[0]?.['axial']).toBe(ofRear[1]?.['axial']);
  });

  test('in words: no line over 100 columns, cautions under it', async () => {
    for (const car of [HATCH, carPath(24), path.join(ROOT, 'samples/chalkboard.jounce.json')]) {
      const { status, stdout } = await jounce(['loads', car]);
      expect(status).toBe(0);
      expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
      expect(stdout).toContain('Not proof of strength');
      expect(stdout).toContain('invented');
    }
  });

  test('says what is wrong', async () => {
    for (const [words, said] of [
      [['--case', 'Corneringg'], 'did you mean'],
      [['--case', 'Braking', '--g', '0,1'], 'ask for one of them'],
      [['--g', '1'], 'LAT,LONG'],
      [['--g', '1,x'], 'not a number'],
    ] as const) {
      const { status, document } = await jounceJson(['loads', HATCH, ...words]);
      expect(status).toBe(2);
      expect(String(document['error']?.['message'])).toContain(said);
    }
    const far = await jounceJson(['loads', HATCH, '--travel', '900']);
    expect(far.status).toBe(1);
    expect(far.document['error']?.['kind']).toBe('unreachable');
  });

  test('a batch takes g as two numbers, and answers as the verb does', async () => {
    const line = JSON.stringify({ id: 1, car: HATCH, ask: 'loads', options: { g: [-0.9, -0.4], axle: 'front' } });
    const { stdout } = await jounce(['batch'], { stdin: `${line}\n` });
    const { answer } = JSON.parse(stdout) as { answer: Json };
    const alone = (await jounceJson(['loads', HATCH, '--g', '-0.9,-0.4', '--axle', 'front'])).document;
    expect(answer['cases']).toEqual(alone['cases']);
  });
});
