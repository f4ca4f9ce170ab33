#!/usr/bin/env node
/**
 * The command line's way in. In a checkout it runs today's sources, bundled anew when they have changed; in an installed
 * package, which has no sources, the bundle that came with it.
 */
import { existsSync } from 'node:fs';
import module from 'node:module';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';

const ROOT = path.dirname(path.dirname(fileURLToPath(import.meta.url)));

const bundle = async () => {
  if (!existsSync(path.join(ROOT, 'electron/command/main.ts'))) return path.join(ROOT, 'build/command');
  // Node 22 and later keep compiled code; only a checkout has a folder of its own to keep it in.
  Reflect.get(module, 'enableCompileCache')?.(path.join(ROOT, 'build/today/compiled'));
  const { FreshFolder, SOURCES } = await import('./building/freshFolder.mjs');
  const fresh = new FreshFolder(ROOT, 'command', SOURCES.command);
  if (fresh.isThere) return fresh.folder;
  const { buildCommand } = await import('./building/products.mjs');
  return fresh.ensure(buildCommand);
};

await import(pathToFileURL(path.join(await bundle(), 'main.js')).href);
