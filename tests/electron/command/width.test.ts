import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { AXLES, SAMPLES } from '../../samples/samples';
import { temporaryFolder } from '../temporaryFolder';
import { jounce } from './jounce';

/** As long as the name of a part may be. */
const LONGEST = 60;
const TAIL = 'AsTheDrawingOfficeHasCalledItSinceTheFirstCarWasBuiltInTheShed';

/** The text of a car whose adjusters are called by names as long as may be; what shares its name with a rod or a kind keeps it. */
function withLongNames(text: string): string {
  const car = JSON.parse(text) as Record<string, { adjusters?: object } | undefined>;
  const names = AXLES.flatMap((axle) => Object.keys(car[axle]?.adjusters ?? {})).filter((name) => !/(rod|perch)$/i.test(name));
  return [...new Set(names)].reduce(
    (made, name) => made.replaceAll(`"${name}"`, `"${`${name}${TAIL}`.slice(0, LONGEST)}"`),
    text,
  );
}

const cases = SAMPLES.flatMap(({ name, text }) => [
  { name, text },
  { name: `${name} with long names`, text: withLongNames(text) },
]);

describe.each(cases)('tables of $name', ({ text }) => {
  test('fit into 100 columns, whatever is asked', async () => {
    const folder = await temporaryFolder();
    const car = path.join(folder, 'car.jounce.json');
    await writeFile(car, text);
    const document = JSON.parse(text) as Record<
      string,
      { adjusters?: Record<string, { locked?: string }>; toeAdjuster?: string }
    >;
    const axle = AXLES.find((one) => document[one] !== undefined) ?? 'front';
    const { adjusters = {}, toeAdjuster } = document[axle] ?? {};
    const [one = '', other = ''] = Object.keys(adjusters).filter((name) => name !== toeAdjuster && !adjusters[name]?.locked);
    const question = path.join(folder, 'question.json');
    const wanted = [
      { reading: 'camber', axle, value: -2, tolerance: 0.05 },
      { reading: 'rollCentreHeight', axle, range: [70, null], tolerance: 1 },
    ];
    await writeFile(question, JSON.stringify({ count: 2, wanted, may: [{ axle, adjuster: one }] }));
    const calls = [
      ['check', car],
      ['readings', car],
      ...Object.keys(document['setups'] ?? {})
        .slice(-1)
        .map((setup) => ['readings', car, '--against', setup]),
      ['points', '--car', car],
      ['loads', car],
      ['sweep', car, '--motion', 'bump', '--from', '-20', '--to', '20', '--steps', '3'],
      ['influence', car, '--axle', axle],
      ['ways', car, 'camber=-2', '--axle', axle],
      ['reach', car, question],
      [
        'map',
        car,
        '--x',
        `${axle}.both.${one}`,
        '--y',
        `${axle}.both.${other}`,
        '--reading',
        `${axle}.left.camber`,
        '--nx',
        '3',
        '--ny',
        '3',
      ],
    ];
    for (const words of calls) {
      const { stdout, stderr } = await jounce(words);
      const wide = stdout.split('\n').filter((line) => line.length > 100);
      expect(wide, words.join(' ')).toEqual([]);
      expect(stdout.length, `${words.join(' ')} ${stderr}`).toBeGreaterThan(0);
    }
    // and what is refused: a reading and a part that there are not, with all that there are
    await writeFile(
      question,
      JSON.stringify({ wanted: [{ ...wanted[0], reading: 'cambr' }], may: [{ axle, adjuster: 'none' }] }),
    );
    const refused = await jounce(['reach', car, question]);
    expect(refused.status).toBe(2);
    expect(refused.stderr).toContain('may[0].adjuster');
    expect(refused.stderr.split('\n').filter((line) => line.length > 100 && !line.startsWith('jounce: '))).toEqual([]);
  }, 120_000);
});
