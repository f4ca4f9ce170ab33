/**
 * How the window reaches files. The window knows nothing else of the machine that it runs on.
 *
 * Two shells keep this contract. In Electron the preload script hands it over as `window.jounce`; in a browser the window asks
 * the loopback server that served it: `GET /api/samples` and `GET /api/samples/<name>`, and `POST /api/files/<method>` with the
 * question as JSON for the rest, each answered with the JSON of the same `FileAnswer`. Neither takes a path from the window: a
 * file is named by the opaque `id` that the shell handed out for it. No method throws or rejects: what goes wrong is a `FileFailure`.
 */
export interface FileService extends FileQuestions {
  readonly shell: ShellName;
  /** The cars that come with the program, sorted by name. */
  listSamples(): Promise<FileAnswer<readonly SampleFile[]>>;
  /** The text of one of them; `name` is one of those that `listSamples` gave. */
  readSample(name: string): Promise<FileAnswer<SampleText>>;
  /** Calls back with every file that the system hands to this window later: opened from a file manager, or by a second start. */
  whenHanded(take: (file: HandedName) => void): void;
  /** Calls back when a native menu asks for something. */
  whenAsked(take: (command: MenuCommand) => void): void;
  /** The id of a file that was dropped on the window; null where the shell knows none and the browser's own access is used. */
  handDropped(file: File): Promise<HandedName | null>;
}

/** `desktop`: Electron, with native dialogs. `served`: a browser; files are chosen by its own means. */
export type ShellName = 'desktop' | 'served';

export type MenuCommand = 'open' | 'save' | 'saveAs' | 'undo' | 'redo';

/** Every question but those for samples: one object in, one answer out. */
export interface Questions {
  /** The window is there: what it starts with. */
  begin: { ask: { readonly window: string }; answer: Beginning };
  /** Reads a file and notes that this window has it open. */
  openFile: { ask: FileQuestion; answer: HandedFile };
  /** How the file stands on the disk now. */
  lookAtFile: { ask: FileQuestion; answer: FileLook };
  /** Writes the file whole, if the version there is the one expected. */
  saveFile: { ask: SaveQuestion; answer: FileLook };
  /** Native dialog for opening; null when it was cancelled. Electron only. */
  chooseFile: { ask: { readonly window: string }; answer: HandedName | null };
  /** Native dialog for a new place; null when it was cancelled. Nothing is written yet. Electron only. */
  choosePlace: { ask: { readonly window: string; readonly name: string }; answer: ChosenPlace | null };
  /** This window has no file of a shell open any more. */
  releaseFile: { ask: { readonly window: string }; answer: null };
  /** This window has a file open that the browser opened by its own means: it has no path here, only what the browser tells of it. */
  notePicked: { ask: PickedQuestion; answer: { readonly alike: number } };
  /** Puts a file that the browser opened by its own means on the list of recent files. */
  noteRecent: { ask: { readonly name: string }; answer: readonly RecentFile[] };
  /** Keeps a copy of what is open and not saved. It replaces the earlier one of the same id. */
  keepCopy: { ask: { readonly note: CopyNote; readonly text: string }; answer: null };
  /** Keeps, beside the copy, the text that it grew from, for the comparison and for a car that has no file. */
  keepOrigin: { ask: { readonly id: string; readonly text: string }; answer: null };
  readCopy: { ask: { readonly id: string }; answer: KeptCopy };
  /** The copies that no open window is at work on. */
  listCopies: { ask: { readonly window: string }; answer: readonly CopySummary[] };
  /** Throws a copy away: it was saved, or the person said so. */
  dropCopy: { ask: { readonly id: string }; answer: null };
  keepPreferences: { ask: { readonly preferences: Preferences }; answer: null };
}

export type FileQuestions = {
  [Method in keyof Questions]: (ask: Questions[Method]['ask']) => Promise<FileAnswer<Questions[Method]['answer']>>;
};

/** Every question by its name, once for both shells. */
const METHODS = {
  begin: true,
  openFile: true,
  lookAtFile: true,
  saveFile: true,
  chooseFile: true,
  choosePlace: true,
  releaseFile: true,
  notePicked: true,
  noteRecent: true,
  keepCopy: true,
  keepOrigin: true,
  readCopy: true,
  listCopies: true,
  dropCopy: true,
  keepPreferences: true,
} satisfies Readonly<Record<keyof Questions, true>>;

/** The methods of a shell that asks all its questions in one way. @param ask - never rejects */
export const questionsBy = (ask: (method: keyof Questions, asked: unknown) => Promise<FileAnswer<never>>): FileQuestions => {
  const methods = Object.keys(METHODS) as readonly (keyof Questions)[];
  return Object.fromEntries(
    methods.map((method) => [method, (asked: unknown) => ask(method, asked)]),
  ) as unknown as FileQuestions;
};

export interface FileQuestion {
  /** a random id of one loaded window (UUID) */
  readonly window: string;
  /** of the file, as the shell handed it out */
  readonly id: string;
}

