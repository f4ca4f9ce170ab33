import path from 'node:path';

export interface DesktopPlaces {
  readonly windowFolder: string;
  readonly samplesFolder: string;
}

/** The values of an option that may be given more than once: `--open=a --open=b`. */
const allNamed = (args: readonly string[], name: string): readonly string[] =>
  args.flatMap((arg) => (arg.startsWith(`--${name}=`) ? [arg.slice(name.length + 3)] : []));

/**
 * Where the built window and the samples are: as `npm start` names them, or beside this script as a packaged program
 * has them (`build/shell`, `build/window`, `samples`).
 */
export const desktopPlaces = (args: readonly string[], scriptFolder: string): DesktopPlaces => ({
  windowFolder: allNamed(args, 'window-folder')[0] ?? path.join(scriptFolder, '..', 'window'),
  samplesFolder: allNamed(args, 'samples-folder')[0] ?? path.join(scriptFolder, '..', '..', 'samples'),
});

/**
 * The car files that a call names: with `--open=`, as `npm start` does, or as plain arguments, as a file manager does.
 * @param args - the whole call, the program first
 * @param folder - that they are relative to
 */
export const filesOfCall = (args: readonly string[], folder: string): readonly string[] =>
  [...allNamed(args, 'open'), ...args.slice(1).filter((arg) => !arg.startsWith('-') && arg.endsWith('.json'))].map((file) =>
    path.resolve(folder, file),
  );
