import { writeFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { keepWindowState, readWindowState, usableState } from '../../../electron/desktop/windowState';
import { temporaryFolder } from '../temporaryFolder';

const SCREEN = { x: 0, y: 0, width: 1920, height: 1080 };
const at = (x: number, y: number) => ({ bounds: { x, y, width: 1200, height: 800 }, isMaximized: false });

test('the window opens where it was closed', async () => {
  const folder = await temporaryFolder();
  await keepWindowState(`${folder}/state`, at(40, 50));
  expect(await readWindowState(`${folder}/state`, [SCREEN])).toEqual(at(40, 50));
});

test('a place that is on no screen any more is given up, one partly in sight is kept', () => {
  for (const gone of [at(1900, 0), at(-1150, 0), at(0, 1000), at(0, -50)])
    expect(usableState(gone, [SCREEN])).toEqual({ bounds: null, isMaximized: false });
  expect(usableState(at(1700, 500), [SCREEN])).toEqual(at(1700, 500));
  expect(usableState(at(2000, 0), [SCREEN, { ...SCREEN, x: 1920 }])).toEqual(at(2000, 0));
});

test.each(['', 'null', '[]', '{"bounds":{"x":"1"}}', '{"bounds":{"x":1e99,"y":0,"width":1,"height":1},"isMaximized":true}'])(
  'rubbish counts as nothing kept: %s',
  async (text) => {
    const folder = await temporaryFolder();
    await writeFile(`${folder}/window.json`, text);
    expect(await readWindowState(folder, [SCREEN])).toEqual({ bounds: null, isMaximized: false });
  },
);
