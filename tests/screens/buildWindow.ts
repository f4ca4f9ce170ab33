import { mkdtemp, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import path from 'node:path';
import type { TestProject } from 'vitest/node';
import { buildWindow } from '../../electron/building/products.mjs';

declare module 'vitest' {
  export interface ProvidedContext {
    windowFolder: string;
  }
}

/** Builds the window from today's sources before the window tests, and throws it away after them. */
export const setup = async (project: TestProject): Promise<() => Promise<void>> => {
  const folder = await mkdtemp(path.join(tmpdir(), 'jounce-window-'));
  await buildWindow(folder);
  project.provide('windowFolder', folder);
  return () => rm(folder, { recursive: true, force: true });
};
