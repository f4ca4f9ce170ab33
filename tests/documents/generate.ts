/**
 * `npm run docs`: makes anew what is generated in the documents and runs their commands for the outputs shown beside them.
 * `-- --picture` takes the picture of the README too; it needs a Chromium.
 */
import { writeFile } from 'node:fs/promises';
import path from 'node:path';
import { ROOT } from '../../electron/building/products.mjs';
import { DOCUMENTS, documentText, withFreshOutputs, withFreshSections } from './documents';
import { takePicture } from './takePicture';

const wanted = process.argv.slice(2);
if (wanted.includes('--picture')) process.stdout.write(`${await takePicture()}\n`);
for (const name of DOCUMENTS) {
  const before = await documentText(name);
  const fresh = await withFreshOutputs(await withFreshSections(before));
  if (fresh === before) continue;
  await writeFile(path.join(ROOT, name), fresh);
  process.stdout.write(`${name}\n`);
}
