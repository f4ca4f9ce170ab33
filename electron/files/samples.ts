import { readFile, readdir } from 'node:fs/promises';
import path from 'node:path';
import type { FileAnswer, SampleFile, SampleText } from '../../renderer/files/fileService';
import { failed } from './failures';

const ENDING = '.jounce.json';

/** The cars in a folder, sorted by name. */
export const listSamples = async (folder: string): Promise<FileAnswer<readonly SampleFile[]>> => {
  try {
    const entries = await readdir(folder, { withFileTypes: true });
    const files = entries.filter((entry) => entry.isFile() && entry.name.endsWith(ENDING));
    const names = files.map((entry) => entry.name.slice(0, -ENDING.length)).sort();
    return { ok: true, value: names.map((name) => ({ name })) };
  } catch {
    return failed('unreadable', null);
  }
};

/**
 * One of them. The name is compared with those that the folder holds and never made into a path unless it is one of them.
 * @param name - whatever the window sent
 */
export const readSample = async (folder: string, name: unknown): Promise<FileAnswer<SampleText>> => {
  const list = await listSamples(folder);
  if (!list.ok) return list;
  const sample = list.value.find((file) => file.name === name);
  if (!sample) return failed('notFound', typeof name === 'string' ? name.slice(0, 200) : null);
  try {
    return { ok: true, value: { name: sample.name, text: await readFile(path.join(folder, sample.name + ENDING), 'utf8') } };
  } catch {
    return failed('unreadable', sample.name);
  }
};
