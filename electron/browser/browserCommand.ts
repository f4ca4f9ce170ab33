export interface Command {
  readonly program: string;
  readonly args: readonly string[];
}

/** Whether programs with a window can be shown: on Linux only where a display is named. */
export const hasDisplay = (environment: NodeJS.ProcessEnv = process.env, platform: NodeJS.Platform = process.platform): boolean =>
  platform === 'darwin' || platform === 'win32' || Boolean(environment['DISPLAY'] || environment['WAYLAND_DISPLAY']);

/**
 * Chromium's app window (no tabs, no address bar) with a profile of its own, so that nothing of the user's browser is
 * shared with it and its process lives as long as its window.
 *
 * @param isRoot - Chromium refuses to start its sandbox for root
 */
export const appWindowCommand = (chromium: string, address: string, profile: string, isRoot: boolean): Command => ({
  program: chromium,
  args: [
    `--app=${address}`,
    `--user-data-dir=${profile}`,
    '--window-size=1440,900',
    '--no-first-run',
    '--no-default-browser-check',
    '--disable-background-networking',
    '--disable-component-update',
    '--disable-sync',
    ...(isRoot ? ['--no-sandbox'] : []),
  ],
});

/** The user's browser, as the system opens an address. */
export const defaultBrowserCommand = (address: string, platform: NodeJS.Platform = process.platform): Command => {
  if (platform === 'darwin') return { program: 'open', args: [address] };
  if (platform === 'win32') return { program: 'rundll32', args: ['url.dll,FileProtocolHandler', address] };
  return { program: 'xdg-open', args: [address] };
};
