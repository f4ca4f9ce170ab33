import type { PickedFile } from './places';

interface Pickers {
  showOpenFilePicker?(options: object): Promise<readonly PickedFile[]>;
  showSaveFilePicker?(options: object): Promise<PickedFile>;
}

const pickers = (): Pickers => window as unknown as Pickers;
const TYPES = [{ description: 'Cars', accept: { 'application/json': ['.json'] } }];

/** The input that every browser has; drawn by the file menu. */
export const FILE_INPUT_ID = 'car-file';

const isCancelled = (reason: unknown): boolean => reason instanceof DOMException && reason.name === 'AbortError';

/**
 * Lets the person choose a file to open. Where the browser hands out handles, one comes back, so that saving writes the same
 * file; everywhere else the page's file input is opened, which goes on by itself.
 * @returns null: nothing was chosen, or the input has it now
 */
export const chooseInBrowser = async (): Promise<PickedFile | null> => {
  const { showOpenFilePicker } = pickers();
  if (showOpenFilePicker) {
    try {
      return (await showOpenFilePicker.call(window, { types: TYPES, multiple: false }))[0] ?? null;
    } catch (reason) {
      if (isCancelled(reason)) return null;
    }
  }
  document.getElementById(FILE_INPUT_ID)?.click();
  return null;
};

/** A new place to save to: a handle, `cancelled`, or `none` where the browser has no such thing and downloads instead. */
export const choosePlaceInBrowser = async (name: string): Promise<PickedFile | 'cancelled' | 'none'> => {
  const { showSaveFilePicker } = pickers();
  if (!showSaveFilePicker) return 'none';
  try {
    return await showSaveFilePicker.call(window, { suggestedName: name, types: TYPES });
  } catch (reason) {
    return isCancelled(reason) ? 'cancelled' : 'none';
  }
};

/** Hands a text to the browser's downloads. Where it goes is the browser's affair. */
export const download = (name: string, text: string): void => {
  const address = URL.createObjectURL(new Blob([text], { type: 'application/json' }));
  const link = document.createElement('a');
  link.href = address;
  link.download = name;
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 60_000);
};

interface DroppedItem {
  readonly kind: string;
  getAsFile(): File | null;
  getAsFileSystemHandle?(): Promise<(PickedFile & { readonly kind: string }) | null>;
}

export interface Dropped {
  readonly file: File;
  /** a handle on it, where the browser gives one */
  readonly handle: Promise<PickedFile | null>;
}

/** The first file of a drop. To be called while the drop is being told of: the browser forgets it afterwards. */
export const droppedFile = (transfer: DataTransfer): Dropped | null => {
  const items = [...transfer.items] as unknown as DroppedItem[];
  const item = items.find(({ kind }) => kind === 'file');
  const file = item?.getAsFile();
  if (!item || !file) return null;
  const handle = item.getAsFileSystemHandle?.().then((given) => (given?.kind === 'file' ? given : null));
  return { file, handle: handle?.catch(() => null) ?? Promise.resolve(null) };
};
