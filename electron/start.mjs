/** `npm start`, or `npm start -- car.jounce.json`: builds the window and the program around it from today's sources, then runs it. */
import path from 'node:path';
import { pathToFileURL } from 'node:url';
import { FreshFolder, SOURCES } from './building/freshFolder.cjs';
import { ROOT, buildShell, buildWindow } from './building/products.mjs';
import { filesToOpen } from './shell/filesToOpen.mjs';

// npm runs in the package's folder and says where it was called
const asked = filesToOpen(process.argv.slice(2), process.env['INIT_CWD'] ?? process.cwd());
if ('refusal' in asked) {
  process.stderr.write(`${asked.refusal}\n`);
  process.exit(2);
}
const fresh = (/** @type {'shell' | 'window'} */ name) => new FreshFolder(ROOT, name, SOURCES[name]);
const window = fresh('window');
if (!window.isThere && process.env['JOUNCE_NO_OPEN'] !== '1') process.stdout.write('Building the window…\n');
const [windowFolder, shellFolder] = await Promise.all([window.ensure(buildWindow), fresh('shell').ensure(buildShell)]);
const { startShell } = await import(pathToFileURL(path.join(shellFolder, 'shell.js')).href);
await startShell({ root: ROOT, windowFolder, shellFolder, files: asked.files });
