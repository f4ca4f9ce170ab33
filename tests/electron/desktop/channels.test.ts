import { expect, test } from 'vitest';
import { LIST_SAMPLES, READ_SAMPLE } from '../../../electron/desktop/channelNames';
import { channelHandlers } from '../../../electron/desktop/channels';
import { desktopPlaces } from '../../../electron/desktop/places';
import { temporaryFolder } from '../temporaryFolder';

const PAGE = 'jounce://window/index.html';

const handlers = async () => {
  const folder = await temporaryFolder({ 'samples/hatch.jounce.json': '{}', 'secret.jounce.json': 'outside' });
  const all = channelHandlers(`${folder}/samples`);
  return { list: all[LIST_SAMPLES]!, read: all[READ_SAMPLE]!, names: Object.keys(all) };
};

test('there is a channel for each method of the contract and no other', async () => {
  expect((await handlers()).names).toEqual(['files:listSamples', 'files:readSample']);
});

test('our page is given the samples', async () => {
  const { list, read } = await handlers();
  expect(await list(PAGE, undefined)).toEqual({ ok: true, value: [{ name: 'hatch' }] });
  expect(await read(PAGE, 'hatch')).toEqual({ ok: true, value: { name: 'hatch', text: '{}' } });
});

test.each([
  undefined,
  '',
  'https://evil.example/jounce://window/',
  'jounce://window.evil/index.html',
  'file:///index.html',
  'about:blank',
])('a sender at %s is told nothing', async (sender) => {
  const { list, read } = await handlers();
  for (const answer of [await list(sender, undefined), await read(sender, 'hatch')]) {
    expect(answer).toEqual({ ok: false, failure: { code: 'disconnected', name: null } });
  }
});

test.each([
  ['../secret'],
  ['/etc/passwd'],
  [''],
  ['hatch.jounce.json'],
  ['__proto__'],
  ['hatch\0'],
  ['x'.repeat(1_000_000)],
  [null],
  [undefined],
  [42],
  [['hatch']],
  [{ toString: () => 'hatch' }],
])('a hostile name finds nothing: %j', async (name) => {
  const answer = await (await handlers()).read(PAGE, name);
  expect(answer).toMatchObject({ ok: false, failure: { code: 'notFound' } });
  expect(JSON.stringify(answer).length).toBeLessThan(500);
});

test('a folder that is not there is said to be unreadable', async () => {
  const gone = channelHandlers(`${await temporaryFolder()}/gone`);
  expect(await gone[LIST_SAMPLES]!(PAGE, undefined)).toEqual({ ok: false, failure: { code: 'unreadable', name: null } });
});

test('places are those that the start command names, else those beside the script', () => {
  expect(
    desktopPlaces(['electron', 'desktop.js', '--window-folder=/a/window', '--samples-folder=/a/samples'], '/b/build/shell'),
  ).toEqual({
    windowFolder: '/a/window',
    samplesFolder: '/a/samples',
  });
  expect(desktopPlaces(['jounce'], '/b/build/shell')).toEqual({ windowFolder: '/b/build/window', samplesFolder: '/b/samples' });
});
