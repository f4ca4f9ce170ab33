/** Checks the types of every layer, each under the libraries that the layer may know. */
import { spawnSync } from 'node:child_process';
import { createRequire } from 'node:module';

const compiler = createRequire(import.meta.url).resolve('typescript/bin/tsc');
const failed = ['geometry', 'renderer', 'electron', 'tests', '.'].filter((layer) => {
  const { status } = spawnSync(process.execPath, [compiler, '--project', layer], { stdio: 'inherit' });
  if (status !== 0) process.stderr.write(`Types of ${layer} are not right.\n`);
  return status !== 0;
});
process.exitCode = failed.length === 0 ? 0 : 1;
