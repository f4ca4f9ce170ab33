/** `npm run build`: everything that is handed on, under build/. A name as argument builds that one alone. */
import { mkdir, rename, rm } from 'node:fs/promises';
import path from 'node:path';
import { ROOT, buildCommand, buildLibrary, buildShell, buildWindow } from './products.mjs';

const PRODUCTS = { geometry: buildLibrary, command: buildCommand, shell: buildShell, window: buildWindow };
const wanted = process.argv.slice(2);
const unknown = wanted.find((name) => !Object.hasOwn(PRODUCTS, name));
if (unknown !== undefined) throw new RangeError(`Nothing is called ${unknown}; there are ${Object.keys(PRODUCTS).join(', ')}.`);

for (const [name, make] of Object.entries(PRODUCTS)) {
  if (wanted.length > 0 && !wanted.includes(name)) continue;
  const folder = path.join(ROOT, 'build', name);
  const draft = `${folder}-draft-${process.pid}`;
  try {
    await mkdir(draft, { recursive: true });
    await make(draft);
    await rm(folder, { recursive: true, force: true });
    await rename(draft, folder);
    process.stdout.write(`build/${name}\n`);
  } finally {
    await rm(draft, { recursive: true, force: true });
  }
}
