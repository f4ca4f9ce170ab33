import * as z from 'zod';
import type { CopyNote, Preferences, Questions } from '../../renderer/files/fileService';

const id = z.uuid();
const time = z.number().min(0).max(8.64e15);
const line = z.string().max(300);
/** JSON of the largest car file fits into the largest body. */
const text = z.string().max(16 * 1024 * 1024);
const stamp = z.string().regex(/^[0-9a-f]{64}$/);

export const preferencesSchema: z.ZodType<Preferences> = z
  .record(z.string().regex(/^[a-zA-Z][a-zA-Z0-9.-]{0,63}$/), z.union([z.string().max(4000), z.number(), z.boolean()]))
  .refine((values) => Object.keys(values).length <= 200);

export const copyNoteSchema: z.ZodType<CopyNote> = z.strictObject({
  id,
  window: id,
  title: line,
  name: line,
  file: id.nullable(),
  sample: line.nullable(),
  savedAt: time.nullable(),
  keptAt: time,
  setup: line,
  against: line,
  copies: z.record(line, line).optional(),
  steps: z.array(z.strictObject({ name: line, at: time })).max(500),
  isParked: z.boolean(),
});

const ofWindow = z.strictObject({ window: id });
const ofFile = z.strictObject({ window: id, id });
const ofCopy = z.strictObject({ id });

/** The form of every question. What a window sends is judged by it before anything else looks at it. */
export const QUESTION_SCHEMAS: { readonly [Method in keyof Questions]: z.ZodType<Questions[Method]['ask']> } = {
  begin: ofWindow,
  openFile: ofFile,
  lookAtFile: ofFile,
  saveFile: z.strictObject({ window: id, id, text, expected: stamp.nullable() }),
  chooseFile: ofWindow,
  choosePlace: z.strictObject({ window: id, name: line }),
  releaseFile: ofWindow,
  notePicked: z.strictObject({ window: id, name: line.min(1), size: z.number().int().min(0), savedAt: time }),
  noteRecent: z.strictObject({ name: line.min(1) }),
  keepCopy: z.strictObject({ note: copyNoteSchema, text }),
  keepOrigin: z.strictObject({ id, text }),
  readCopy: ofCopy,
  listCopies: ofWindow,
  dropCopy: ofCopy,
  keepPreferences: z.strictObject({ preferences: preferencesSchema }),
};

export const METHODS = Object.keys(QUESTION_SCHEMAS) as (keyof Questions)[];

export const isMethod = (name: string): name is keyof Questions => Object.hasOwn(QUESTION_SCHEMAS, name);
