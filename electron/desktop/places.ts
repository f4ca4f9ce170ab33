import path from 'node:path';

export interface DesktopPlaces {
  readonly windowFolder: string;
  readonly samplesFolder: string;
}

/**
 * Where the built window and the samples are: as `npm start` names them, or beside this script as a packaged program
 * has them (`build/shell`, `build/window`, `samples`).
 */
export const desktopPlaces = (args: readonly string[], scriptFolder: string): DesktopPlaces => {
  const named = (name: string): string | undefined => args.find((arg) => arg.startsWith(`--${name}=`))?.slice(name.length + 3);
  return {
    windowFolder: named('window-folder') ?? path.join(scriptFolder, '..', 'window'),
    samplesFolder: named('samples-folder') ?? path.join(scriptFolder, '..', '..', 'samples'),
  };
};
