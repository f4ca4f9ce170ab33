import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { parseCar, type CarDocument, type LoadCase } from '../../../geometry/index';
import { searchMesh } from '../../../geometry/meshes/meshSearch';
import { answerFitUp } from '../../../renderer/compute/fitup/answerFitUp';
import type { FitUpAnswers } from '../../../renderer/compute/fitup/fitUpOrder';
import { askedSetups, loadsOrder } from '../../../renderer/fitup/fitUpQuestion';
import {
  areWheelsAlike,
  casesInFile,
  copyName,
  freeCaseName,
  INVENTED,
  renamedCase,
  withAlike,
  withCopy,
  withDriven,
  withForce,
  withForces,
  withG,
  withNewCase,
  withNotes,
  withoutCase,
} from '../../../renderer/fitup/loads/loadCaseEdits';
import { drawnLoads } from '../../../renderer/fitup/loads/loadItems';
import { loadLines, loadsPlain, rodsUnderPush, type LoadLine } from '../../../renderer/fitup/loads/loadLines';
import { byWords, carriedWords, pushWords, residualWords, valueWords } from '../../../renderer/fitup/loads/loadWords';
import { judgeEdit } from '../../../renderer/points/fields/judgeEdit';
import type { ShownUnits } from '../../../renderer/units/unitChoice';
import { CARS, jounceJson, type Json } from '../../electron/command/jounce';

const UNITS: ShownUnits = { length: 'mm', angle: 'degrees', toe: 'angle', toeDiameter: null, force: 'newton' };
const POUNDS: ShownUnits = { ...UNITS, force: 'pound' };
const samplePath = (name: string): string => path.join(ROOT, `samples/${name}.jounce.json`);
const sample = (name: string): CarDocument => {
  const read = parseCar(readFileSync(samplePath(name), 'utf8'));
  if (!read.ok) throw new Error('the sample has faults');
  return read.value.document;
};

let hatch: CarDocument;
beforeAll(() => {
  hatch = sample('saltmarsh-hatch');
});

const loadsOf = (car: CarDocument, axle: 'front' | 'rear', travel = 0, rack = 0, roll = 0): FitUpAnswers['loads'] => {
  const [first] = askedSetups(car, []);
  const result = answerFitUp(loadsOrder(car, axle, first![0], first![1], travel, rack, roll), searchMesh);
  if (!result.ok) throw new Error(result.failure.message);
  return result.value;
};
const lineOf = (lines: readonly LoadLine[], key: string): LoadLine => {
  const found = lines.find((one) => one.key === key);
  if (!found) throw new Error(`no line ${key}: ${lines.map((one) => one.key).join(' ')}`);
  return found;
};
const caseOf = (car: CarDocument, name: string): LoadCase =>
  loadsOf(car, 'front').cases.find((one) => one.case.name === name)!.case;

