#!/usr/bin/env node
/**
 * The command line's way in. In a checkout it runs today's sources, bundled anew when they have changed; in an installed
 * package, which has no sources, the bundle that came with it. In the old format of modules, which starts sooner.
 */
const { existsSync } = require('node:fs');
const path = require('node:path');

const ROOT = path.dirname(__dirname);

const run = (/** @type {string} */ folder) => void require(`${folder}/main.js`);

const runToday = () => {
  const { FreshFolder, SOURCES } = require('./building/freshFolder.cjs');
  const fresh = new FreshFolder(ROOT, 'command', SOURCES.command);
  if (fresh.isThere) return run(fresh.folder);
  import('./building/products.mjs')
    .then(({ buildCommand }) => fresh.ensure(buildCommand))
    .then(run, (/** @type {Error} */ reason) => {
      process.stderr.write(`The command line could not be built from its sources.\n${reason.message}\n`);
      process.exitCode = 3;
    });
};

if (existsSync(`${ROOT}/electron/command/main.ts`)) runToday();
else run(`${ROOT}/build/command`);
