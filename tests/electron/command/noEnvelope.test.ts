import { readFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { ROOT } from '../../../electron/building/products.mjs';
import { toMechanism, type CarDocument } from '../../../geometry/index';
import { clearanceStudy } from '../../../geometry/fitup/clearance/clearance';
import { sweptSpace } from '../../../geometry/fitup/keepOut/sweptSpace';
import { answerStudy } from '../../../geometry/studies/study';
import { noRowsWords } from '../../../renderer/fitup/clearance/clearanceTable';
import { jounce } from './jounce';

const HATCH = path.join(ROOT, 'samples/saltmarsh-hatch.jounce.json');

/** The sample without what says where its front wheels' travel ends, or its rack's; without meshes. */
async function hatchWithout(what: 'damper' | 'rack', rear = true): Promise<CarDocument> {
  const { questions: _, rear: back, ...car } = JSON.parse(await readFile(HATCH, 'utf8')) as CarDocument;
  const { damper, travel: _travel, steering, ...front } = car.front!;
  const { travel: _lock, ...unstopped } = steering!;
  const left = what === 'damper' ? { ...front, steering: steering! } : { ...front, damper: damper!, steering: unstopped };
  const parts = {
    tyreFront: car.parts!['tyreFront']!,
    plate: { on: 'body', shape: { kind: 'sphere', at: [0, 0, 900], radius: 9 } },
  };
  return { ...car, front: left, parts, ...(rear && back !== undefined ? { rear: back } : {}) } as CarDocument;
}

const KEY = { damper: 'front.damper', rack: 'front.steering.travel' } as const;
const CLAIMS = /no part|No two parts|shape|could touch/;

describe.each(['damper', 'rack'] as const)('an axle without an envelope, for want of its %s', (what) => {
  test('clearance answers nothing, with what is missing and exit status 1', async () => {
    const stdin = JSON.stringify(await hatchWithout(what));
    const { status, stdout, stderr } = await jounce(['clearance', '-', '--axle', 'front', '--setups', 'Baseline'], { stdin });
    expect(status).toBe(1);
    expect(stdout).toBe('');
    expect(stderr).toContain(`The front axle has no envelope without`);
    expect(stderr).toContain(KEY[what]);
    expect(stderr).not.toMatch(CLAIMS);
  });

  test('keep-out says what is missing, whatever part is asked for', async () => {
    const stdin = JSON.stringify(await hatchWithout(what));
    const out = path.join(tmpdir(), 'jounce-never-written.stl');
    for (const of of ['all-moving', 'tyreFront']) {
      const { status, stderr } = await jounce(['keep-out', '-', out, '--of', of, '--axle', 'front'], { stdin });
      expect(status).toBe(1);
      expect(stderr).toContain(KEY[what]);
      expect(stderr).not.toMatch(CLAIMS);
    }
  });

  test('the window says so in the place of rows, and claims nothing about touching', async () => {
    const car = await hatchWithout(what);
    const asked = { axles: ['front'], sides: ['left'], setups: [['Baseline', car.setups!['Baseline']!]] } as const;
    const answered = answerStudy(clearanceStudy(toMechanism(car), asked));
    if (!answered.ok) throw new Error(answered.failure.message);
    const words = noRowsWords(answered.value, 'front');
    expect(words).toContain(KEY[what]);
    expect(words).not.toMatch(CLAIMS);
    const swept = sweptSpace(toMechanism(car), { ...asked, of: 'all-moving', grow: 0, bound: 2 });
    expect(swept).toMatchObject({ refused: 'no-envelope' });
    expect('message' in swept && swept.message).not.toMatch(CLAIMS);
  });
});

test('where the other axle has an envelope its pairs are answered, and what is missing stands before them', async () => {
  const stdin = JSON.stringify(await hatchWithout('damper'));
  const { status, stdout } = await jounce(['clearance', '-', '--setups', 'Baseline', '--side', 'left'], { stdin });
  expect(status).toBe(0);
  const [missing, table] = [stdout.indexOf('no envelope without'), stdout.indexOf('\nrear ')];
  expect(missing).toBeGreaterThan(0);
  expect(table).toBeGreaterThan(missing);
  expect(stdout.split('no envelope without')).toHaveLength(2);
}, 60_000);