export interface SaveQuestion extends FileQuestion {
  readonly text: string;
  /** stamp of the version that may be written over; null: only where there is no file */
  readonly expected: string | null;
}

/** How a file that the browser holds a handle on stands on the disk: all that tells it from another one. */
export interface PickedLook {
  readonly name: string;
  /** bytes */
  readonly size: number;
  /** when it was written, whole ms since 1970 */
  readonly savedAt: number;
}

export interface PickedQuestion extends PickedLook {
  readonly window: string;
}

/** A car that comes with the program. */
export interface SampleFile {
  /** The file's name without its ending `.jounce.json`. */
  readonly name: string;
}

export interface SampleText {
  readonly name: string;
  /** The whole file, decoded from UTF-8. */
  readonly text: string;
}

export interface Beginning {
  /** files that the start command was given, in order */
  readonly handed: readonly HandedName[];
  readonly copies: readonly CopySummary[];
  readonly recent: readonly RecentFile[];
  readonly preferences: Preferences;
}

/** A file of this machine as the window may know it. */
export interface HandedName {
  readonly id: string;
  readonly name: string;
  /** the folder, to be read by a person; never sent back */
  readonly folder: string;
}

/** One state of a file. */
export interface FileVersion {
  /** SHA-256 of its bytes, hexadecimal */
  readonly stamp: string;
  /** when it was written, ms since 1970 */
  readonly savedAt: number;
}

export interface FileLook {
  /** null: the file is not there */
  readonly version: FileVersion | null;
  readonly isReadOnly: boolean;
  /** how many other windows have it open */
  readonly others: number;
  /** how many others have a file open that looks like it: a browser opened it there and does not tell where it is */
  readonly alike: number;
}

export interface HandedFile extends HandedName, FileLook {
  readonly version: FileVersion;
  /** the bytes, so that their encoding can be judged */
  readonly base64: string;
}

export interface ChosenPlace extends HandedName {
  /** what is there now, which the person agreed to replace; null: nothing */
  readonly version: FileVersion | null;
}

export interface RecentFile {
  /** null: the browser opened it, and has to be shown it again */
  readonly id: string | null;
  readonly name: string;
  readonly folder: string | null;
  readonly usedAt: number;
}

/** What a kept copy says about itself. Times in ms since 1970. */
export interface CopyNote {
  readonly id: string;
  /** the window that is at work on it */
  readonly window: string;
  readonly title: string;
  /** file name for saving */
  readonly name: string;
  /** id of the file that it is a copy of; null: a sample, a new car, or a file that the browser opened */
  readonly file: string | null;
  readonly sample: string | null;
  /** when the file was written, as far as known */
  readonly savedAt: number | null;
  readonly keptAt: number;
  readonly setup: string;
  readonly against: string;
  /** setups that were begun in the window, each with the one that it was begun as a copy of */
  readonly copies?: Readonly<Record<string, string>>;
  /** what was done since the file was saved, oldest first */
  readonly steps: readonly { readonly name: string; readonly at: number }[];
  /** put aside on purpose when another car was opened */
  readonly isParked: boolean;
}

export interface CopySummary extends CopyNote {
  /** last sign of the window that kept it; null: unknown */
  readonly endedAt: number | null;
  readonly folder: string | null;
}

export interface KeptCopy {
  readonly note: CopySummary;
  readonly text: string;
  /** the text that it grew from */
  readonly origin: string | null;
}

export type Preferences = Readonly<Record<string, string | number | boolean>>;

export type FileAnswer<Value> =
  { readonly ok: true; readonly value: Value } | { readonly ok: false; readonly failure: FileFailure };

/**
 * Why something could not be done. The screen turns the code into a sentence.
 *
 * `notFound`: no such file. `noFolder`: its folder is gone. `unreadable`, `unwritable`: the system refused. `readOnly`: the file may
 * not be written. `full`: no space is left. `changed`: another version is there than expected. `notAFile`: a folder or a device.
 * `tooLarge`: more than 16 MiB. `badRequest`: the question had the wrong form. `disconnected`: nobody answers any more.
 */
export type FailureCode =
  | 'notFound'
  | 'noFolder'
  | 'unreadable'
  | 'unwritable'
  | 'readOnly'
  | 'full'
  | 'changed'
  | 'notAFile'
  | 'tooLarge'
  | 'badRequest'
  | 'disconnected';

export interface FileFailure {
  readonly code: FailureCode;
  /** the file, or null */
  readonly name: string | null;
  readonly folder?: string;
  /** with `changed`: the version that is there; null: none */
  readonly there?: FileVersion | null;
}

/**
 * In a browser the window keeps an `EventSource` open on this address as long as it lives, with its id as `window`: the server
 * ends when there has been none for a minute. Electron does not serve it.
 */
export const PRESENCE_ADDRESS = '/api/presence';

/** Where the questions are asked in a browser: this, and the method's name. */
export const QUESTION_ADDRESS = '/api/files/';

/** What Electron's preload script puts on the window; absent in a browser. */
export interface WindowBridge {
  readonly jounce?: FileService;
}
