import path from 'node:path';
import * as z from 'zod';
import type { CopyNote, CopySummary, FileAnswer, KeptCopy } from '../../renderer/files/fileService';
import { answered, failed, writeFailure } from './failures';
import { DISK, type FileLayer } from './fileLayer';
import type { HandedFiles } from './handedFiles';
import { copyNoteSchema } from './questions';
import { OWNER_ONLY } from './stateFiles';
import { DRAFT_NAME, replaceFile } from './wholeFile';

const COPY = /^([0-9a-f-]{36})\.copy$/;
/** Drafts of a program that was ended while it wrote are thrown away when they are older, ms. */
const DRAFT_KEPT_MS = 60 * 60 * 1000;

/** The first line of a copy: its note, and the path behind the id that the note names. */
const headSchema = z.object({ place: z.string().nullable(), note: copyNoteSchema });

/**
 * Recovery copies in the state folder, three files each: `<id>.copy` (a line of JSON that says what it is, then the car's text),
 * `<id>.origin` (the text that it grew from) and `<id>.ended` (when which window was last seen).
 */
export class KeptCopies {
  private readonly folder: string;

  constructor(
    state: string,
    private readonly handed: HandedFiles,
    private readonly layer: FileLayer = DISK,
  ) {
    this.folder = path.join(state, 'recovery');
  }

  private place(id: string, ending: 'copy' | 'origin' | 'ended'): string {
    return path.join(this.folder, `${id}.${ending}`);
  }

  private async write(place: string, text: string): Promise<FileAnswer<null>> {
    try {
      await this.layer.makeFolder(this.folder);
      await replaceFile(place, Buffer.from(text), OWNER_ONLY, this.layer);
      return answered(null);
    } catch (reason) {
      return writeFailure(reason, place);
    }
  }

  keep(note: CopyNote, text: string): Promise<FileAnswer<null>> {
    const place = note.file === null ? null : this.handed.placeOf(note.file);
    return this.write(this.place(note.id, 'copy'), `${JSON.stringify({ place, note })}\n${text}`);
  }

  keepOrigin(id: string, text: string): Promise<FileAnswer<null>> {
    return this.write(this.place(id, 'origin'), text);
  }

  async drop(id: string): Promise<FileAnswer<null>> {
    for (const ending of ['copy', 'origin', 'ended'] as const) {
      const place = this.place(id, ending);
      if (!(await this.layer.status(place).catch(() => null))) continue;
      try {
        await this.layer.remove(place);
      } catch (reason) {
        return writeFailure(reason, place);
      }
    }
    return answered(null);
  }

  async read(id: string): Promise<FileAnswer<KeptCopy>> {
    const copy = await this.parse(id);
    if (!copy) return failed('notFound', null);
    const origin = await this.layer.read(this.place(id, 'origin')).catch(() => null);
    return answered({ note: copy.note, text: copy.text, origin: origin?.toString('utf8') ?? null });
  }

  private async parse(id: string): Promise<{ readonly note: CopySummary; readonly text: string } | null> {
    try {
      const whole = (await this.layer.read(this.place(id, 'copy'))).toString('utf8');
      const end = whole.indexOf('\n');
      const { place, note } = headSchema.parse(JSON.parse(whole.slice(0, end)));
      // a path comes from our own file only, written when it was handed out
      const file = place === null ? null : this.handed.hand(place);
      const summary = { ...note, file: file?.id ?? null, folder: file?.folder ?? null };
      return { note: { ...summary, endedAt: await this.endOf(note) }, text: whole.slice(end + 1) };
    } catch {
      return null;
    }
  }

  /** When the window that is at work on a copy was last seen; the end of one that was at work on it before is none of its. */
  private async endOf({ id, window, keptAt }: CopyNote): Promise<number | null> {
    const ended = await this.layer.read(this.place(id, 'ended')).catch(() => null);
    const [at = '', of = window] = ended?.toString('utf8').trim().split(' ') ?? [];
    if (at === '' || of !== window || !Number.isFinite(Number(at))) return null;
    // the last sign of a program that was ended can be seconds older than its last copy, which is a sign too
    return Math.max(Number(at), keptAt);
  }

  /** Every copy that can be read, latest first. One that cannot is left where it is. */
  async list(): Promise<readonly CopySummary[]> {
    const names = await this.layer.list(this.folder).catch(() => []);
    const ids = names.flatMap((name) => COPY.exec(name)?.[1] ?? []);
    const copies = await Promise.all(ids.map((id) => this.parse(id)));
    return copies.flatMap((copy) => (copy ? [copy.note] : [])).sort((a, b) => b.keptAt - a.keptAt);
  }

  /** Notes when these windows were last seen, on the copies that they leave behind. */
  async noteEnd(windows: readonly string[], at: number): Promise<void> {
    for (const { id, window, endedAt } of await this.list())
      if (windows.includes(window) && endedAt === null)
        await this.write(this.place(id, 'ended'), `${Math.round(at)} ${window}\n`);
  }

  async sweepDrafts(now: number): Promise<void> {
    for (const name of await this.layer.list(this.folder).catch(() => [])) {
      if (!DRAFT_NAME.test(name)) continue;
      const place = path.join(this.folder, name);
      const status = await this.layer.status(place).catch(() => null);
      if (status && now - status.writtenAt > DRAFT_KEPT_MS) await this.layer.remove(place).catch(() => undefined);
    }
  }
}
