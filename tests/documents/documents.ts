import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { ROOT } from '../../electron/building/products.mjs';
import { withOutputs } from './commands';
import { withSections } from './markdown';
import { makePlayground } from './playground';
import { makeSections } from './sections';

/** The project's documents that hold commands, outputs or parts made from the program, from the root. */
export const DOCUMENTS = [
  'README.md',
  'geometry/GEOMETRY.md',
  'geometry/READINGS.md',
  'geometry/car/CAR-FILE.md',
  'electron/command/COMMAND-LINE.md',
] as const;

export const documentText = (name: string): Promise<string> => readFile(path.join(ROOT, name), 'utf8');

/** A document with its generated parts made anew. */
export const withFreshSections = async (markdown: string): Promise<string> => withSections(markdown, await makeSections());

/** A document with its commands run, in a folder of their own, and their outputs brought up to date. */
export async function withFreshOutputs(markdown: string): Promise<string> {
  const playground = await makePlayground();
  try {
    return await withOutputs(markdown, playground);
  } finally {
    await playground.remove();
  }
}
