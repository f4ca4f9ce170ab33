import path from 'node:path';
import * as z from 'zod';
import type { Preferences, RecentFile } from '../../renderer/files/fileService';
import { DISK, type FileLayer } from './fileLayer';
import type { HandedFiles } from './handedFiles';
import { preferencesSchema } from './questions';
import { replaceFile } from './wholeFile';

/** Only the owner reads what is kept. */
export const OWNER_ONLY = 0o600;
const LONGEST_LIST = 12;

const recentSchema = z.array(
  z.object({ id: z.uuid().nullable(), place: z.string().nullable(), name: z.string().max(300), usedAt: z.number() }),
);
type Kept = z.infer<typeof recentSchema>[number];

/** Recent files and preferences, in the state folder. A file there that cannot be read counts as empty; it is never trusted. */
export class StateFiles {
  constructor(
    private readonly folder: string,
    private readonly handed: HandedFiles,
    private readonly layer: FileLayer = DISK,
  ) {}

  private async read<Value>(name: string, schema: z.ZodType<Value>, empty: Value): Promise<Value> {
    try {
      return schema.parse(JSON.parse((await this.layer.read(path.join(this.folder, name))).toString('utf8')));
    } catch {
      return empty;
    }
  }

  private async write(name: string, value: unknown): Promise<void> {
    await this.layer.makeFolder(this.folder);
    const bytes = Buffer.from(`${JSON.stringify(value, null, 2)}\n`);
    await replaceFile(path.join(this.folder, name), bytes, OWNER_ONLY, this.layer);
  }

  /** Latest first. Those with a path are handed out under the id that they had. */
  async recent(): Promise<readonly RecentFile[]> {
    const kept = await this.read<Kept[]>('recent.json', recentSchema, []);
    return kept.map(({ id, place, name, usedAt }) => {
      if (place === null || id === null) return { id: null, name, folder: null, usedAt };
      return { ...this.handed.hand(place, id), usedAt };
    });
  }

  /** Puts a file at the head of the list. @param place - its path; null: the browser opened it and only its name is known */
  async noteRecent(place: string | null, name: string, usedAt: number): Promise<void> {
    const kept = await this.read<Kept[]>('recent.json', recentSchema, []);
    const id = place === null ? null : this.handed.hand(place).id;
    const others = kept.filter((file) => file.place !== place || (place === null && file.name !== name));
    await this.write('recent.json', [{ id, place, name, usedAt }, ...others].slice(0, LONGEST_LIST));
  }

  preferences(): Promise<Preferences> {
    return this.read<Preferences>('preferences.json', preferencesSchema, {});
  }

  /** Takes these over and leaves the others as they are. */
  async keepPreferences(preferences: Preferences): Promise<void> {
    await this.write('preferences.json', { ...(await this.preferences()), ...preferences });
  }
}
