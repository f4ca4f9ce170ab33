import { expect, test } from 'vitest';
import { desktopPlaces, filesOfCall } from '../../../electron/desktop/places';
import { filesToOpen } from '../../../electron/shell/filesToOpen.mjs';
import { temporaryFolder } from '../temporaryFolder';

test('places are those that the start command names, else those beside the script', () => {
  expect(
    desktopPlaces(['electron', 'desktop.js', '--window-folder=/a/window', '--samples-folder=/a/samples'], '/b/build/shell'),
  ).toEqual({
    windowFolder: '/a/window',
    samplesFolder: '/a/samples',
  });
  expect(desktopPlaces(['jounce'], '/b/build/shell')).toEqual({ windowFolder: '/b/build/window', samplesFolder: '/b/samples' });
});

test('the files of a call: by the start command, or as a file manager names them; never a script or an option', () => {
  const call = ['electron', '/b/desktop.js', '--window-folder=/a', '--open=/cars/a.json', '--open=/cars/b.jounce.json'];
  expect(filesOfCall(call, '/here')).toEqual(['/cars/a.json', '/cars/b.jounce.json']);
  expect(filesOfCall(['/opt/jounce.json/jounce', 'my car.jounce.json', '--flag.json', 'notes.txt'], '/here')).toEqual([
    '/here/my car.jounce.json',
  ]);
});

test('npm start takes files that are there, from where the command was typed, and says what it does not take', async () => {
  const folder = await temporaryFolder({ 'a.jounce.json': '{}' });
  expect(filesToOpen(['a.jounce.json'], folder)).toEqual({ files: [`${folder}/a.jounce.json`] });
  expect(filesToOpen([], folder)).toEqual({ files: [] });
  expect(filesToOpen(['b.json'], folder)).toEqual({ refusal: `${folder}/b.json: no such file. Nothing was started.` });
  expect(filesToOpen(['.'], folder)).toMatchObject({ refusal: expect.stringContaining('not a car file') });
  expect(filesToOpen(['--port=5'], folder)).toMatchObject({ refusal: expect.stringContaining('no option --port=5') });
});
