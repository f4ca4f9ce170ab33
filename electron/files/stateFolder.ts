import { homedir } from 'node:os';
import path from 'node:path';

/** Where what must survive is kept on this machine: `$XDG_STATE_HOME/jounce` and its equals on other systems. */
export const stateFolder = (
  environment: NodeJS.ProcessEnv = process.env,
  platform: NodeJS.Platform = process.platform,
  home: string = homedir(),
): string => {
  const named = environment['XDG_STATE_HOME'];
  if (named !== undefined && path.isAbsolute(named)) return path.join(named, 'jounce');
  if (platform === 'darwin') return path.join(home, 'Library', 'Application Support', 'jounce');
  if (platform === 'win32') return path.join(environment['LOCALAPPDATA'] ?? path.join(home, 'AppData', 'Local'), 'jounce');
  return path.join(home, '.local', 'state', 'jounce');
};
