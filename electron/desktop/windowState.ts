import path from 'node:path';
import * as z from 'zod';
import { DISK } from '../files/fileLayer';
import { OWNER_ONLY } from '../files/stateFiles';
import { replaceFile } from '../files/wholeFile';

export interface Rectangle {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export interface WindowState {
  /** where the window stood, in the screen's own points; null: wherever the system puts it */
  readonly bounds: Rectangle | null;
  readonly isMaximized: boolean;
}

const whole = z.number().int().min(-100_000).max(100_000);
const stateSchema = z.object({
  bounds: z.object({ x: whole, y: whole, width: whole, height: whole }).nullable(),
  isMaximized: z.boolean(),
});

const FIRST: WindowState = { bounds: null, isMaximized: false };
/** At least so much of the window must be on some screen, or nobody could take hold of it. */
const LEAST_SEEN = 120;
const FILE = 'window.json';

const seen = (from: number, size: number, screenFrom: number, screenSize: number): number =>
  Math.min(from + size, screenFrom + screenSize) - Math.max(from, screenFrom);

/**
 * A kept state that can be used on the screens that there are now: one that lies outside all of them loses its place.
 * @param kept - what was read, whatever it is
 */
export const usableState = (kept: unknown, screens: readonly Rectangle[]): WindowState => {
  const read = stateSchema.safeParse(kept);
  if (!read.success) return FIRST;
  const { bounds, isMaximized } = read.data;
  const isSeen = (screen: Rectangle, window: Rectangle): boolean =>
    seen(window.x, window.width, screen.x, screen.width) >= LEAST_SEEN &&
    seen(window.y, window.height, screen.y, screen.height) >= LEAST_SEEN &&
    window.y >= screen.y - 8;
  return { bounds: bounds && screens.some((screen) => isSeen(screen, bounds)) ? bounds : null, isMaximized };
};

export const readWindowState = async (folder: string, screens: readonly Rectangle[]): Promise<WindowState> => {
  try {
    return usableState(JSON.parse((await DISK.read(path.join(folder, FILE))).toString('utf8')), screens);
  } catch {
    return FIRST;
  }
};

/** Keeps it for the next start; where it cannot be kept the next window opens as the first did. */
export const keepWindowState = async (folder: string, state: WindowState): Promise<void> => {
  await DISK.makeFolder(folder).catch(() => undefined);
  await replaceFile(path.join(folder, FILE), Buffer.from(JSON.stringify(state)), OWNER_ONLY).catch(() => undefined);
};
