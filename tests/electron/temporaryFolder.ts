import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import { onTestFinished } from 'vitest';

/** A folder with these files (name: content), thrown away when the test is over. */
export const temporaryFolder = async (files: Readonly<Record<string, string | Uint8Array>> = {}): Promise<string> => {
  const folder = await mkdtemp(path.join(tmpdir(), 'jounce-test-'));
  onTestFinished(() => rm(folder, { recursive: true, force: true, maxRetries: 5 }));
  for (const [name, content] of Object.entries(files)) {
    await mkdir(path.dirname(path.join(folder, name)), { recursive: true });
    await writeFile(path.join(folder, name), content);
  }
  return folder;
};
