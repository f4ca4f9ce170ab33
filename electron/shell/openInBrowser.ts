import { appWindowCommand, defaultBrowserCommand, hasDisplay } from '../browser/browserCommand';
import { findChromium } from '../browser/findChromium';
import { launch } from '../browser/launch';
import { makeProfile, removeProfile } from '../browser/profiles';
import type { WindowServer } from '../serve/serveWindow';

/** A browser that cannot run here says so within this time, ms. */
const BROWSER_PATIENCE_MS = 1500;

/**
 * Opens the served window: in Chromium's app window, else in the user's browser, else the address is printed for a person
 * to open. Resolves when the server has ended.
 */
export const openInBrowser = async (server: WindowServer, state: string, say: (line: string) => void): Promise<void> => {
  const served = `It is served at ${server.origin}, to this machine only. Ctrl-C ends it.`;
  const chromium = hasDisplay() ? findChromium() : null;
  if (chromium !== null) {
    const profile = await makeProfile(state);
    const command = appWindowCommand(chromium, server.openAddress, profile, process.getuid?.() === 0);
    const started = await launch(command, BROWSER_PATIENCE_MS);
    if (started.ok) {
      say(`Jounce opens in an app window of ${chromium}. ${served}`);
      started.child.once('exit', () => server.isSeen() || server.close());
      await server.ended;
      started.child.kill();
      return removeProfile(profile);
    }
    say(`${chromium} did not start (${started.reason}).`);
    await removeProfile(profile);
  }
  if (hasDisplay() && (await launch(defaultBrowserCommand(server.openAddress), BROWSER_PATIENCE_MS)).ok) {
    say(`Jounce opens in your browser. ${served}`);
  } else {
    say(
      `No browser could be opened here. Open this address in one; it is good for one window:\n\n  ${server.openAddress}\n\n${served}`,
    );
  }
  await server.ended;
};
