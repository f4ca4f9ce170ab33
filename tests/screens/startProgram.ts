import { spawn, type ChildProcess } from 'node:child_process';
import path from 'node:path';
import { onTestFinished } from 'vitest';

const ROOT = path.resolve(import.meta.dirname, '../..');

/** `npm start -- FILE` as a person types it, or without a file; what it says is the address. */
export const startProgram = async (
  state: string,
  file: string | null = null,
): Promise<{ readonly address: string; readonly child: ChildProcess }> => {
  const env = {
    ...process.env,
    JOUNCE_NO_OPEN: '1',
    XDG_STATE_HOME: state,
    ...(file === null ? {} : { INIT_CWD: path.dirname(file) }),
  };
  const named = file === null ? [] : [path.basename(file)];
  const child = spawn(process.execPath, ['electron/start.mjs', ...named], { cwd: ROOT, env });
  onTestFinished(() => void child.kill('SIGKILL'));
  const address = await new Promise<string>((resolve, reject) => {
    let said = '';
    child.stdout.on('data', (part: Buffer) => (said += part.toString()).includes('\n') && resolve(said.trim()));
    child.stderr.on('data', (part: Buffer) => (said += part.toString()));
    child.once('exit', () => reject(new Error(`It ended: ${said}`)));
  });
  return { address, child };
};
