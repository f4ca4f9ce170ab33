/**
 * `npm run bench`: bundles today's sources with the benchmark and runs it. `-- --json` prints one document;
 * `-- --rows "kernel strut,strut pose with rates"` runs these rows only.
 * The rows of the window need a Chromium; without one they are left out.
 * The reference kernels stay outside of the bundle, unchanged.
 */
import { build } from 'esbuild';
import { mkdir, mkdtemp, rm } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath, pathToFileURL } from 'node:url';
import { tsImport } from 'tsx/esm/api';

const HERE = path.dirname(fileURLToPath(import.meta.url));
const REQUIRE = `import { createRequire as benchRequire } from 'node:module'; const require = benchRequire(import.meta.url);`;

// inside the checkout, so that what stays outside of the bundle finds its packages
const built = path.join(HERE, '../../build');
await mkdir(built, { recursive: true });
const folder = await mkdtemp(path.join(built, 'bench-'));
try {
  await build({
    entryPoints: [path.join(HERE, 'bench.ts')],
    outfile: path.join(folder, 'bench.mjs'),
    bundle: true,
    format: 'esm',
    platform: 'node',
    target: 'node20',
    mainFields: ['module', 'main'],
    banner: { js: REQUIRE },
    plugins: [{ name: 'speed-outside', setup: outsideSpeed }],
    logLevel: 'warning',
  });
  const { runBench } = await import(pathToFileURL(path.join(folder, 'bench.mjs')).href);
  const only = process.argv.includes('--rows') ? process.argv[process.argv.indexOf('--rows') + 1] : null;
  // The window is built and driven from its sources: not part of the bundle.
  const { WINDOW_ROWS, windowRows } = await tsImport('./windowBench.ts', import.meta.url);
  const wantsWindow = only === null || WINDOW_ROWS.some((name) => only.includes(name));
  await runBench({ json: process.argv.includes('--json'), only, more: async () => (wantsWindow ? windowRows() : []) });
} finally {
  await rm(folder, { recursive: true, force: true });
}

/** @param {import('esbuild').PluginBuild} bundle */
function outsideSpeed(bundle) {
  bundle.onResolve({ filter: /\/speed\/.*\.mjs$/ }, ({ path: asked }) => ({
    path: pathToFileURL(path.join(HERE, asked)).href,
    external: true,
  }));
}
