/** What is built from the sources, each by one function that fills an empty folder. */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import { copyFile, readFile, readdir, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = path.resolve(fileURLToPath(import.meta.url), '../../..');

/** Packages in the old format call `require` for Node's own modules; a bundle in the new format has none. */
const REQUIRE = `import { createRequire as jounceRequire } from 'node:module'; const require = jounceRequire(import.meta.url);`;

/** @type {import('esbuild').BuildOptions} */
const FOR_NODE = {
  absWorkingDir: ROOT,
  bundle: true,
  format: 'esm',
  platform: 'node',
  target: 'node20',
  mainFields: ['module', 'main'],
  banner: { js: REQUIRE },
  minify: true,
  lineLimit: 160, // Node shows the line where an uncaught error arose
  logLevel: 'warning',
};

const bundler = async () => (await import('esbuild')).build;

/**
 * In the command line's bundle the writer of PDF stays outside, as a file beside it.
 * @type {import('esbuild').Plugin}
 */
const PDF_BESIDE = {
  name: 'pdf-beside',
  setup: ({ onResolve }) => onResolve({ filter: /\/pdf\/sheetPdf$/ }, () => ({ path: './sheetPdf.js', external: true })),
};

/**
 * The command line. `main.js` is the way in; the code that one call of `readings` needed is kept beside it, since reading
 * and compiling took a third of a call. `sheetPdf.js` is the writer of PDF that the window has: of its libraries the builds for
 * browsers, so that both write the same bytes.
 */
export const buildCommand = async (/** @type {string} */ folder) => {
  const build = await bundler();
  /** @type {import('esbuild').BuildOptions} */
  const OLD_FORMAT = {
    ...FOR_NODE,
    format: 'cjs',
    // In the old format a file knows its name, not its address.
    define: { 'import.meta.url': 'jounceAddress' },
    banner: { js: `const jounceAddress = require('node:url').pathToFileURL(__filename).href;` },
    outdir: folder,
  };
  await build({
    ...OLD_FORMAT,
    entryPoints: { bundle: 'electron/command/main.ts', studyWorker: 'electron/command/studyWorker.ts' },
    plugins: [PDF_BESIDE],
    supported: { 'dynamic-import': false }, // `require` instead: code that V8 kept cannot import
  });
  await build({ ...OLD_FORMAT, entryPoints: { sheetPdf: 'geometry/pdf/sheetPdf.ts' }, platform: 'browser' });
  await writeFile(path.join(folder, 'package.json'), '{ "type": "commonjs" }\n');
  await copyFile(path.join(ROOT, 'electron/building/runBundle.cjs'), path.join(folder, 'main.js'));
  const samples = existsSync(path.join(ROOT, 'samples')) ? await readdir(path.join(ROOT, 'samples')) : [];
  const sample = samples.filter((name) => name.endsWith('.jounce.json')).sort()[0];
  const call = sample === undefined ? ['--help'] : ['readings', path.join(ROOT, 'samples', sample), '--json'];
  spawnSync(process.execPath, [path.join(ROOT, 'electron/building/keepCode.cjs'), folder, ...call], { stdio: 'ignore' });
};

/** What `npm start` runs (`shell.js`) and what Electron runs (`desktop.js`, with its preload script in the old format). */
export const buildShell = async (/** @type {string} */ folder) => {
  const build = await bundler();
  const external = ['electron'];
  const entryPoints = { shell: 'electron/shell/startShell.ts', desktop: 'electron/desktop/main.ts' };
  await build({ ...FOR_NODE, entryPoints, external, minify: false, splitting: true, outdir: folder });
  const preload = { entryPoints: { preload: 'electron/desktop/preload.ts' }, outExtension: { '.js': '.cjs' }, banner: {} };
  await build({ ...FOR_NODE, ...preload, format: 'cjs', external, minify: false, outdir: folder });
};

/** The window as it is served: `index.html` and its files; always the product, also when a test asks for it. */
export const buildWindow = async (/** @type {string} */ folder) => {
  const { build } = await import('vite');
  const configFile = path.join(ROOT, 'vite.config.ts');
  const before = process.env.NODE_ENV;
  process.env.NODE_ENV = 'production';
  try {
    await build({ configFile, logLevel: 'error', mode: 'production', build: { outDir: folder, emptyOutDir: true } });
  } finally {
    if (before === undefined) delete process.env.NODE_ENV;
    else process.env.NODE_ENV = before;
  }
};

/** The library: one file without dependencies for Node and browsers, and its types. */
export const buildLibrary = async (/** @type {string} */ folder) => {
  const build = await bundler();
  await build({
    ...FOR_NODE,
    entryPoints: { index: 'geometry/index.ts' },
    platform: 'neutral',
    target: 'es2022',
    banner: {},
    minify: false,
    outdir: folder,
  });
  await emitTypes(path.join(folder, 'types'));
};

/** Declarations of geometry/ with endings in their imports, so that every way to resolve modules finds them. */
export const emitTypes = async (/** @type {string} */ folder) => {
  const { default: ts } = await import('typescript');
  const options = { lib: ['lib.es2022.d.ts'], types: [], noEmit: false, declaration: true, emitDeclarationOnly: true };
  const { config } = ts.readConfigFile(path.join(ROOT, 'tsconfig.json'), ts.sys.readFile);
  const base = ts.convertCompilerOptionsFromJson(config.compilerOptions, ROOT).options;
  const all = { ...base, ...options, allowImportingTsExtensions: false, allowJs: false, outDir: folder };
  const program = ts.createProgram([path.join(ROOT, 'geometry/index.ts')], { ...all, rootDir: path.join(ROOT, 'geometry') });
  const { emitSkipped } = program.emit();
  if (emitSkipped) throw new Error('The types of geometry/ could not be written: run `npm run typecheck`.');
  for (const name of await readdir(folder, { recursive: true })) {
    if (!name.endsWith('.d.ts')) continue;
    const file = path.join(folder, name);
    const text = await readFile(file, 'utf8');
    await writeFile(file, text.replace(/(from\s+|import\(\s*)(['"])(\.{1,2}\/[^'"]+?)(\.js)?\2/g, '$1$2$3.js$2'));
  }
};
