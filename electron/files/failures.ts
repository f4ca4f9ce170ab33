import path from 'node:path';
import type { FailureCode, FileAnswer, FileFailure } from '../../renderer/files/fileService';

export type Failed = Extract<FileAnswer<never>, { ok: false }>;

export const failed = (code: FailureCode, name: string | null, rest: Partial<FileFailure> = {}): Failed => ({
  ok: false,
  failure: { code, name, ...rest },
});

export const failedAt = (code: FailureCode, place: string, rest: Partial<FileFailure> = {}): Failed =>
  failed(code, path.basename(place), { folder: path.dirname(place), ...rest });

export const answered = <Value>(value: Value): { readonly ok: true; readonly value: Value } => ({ ok: true, value });

const codeOf = (reason: unknown): string => (reason as NodeJS.ErrnoException | null)?.code ?? '';

/** The system's error for a file that was to be read, in the contract's words. */
export const readFailure = (reason: unknown, place: string): Failed => {
  switch (codeOf(reason)) {
    case 'ENOENT':
    case 'ENOTDIR':
      return failedAt('notFound', place);
    case 'EISDIR':
      return failedAt('notAFile', place);
    default:
      return failedAt('unreadable', place);
  }
};

/** The same for a file that was to be written. */
export const writeFailure = (reason: unknown, place: string): Failed => {
  switch (codeOf(reason)) {
    case 'ENOENT':
    case 'ENOTDIR':
      return failedAt('noFolder', place);
    case 'ENOSPC':
    case 'EDQUOT':
    case 'EFBIG':
      return failedAt('full', place);
    case 'EROFS':
    case 'EACCES':
    case 'EPERM':
      return failedAt('readOnly', place);
    case 'EISDIR':
      return failedAt('notAFile', place);
    default:
      return failedAt('unwritable', place);
  }
};
