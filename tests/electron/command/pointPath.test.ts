import { readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../temporaryFolder';
import { carPath, jounce, jounceBatch, jounceJson, type Json } from './jounce';

const CAR = carPath(21);
const STEER = ['--motion', 'steer', '--from', '-20', '--to', '20', '--steps', '5'];
interface Row {
  readonly axle: string;
  readonly side: string;
  readonly at: readonly number[] | null;
  readonly error?: Json;
}
const rowsOf = (document: Json): readonly Row[] => document['rows'] as unknown as readonly Row[];

test('the way of a point: both sides or one, both axles that have it, the same numbers as a call at each position', async () => {
  const { status, document } = await jounceJson(['points', '--car', CAR, '--path', 'wheelCentre', ...STEER]);
  expect(status).toBe(0);
  expect(Object.keys(document).sort()).toEqual(['by', 'car', 'contract', 'csv', 'motion', 'point', 'rows', 'setup', 'units']);
  expect(document).toMatchObject({ motion: 'steer', point: 'wheelCentre', units: { length: 'mm', angle: 'deg' }, csv: null });
  const rows = rowsOf(document);
  expect(rows.map(({ axle, side }) => `${axle} ${side}`)).toEqual(
    ['front left', 'front right', 'rear left', 'rear right'].flatMap((place) => Array.from({ length: 5 }, () => place)),
  );
  expect(rows[7]).toMatchObject({ name: 'wheelCentre', travel: { left: 0, right: 0 }, rack: 0, roll: 0 });
  const alone = await jounceJson(['points', '--car', CAR, '--rack', '-20', '--axle', 'front']);
  const there = rowsOf(alone.document).find((row) => row.side === 'right' && (row as unknown as Json)['name'] === 'wheelCentre');
  expect(rows[5]?.at).toEqual(there?.at);
  const words = await jounce(['points', '--car', CAR, '--path', 'tieRodEnd', '--side', 'right', ...STEER]);
  expect(words.stdout).toContain('the way of tieRodEnd');
  expect(words.stdout).not.toContain('left ');
  for (const line of words.stdout.split('\n')) expect(line.length).toBeLessThanOrEqual(100);
});

test('as CSV, in a file and on standard output; from a list; in a batch', async () => {
  const folder = await temporaryFolder();
  const [out, list] = [path.join(folder, 'way.csv'), path.join(folder, 'list.csv')];
  await writeFile(list, 'travelLeft,travelRight,rack\n10,-5,3\n900,0,0\n');
  const asked = ['points', '--car', CAR, '--path', 'ballJoint', '--list', list];
  const written = await jounce([...asked, '--csv', out]);
  expect(written).toMatchObject({ status: 0 });
  expect(written.stdout).toContain('4 places written to');
  const text = await readFile(out, 'utf8');
  expect((await jounce([...asked, '--csv', '-'])).stdout).toBe(text);
  const lines = text.split('\r\n');
  expect(lines[0]).toBe('axle,side,name,travelLeft [mm],travelRight [mm],rack [mm],roll [deg],x [mm],y [mm],z [mm],error');
  expect(lines[1]).toMatch(/^front,left,ballJoint,10,-5,3,0,[-\d.]+,[-\d.]+,[-\d.]+,$/);
  // out of reach on the left: the pose of an axle is that of both its wheels
  expect(lines[2]).toMatch(/^front,left,ballJoint,900,0,0,0,,,,"?Left wheel/);
  expect((await jounceJson([...asked, '--csv', out])).document).toMatchObject({ error: { kind: 'system' } });
  const { document } = await jounceJson(asked);
  const { answers } = await jounceBatch([
    { id: 1, car: CAR, ask: 'points', options: { path: 'ballJoint', list } },
    { id: 2, car: CAR, ask: 'points', options: { path: 'ballJoint', list: '-' } },
  ]);
  expect(answers[0]?.['answer']).toEqual(document);
  expect(answers[1]?.['error']).toMatchObject({ kind: 'usage' });
});

test.each([
  [['--path', 'tieRodEn', ...STEER], 'did you mean `tieRodEnd`?'],
  [['--path', 'ballJoint', '--axle', 'rear', ...STEER], 'the rear axle has no point "ballJoint"'],
  [['--path', 'ballJoint'], '--motion, --from, --to and --steps, or --list'],
  [['--path', 'ballJoint', '--rack', '3', ...STEER], 'cannot be fixed'],
  [[...STEER], '--motion goes with --path'],
  [['--side', 'left'], '--side goes with a list, or with --path'],
  [['--path', 'ballJoint', '--average', ...STEER], 'name the list'],
  [['points.csv', '--path', 'ballJoint', ...STEER], 'it goes without a list'],
])('what is no question is said: %j', async (words, said) => {
  const { status, document } = await jounceJson(['points', '--car', CAR, ...words]);
  expect(status).toBe(2);
  expect(document['error']).toMatchObject({ kind: 'usage', message: expect.stringContaining(said) as string });
});

test('an axle that is not steered stays where it is when the rack moves, and the whole car is answered', async () => {
  const [straight, turned] = await Promise.all(
    ['0', '10'].map(async (rack) => rowsOf((await jounceJson(['points', '--car', CAR, '--rack', rack])).document)),
  );
  const rear = (rows: readonly Row[] = []) => rows.filter(({ axle }) => axle === 'rear');
  expect(rear(turned).length).toBeGreaterThan(0);
  expect(rear(turned)).toEqual(rear(straight));
  expect(turned).not.toEqual(straight);
});
