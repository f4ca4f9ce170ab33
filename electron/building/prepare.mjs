/**
 * Runs at the end of `npm install` and makes the library and the command line, so that `import 'jounce/geometry'` and the
 * `bin` of a package installed from git work at once. Where the tools to build are left out (`--omit=dev`) it does nothing.
 */
import { spawnSync } from 'node:child_process';
import { existsSync } from 'node:fs';
import module from 'node:module';
import path from 'node:path';
import { fileURLToPath } from 'node:url';

const here = path.dirname(fileURLToPath(import.meta.url));
const hasTools = ['esbuild', 'typescript'].every((name) =>
  (module.createRequire(import.meta.url).resolve.paths(name) ?? []).some((folder) => existsSync(path.join(folder, name))),
);
const hasSources = existsSync(path.join(here, '../../geometry/index.ts'));
if (hasTools && hasSources) {
  process.exitCode =
    spawnSync(process.execPath, [path.join(here, 'build.mjs'), 'geometry', 'command'], { stdio: 'inherit' }).status ?? 1;
}
