import { cp, mkdir, readFile, writeFile } from 'node:fs/promises';
import path from 'node:path';
import { build } from 'esbuild';
import ts from 'typescript';
import { buildLibrary } from '../../electron/building/products.mjs';
import { temporaryFolder } from '../electron/temporaryFolder';

const ROOT = path.resolve(import.meta.dirname, '../..');

export interface InstalledLibrary {
  /** What the compiler says of a program that imports `jounce/geometry`, under each of the two ways to resolve modules. */
  readonly complaintsOf: (program: string) => Promise<string[]>;
  /** The program as one script without imports, to be run anywhere. */
  readonly bundle: (program: string) => Promise<string>;
}

/** The library built from today's sources, where a program finds it that has installed the package and nothing else. */
export const installLibrary = async (): Promise<InstalledLibrary> => {
  const folder = await temporaryFolder({ 'package.json': '{ "type": "module" }' });
  const installed = `${folder}/node_modules/jounce`;
  await mkdir(`${installed}/build/geometry`, { recursive: true });
  await cp(`${ROOT}/package.json`, `${installed}/package.json`);
  await buildLibrary(`${installed}/build/geometry`);
  const program = `${folder}/program.ts`;

  const complaintsOf = async (text: string): Promise<string[]> => {
    await writeFile(program, text);
    const common = { noEmit: true, strict: true, target: ts.ScriptTarget.ES2022, lib: ['lib.es2022.d.ts'], types: [] };
    const ways = [
      { ...common, module: ts.ModuleKind.NodeNext, moduleResolution: ts.ModuleResolutionKind.NodeNext },
      { ...common, module: ts.ModuleKind.ESNext, moduleResolution: ts.ModuleResolutionKind.Bundler },
    ];
    const found = ways.flatMap((options) => ts.getPreEmitDiagnostics(ts.createProgram([program], options)));
    return found.map(({ messageText, file }) => `${file?.fileName ?? ''}: ${ts.flattenDiagnosticMessageText(messageText, '\n')}`);
  };
  const bundle = async (text: string): Promise<string> => {
    await writeFile(program, text);
    const made = await build({
      entryPoints: [program],
      bundle: true,
      write: false,
      format: 'iife',
      platform: 'neutral',
      logLevel: 'silent',
    });
    return made.outputFiles[0]!.text;
  };
  return { complaintsOf, bundle };
};

/** A car that comes with the program, as text. */
export const sampleText = (name: string): Promise<string> => readFile(`${ROOT}/samples/${name}.jounce.json`, 'utf8');
