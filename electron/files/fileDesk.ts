import path from 'node:path';
import type { ChosenPlace, FileAnswer, HandedName, Questions } from '../../renderer/files/fileService';
import { lookAtCarFile, readCarFile, saveCarFile } from './carFiles';
import { answered, failed } from './failures';
import { DISK, type FileLayer } from './fileLayer';
import { HandedFiles } from './handedFiles';
import { KeptCopies } from './keptCopies';
import { isMethod, QUESTION_SCHEMAS } from './questions';
import { StateFiles } from './stateFiles';
import { WindowRecords, type OtherWindows } from './windowRecords';

/** Native dialogs, where the shell has them. Each gives a path, or null when it was cancelled. */
export interface Dialogs {
  open(): Promise<string | null>;
  save(name: string): Promise<string | null>;
}

export interface DeskOptions {
  /** where recovery copies, recent files and preferences are kept */
  readonly stateFolder: string;
  /** files that the start command was given */
  readonly handed?: readonly string[];
  readonly dialogs?: Dialogs;
  readonly layer?: FileLayer;
}

type Answers = {
  readonly [Method in keyof Questions]: (ask: Questions[Method]['ask']) => Promise<FileAnswer<Questions[Method]['answer']>>;
};

/** Answers the window's questions about files, for both shells. */
export class FileDesk {
  private readonly layer: FileLayer;
  private readonly files = new HandedFiles();
  private readonly state: StateFiles;
  private readonly copies: KeptCopies;
  private readonly records: WindowRecords;

  constructor(private readonly options: DeskOptions) {
    this.layer = options.layer ?? DISK;
    this.state = new StateFiles(options.stateFolder, this.files, this.layer);
    this.copies = new KeptCopies(options.stateFolder, this.files, this.layer);
    this.records = new WindowRecords(options.stateFolder, this.layer);
    for (const place of options.handed ?? []) this.hand(place);
  }

  /** Hands a file of this machine to the window. */
  hand(place: string): HandedName {
    return this.files.hand(place);
  }

  /** Answers a question, whatever was sent: what has not the form of the contract is told so and goes no further. */
  async answer(method: string, ask: unknown): Promise<FileAnswer<unknown>> {
    if (!isMethod(method)) return failed('badRequest', null);
    const read = QUESTION_SCHEMAS[method].safeParse(ask);
    if (!read.success) return failed('badRequest', null);
    const answer = this.answers[method] as (ask: unknown) => Promise<FileAnswer<unknown>>;
    return answer(read.data);
  }

  /** A window was closed or lost. */
  async windowWent(window: string): Promise<void> {
    if (!this.records.isOurs(window)) return;
    await this.records.forget(window);
    await this.copies.noteEnd([window], Date.now());
  }

  windowCame(window: string): Promise<void> {
    return this.records.isOurs(window) ? Promise.resolve() : this.records.note(window, null);
  }

  close(): Promise<void> {
    return this.records.close();
  }

  private async freeCopies(window: string): ReturnType<KeptCopies['list']> {
    for (const stale of await this.records.staleRecords()) {
      await this.copies.noteEnd(stale.windows, stale.lastSign);
      await this.layer.remove(stale.place).catch(() => undefined);
    }
    const open = await this.records.openWindows();
    return (await this.copies.list()).filter((copy) => copy.isParked || copy.window === window || !open.has(copy.window));
  }

  /** How the file stands; a window that asks has it open, even if the connection was lost in between. */
  private async look(place: string, window: string): Promise<FileAnswer<Questions['lookAtFile']['answer']>> {
    const look = await lookAtCarFile(place, this.layer);
    if (!look.ok) return look;
    return answered({ ...look.value, ...(await this.noteOpen(place, window)) });
  }

  /** Notes that the window has the file open. @returns how many other windows have */
  private async noteOpen(place: string, window: string): Promise<OtherWindows> {
    const real = await this.layer.behindLinks(place);
    await this.records.note(window, real);
    return this.records.othersOn(real, window);
  }

  private readonly withPlace =
    <Ask extends { readonly id: string }, Value>(answer: (place: string, ask: Ask) => Promise<FileAnswer<Value>>) =>
    async (ask: Ask): Promise<FileAnswer<Value>> => {
      const place = this.files.placeOf(ask.id);
      return place === null ? failed('notFound', null) : answer(place, ask);
    };

  private readonly answers: Answers = {
    begin: async ({ window }) => {
      await this.copies.sweepDrafts(Date.now());
      const handed = (this.options.handed ?? []).map((place) => this.hand(place));
      const [copies, recent, preferences] = [
        await this.freeCopies(window),
        await this.state.recent(),
        await this.state.preferences(),
      ];
      return answered({ handed, copies, recent, preferences });
    },
    openFile: this.withPlace(async (place, { window }) => {
      const read = await readCarFile(place, this.layer);
      if (!read.ok) return read;
      const { bytes, version, isReadOnly } = read.value;
      await this.state.noteRecent(place, path.basename(place), Date.now()).catch(() => undefined);
      const windows = await this.noteOpen(place, window);
      return answered({ ...this.hand(place), version, isReadOnly, ...windows, base64: bytes.toString('base64') });
    }),
    lookAtFile: this.withPlace((place, { window }) => this.look(place, window)),
    saveFile: this.withPlace(async (place, { window, text, expected }) => {
      const saved = await saveCarFile(place, text, expected, this.layer);
      if (!saved.ok) return saved;
      await this.state.noteRecent(place, path.basename(place), Date.now()).catch(() => undefined);
      return answered({ ...saved.value, ...(await this.noteOpen(place, window)) });
    }),
    chooseFile: async () => {
      const place = await this.options.dialogs?.open();
      if (place === undefined) return failed('badRequest', null);
      return answered(place === null ? null : this.hand(place));
    },
    choosePlace: async ({ name }) => {
      const place = await this.options.dialogs?.save(path.basename(name));
      if (place === undefined) return failed('badRequest', null);
      if (place === null) return answered(null);
      const look = await lookAtCarFile(place, this.layer);
      return look.ok ? answered<ChosenPlace>({ ...this.hand(place), version: look.value.version }) : look;
    },
    releaseFile: async ({ window }) => {
      await this.records.note(window, null);
      return answered(null);
    },
    notePicked: async ({ window, ...look }) => {
      await this.records.note(window, look);
      return answered({ alike: (await this.records.othersOn(look, window)).alike });
    },
    noteRecent: async ({ name }) => {
      await this.state.noteRecent(null, path.basename(name), Date.now()).catch(() => undefined);
      return answered(await this.state.recent());
    },
    keepCopy: ({ note, text }) => this.copies.keep(note, text),
    keepOrigin: ({ id, text }) => this.copies.keepOrigin(id, text),
    readCopy: ({ id }) => this.copies.read(id),
    listCopies: async ({ window }) => answered(await this.freeCopies(window)),
    dropCopy: ({ id }) => this.copies.drop(id),
    keepPreferences: async ({ preferences }) => {
      try {
        await this.state.keepPreferences(preferences);
        return answered(null);
      } catch {
        return failed('unwritable', null);
      }
    },
  };
}
