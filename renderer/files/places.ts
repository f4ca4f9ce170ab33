import type { FileVersion, HandedName } from './fileService';

/** As much of the browser's handle on a file as is used here. */
export interface PickedFile {
  readonly name: string;
  getFile(): Promise<{
    readonly lastModified: number;
    readonly size: number;
    arrayBuffer(): Promise<ArrayBuffer>;
    text(): Promise<string>;
  }>;
  createWritable(): Promise<{ write(text: string): Promise<void>; close(): Promise<void> }>;
  /** What the browser lets the page do with it, as it stands; absent where it does not ask. */
  queryPermission?(asked: { readonly mode: 'read' }): Promise<PermissionState>;
  /** The same after asking the person, which a browser does only while a click or a key is being answered. */
  requestPermission?(asked: { readonly mode: 'read' }): Promise<PermissionState>;
  /** Whether another handle is on the same file. */
  isSameEntry?(other: PickedFile): Promise<boolean>;
}

/**
 * Where a car is saved to. `handed`: a file of this machine that the shell handed out; `picked`: one that the browser holds a
 * handle on; `none`: nowhere yet, a sample, a new car, or a file that the browser gave only to be read.
 */
export type FilePlace =
  | {
      readonly kind: 'handed';
      readonly file: HandedName;
      /** of the version that was read or written last; null: none yet */
      readonly version: FileVersion | null;
      readonly isReadOnly: boolean;
    }
  | { readonly kind: 'picked'; readonly name: string; readonly handle: PickedFile }
  | { readonly kind: 'none'; readonly name: string };

export const nameOfPlace = (place: FilePlace): string => (place.kind === 'handed' ? place.file.name : place.name);

const ENDING = '.jounce.json';

/** A file name for a car that has none: "Saltmarsh hatch" is saltmarsh-hatch.jounce.json. */
export const fileNameFor = (title: string): string => {
  if (/\.json$/i.test(title)) return title;
  const words = title
    .normalize('NFKD')
    .replace(/[\u0300-\u036f]/g, '')
    .toLowerCase()
    .match(/[a-z0-9]+/g);
  return `${words?.join('-').slice(0, 80) ?? 'car'}${ENDING}`;
};

/** The bytes behind an answer's base64. */
export const bytesOf = (base64: string): Uint8Array => Uint8Array.from(atob(base64), (letter) => letter.charCodeAt(0));
