import { describe, type PlacelessFault } from './fault';
import { isObject } from './place';

/** The version that this program writes. */
export const CAR_FILE_VERSION = 1;

/** What turns a document of one version into the next one's; the key is the version it starts from. */
export type Migrations = ReadonlyMap<number, (document: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>>;

/** Version 1 is the first: there is nothing to migrate from yet. */
export const MIGRATIONS: Migrations = new Map();

export type VersionJudgement =
  | { readonly kind: 'current'; readonly document: unknown }
  | { readonly kind: 'older'; readonly version: number; readonly document: unknown }
  | { readonly kind: 'newer'; readonly fault: PlacelessFault };

/** Brings an older document up to this version, in memory; refuses a newer one. Whatever is no version at all is left to the schema. */
export function judgeVersion(
  document: unknown,
  migrations: Migrations = MIGRATIONS,
  current = CAR_FILE_VERSION,
): VersionJudgement {
  const version = isObject(document) ? document['version'] : undefined;
  if (!isObject(document) || typeof version !== 'number' || !Number.isInteger(version)) return { kind: 'current', document };
  if (version > current) {
    return {
      kind: 'newer',
      fault: {
        code: 'newer-version',
        path: ['version'],
        found: describe(version),
        expected: `version ${current} at most`,
        hint: 'open it with a newer Jounce: this one could lose what it does not know',
      },
    };
  }
  let migrated = document;
  for (let from = version; from < current; from++) {
    const step = migrations.get(from);
    if (step === undefined) return { kind: 'current', document };
    migrated = { ...step(migrated), version: from + 1 };
  }
  return version === current ? { kind: 'current', document } : { kind: 'older', version, document: migrated };
}