describe('what the links carry, as the page shows it', () => {
  test.each([
    ['saltmarsh-hatch', 'front', 20, 5, 0],
    ['saltmarsh-hatch', 'front', 4, -6, -2],
    ['saltmarsh-hatch', 'rear', 0, 0, 1.5],
    ['marram-coupe', 'front', -10, 0, 0],
    ['marram-coupe', 'rear', 0, 0, -1],
  ] as const)(
    'says what the command line says: %s, %s, bump %d, rack %d, roll %d',
    async (name, axle, travel, rack, roll) => {
      const { cases } = loadsOf(sample(name), axle, travel, rack, roll);
      const words = [
        'loads',
        samplePath(name),
        '--axle',
        axle,
        '--travel',
        String(travel),
        '--rack',
        String(rack),
        '--roll',
        String(roll),
      ];
      const { document: theirs } = await jounceJson(words);
      const answers = theirs['cases'] as readonly Json[];
      expect(cases.map((one) => one.case.name)).toEqual(answers.map((one) => one['name']));
      let compared = 0;
      for (const side of ['left', 'right'] as const) {
        const lines = loadLines(cases, side);
        answers.forEach((one, index) => {
          for (const row of one['rows'] as readonly Json[]) {
            if (row['side'] !== side) continue;
            const key = `${String(row['link'])}|${String(row['kind'])}`;
            if (row['axial'] !== null) {
              expect(lineOf(lines, `${key}|axial`).values[index]).toBeCloseTo(row['axial'] as number, 6);
              compared += 1;
            }
            const bending = row['bending'] as Record<string, number> | null;
            if (bending !== null) expect(lineOf(lines, `${key}|bending`).values[index]).toBeCloseTo(bending['moment']!, 6);
          }
        });
      }
      expect(compared).toBeGreaterThan(5 * cases.length);
    },
    60_000,
  );

  test('a push reads minus and dashed, a pull plus; the most of a line is marked', () => {
    const { cases } = loadsOf(hatch, 'front');
    for (const line of loadLines(cases, 'left')) {
      const most = Math.max(...line.values.map((value) => Math.abs(value ?? 0)));
      if (line.worst !== null) expect(Math.abs(line.values[line.worst]!)).toBe(most);
      for (const value of line.values)
        if (value !== null && line.what === 'axial' && Math.abs(value) > 1)
          expect(valueWords(line, value, UNITS)).toMatch(value < 0 ? /^−[\d,]+$/ : /^\+[\d,]+$/);
    }
    expect(valueWords({ what: 'axial' }, -1000, POUNDS)).toBe('−224.8');
    expect(valueWords({ what: 'bending' }, 100, POUNDS)).toBe('74');
    expect(residualWords(cases)).toMatch(/^\de−1\d of the load$/);
    expect(carriedWords(cases[0]!.carried[0]!, UNITS)).toMatch(/^carried along the \w+ with [\d,−]+ N: [\d,]+ N of its own/);
  });

  test('a rod under push says at what it gives way, and one that gives way before the load stands first', () => {
    const thin = structuredClone(hatch) as unknown as { front: { sections: Record<string, object> } };
    thin.front.sections = { tieRod: { diameter: 3, modulus: 200000, yield: 300 } };
    const { cases } = loadsOf(thin as unknown as CarDocument, 'front');
    const [first] = rodsUnderPush(cases, 'left');
    expect(first?.link).toBe('tieRod');
    expect(first?.times).toBeLessThan(1);
    const pushes = cases.map((one) => -(one.rows.find(({ link, side }) => link === 'tieRod' && side === 'left')?.axial ?? 0));
    expect(first?.push).toBe(Math.max(...pushes));
    expect(first!.gives! / first!.push).toBeCloseTo(first!.times!, 12);
    expect(pushWords(first!, UNITS)).toMatch(
      /^pushed by [\d,]+ N at most, in .+; buckles \(Euler, straight, pinned\) at [\d,]+ N: 0\.\d times$/,
    );
  });

  test('arrows are of the chosen wheel alone, to one scale, and what is given is said so', () => {
    const { cases } = loadsOf(hatch, 'front');
    const one = cases.find(({ case: { name } }) => name === 'Cornering')!;
    for (const view of ['body', 'knuckle', 'links'] as const)
      for (const side of ['left', 'right'] as const) {
        const { forces, perKilonewton } = drawnLoads(one, view, side, (newtons) => String(Math.round(newtons)));
        expect(forces.length).toBeGreaterThan(3);
        expect(forces.every(({ at }) => (side === 'left' ? at[1] > 0 : at[1] < 0))).toBe(true);
        const longest = Math.max(...forces.map(({ arrow }) => Math.hypot(...arrow)));
        expect(longest).toBeLessThanOrEqual(330);
        expect(longest).toBeGreaterThan(100);
        const given = forces.filter(({ kind }) => kind === 'given');
        const wheel = one.case.front![side];
        expect(Math.max(...given.map(({ arrow }) => Math.hypot(...arrow)))).toBeCloseTo(
          (perKilonewton / 1000) * Math.hypot(wheel.Fx, wheel.Fy, wheel.Fz),
          6,
        );
      }
  });

  test('every end of every link goes into the copied table', () => {
    const answer = loadsOf(hatch, 'front');
    const { heads, rows } = loadsPlain(answer);
    expect(rows.length).toBe(answer.cases.flatMap(({ rows: links }) => links.flatMap(({ ends }) => ends)).length);
    for (const row of rows) expect(row.length).toBe(heads.length);
  });
});

describe('editing the cases', () => {
  const withLoads = (loads: CarDocument['loads']): CarDocument => ({ ...hatch, loads });
  const kept = () =>
    casesInFile(
      hatch,
      loadsOf(hatch, 'front').cases.map((one) => one.case),
    );

  test('the program’s own cases go into the file as they are, and say that they are invented', () => {
    const loads = kept();
    const car = withLoads(loads);
    expect(judgeEdit(car)).toEqual([]);
    expect(Object.keys(loads)).toEqual(['Standing', 'Cornering', 'Braking', 'Driving', 'Kerb strike']);
    expect(loads['Kerb strike']?.notes).toBe(INVENTED);
    expect(loads['Kerb strike']?.front?.both).toBeDefined();
    const [before, after] = [loadsOf(hatch, 'front'), loadsOf(car, 'front')];
    expect(after.cases.map(({ rows }) => rows)).toEqual(before.cases.map(({ rows }) => rows));
  });

  test('a force that is typed is the wheel’s, the other wheel follows mirrored, and the case is invented no longer', () => {
    const loads = withForce(kept(), 'Kerb strike', 'front', 'right', 'Fy', 5000);
    const car = withLoads(loads);
    expect(judgeEdit(car)).toEqual([]);
    const { front } = caseOf(car, 'Kerb strike');
    expect(front?.right.Fy).toBe(5000);
    expect(front?.left.Fy).toBe(-5000);
    expect(loads['Kerb strike']?.notes).toBeUndefined();
    expect(loads['Braking']?.notes).toBe(INVENTED);
    const moment = caseOf(withLoads(withForce(loads, 'Kerb strike', 'front', 'left', 'Mz', 12)), 'Kerb strike');
    expect([moment.front?.left.Mz, moment.front?.right.Mz]).toEqual([12000, -12000]);
  });

  test('wheels apart keep what stands on them; as one again they are those of the wheel that is looked at', () => {
    const apart = withAlike(kept(), 'Kerb strike', 'front', 'left', false);
    expect(areWheelsAlike(apart, 'Kerb strike', 'front')).toBe(false);
    const before = caseOf(hatch, 'Kerb strike').front!;
    expect(caseOf(withLoads(apart), 'Kerb strike').front).toEqual(before);
    const changed = withDriven(
      withForce(apart, 'Kerb strike', 'front', 'right', 'Fz', 9000),
      'Kerb strike',
      'front',
      'right',
      true,
    );
    const now = caseOf(withLoads(changed), 'Kerb strike').front!;
    expect(now.left).toEqual(before.left);
    expect(now.right).toMatchObject({ Fz: 9000, driven: true });
    const alike = caseOf(withLoads(withAlike(changed, 'Kerb strike', 'front', 'right', true)), 'Kerb strike').front!;
    expect(alike.left).toEqual({ ...alike.right, Fy: -alike.right.Fy, Mz: 0 - alike.right.Mz });
    expect(alike.left.Fz).toBe(9000);
  });

  test('from accelerations to forces and back without a jump', () => {
    const cornering = caseOf(hatch, 'Cornering');
    const byWheel = withForces(kept(), cornering);
    expect(judgeEdit(withLoads(byWheel))).toEqual([]);
    const after = caseOf(withLoads(byWheel), 'Cornering');
    expect(after.g).toBeNull();
    expect(after.front).toEqual(cornering.front);
    const back = withG(byWheel, 'Cornering', [-0.5, 0]);
    expect(back['Cornering']?.front).toBeUndefined();
    expect(byWords(caseOf(withLoads(back), 'Cornering'))).toBe('0.5 g to the right');
  });

  test('cases are made, copied, renamed in their place, noted and removed', () => {
    let loads = withNewCase(kept(), freeCaseName(kept()));
    expect(Object.keys(loads).at(-1)).toBe('Case 6');
    loads = withCopy(loads, 'Braking', copyName(loads, 'Braking'));
    expect(Object.keys(loads).slice(2, 4)).toEqual(['Braking', 'Braking 2']);
    expect(copyName(loads, 'Braking 2')).toBe('Braking 3');
    loads = withNotes(renamedCase(loads, 'Braking 2', 'Hairpin'), 'Hairpin', 'logged at the sea wall');
    expect(Object.keys(loads)[3]).toBe('Hairpin');
    expect(loads['Hairpin']).toMatchObject({ g: [0, -1], notes: 'logged at the sea wall' });
    expect(judgeEdit(withLoads(loads))).toEqual([]);
    const left = Object.keys(loads).reduce<typeof loads | undefined>((all, name) => all && withoutCase(all, name), loads);
    expect(left).toBeUndefined();
  });
});

test('of every kind of car there are numbers in words, and none of them is no number', () => {
  const cars = [CARS, path.join(ROOT, 'samples')].flatMap((folder) =>
    readdirSync(folder)
      .filter((file) => file.endsWith('.jounce.json'))
      .map((file) => path.join(folder, file)),
  );
  expect(cars.length).toBeGreaterThan(5);
  let answered = 0;
  for (const file of cars) {
    const read = parseCar(readFileSync(file, 'utf8'));
    if (!read.ok) throw new Error(`${file} has faults`);
    const { document } = read.value;
    for (const axle of (['front', 'rear'] as const).filter((one) => document[one])) {
      const [first] = askedSetups(document, []);
      const result = answerFitUp(loadsOrder(document, axle, first![0], first![1], 0, 0, 0), searchMesh);
      if (!result.ok) {
        expect(result.failure.message).not.toBe('');
        continue;
      }
      answered += 1;
      const { cases } = result.value;
      for (const side of ['left', 'right'] as const) {
        const said = [
          ...loadLines(cases, side).flatMap((line) => [
            line.name,
            line.note,
            ...line.values.map((value) => valueWords(line, value, POUNDS)),
          ]),
          ...rodsUnderPush(cases, side).map((rod) => pushWords(rod, UNITS)),
          ...cases.flatMap(({ carried }) => carried.map((one) => carriedWords(one, UNITS))),
          ...drawnLoads(cases[0]!, 'links', side, (newtons) => String(newtons)).forces.map(({ label }) => label),
          residualWords(cases),
        ];
        expect(said.filter((words) => /NaN|undefined|Infinity/.test(words))).toEqual([]);
      }
      expect(judgeEdit({ ...document, loads: casesInFile(document, cases.map((one) => one.case)) }), file).toEqual([]); // prettier-ignore
    }
  }
  expect(answered).toBeGreaterThan(8);
}, 60_000);
