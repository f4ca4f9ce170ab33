import type * as z from 'zod/mini';
import { describe, type Path, type PlacelessFault } from '../fault';
import { MOST_FAULTS, type FaultCode } from '../faultCodes';
import { listNames, suggest } from '../suggest';
import { FORBIDDEN_KEYS } from '../text/keyFaults';
import { carSchema } from './carSchema';
import { knownKeysAt } from './knownKeys';
import { LARGEST_COORDINATE_MM, LARGEST_NUMBER } from './vocabulary';

type Issue = z.core.$ZodIssue;

const asPath = (path: readonly PropertyKey[]): Path => path.map((step) => (typeof step === 'symbol' ? String(step) : step));

function valueAt(document: unknown, path: Path): unknown {
  let value = document;
  for (const step of path) {
    if (typeof value !== 'object' || value === null || !Object.hasOwn(value, step)) return undefined;
    value = (value as Readonly<Record<string | number, unknown>>)[step];
  }
  return value;
}

function codeOfNumber(bound: number | bigint): FaultCode {
  const size = Math.abs(Number(bound));
  return size === LARGEST_NUMBER || size === LARGEST_COORDINATE_MM ? 'too-large' : 'out-of-range';
}

/** What is said of a value that is not there, or is of another kind. */
function faultOfType(path: Path, value: unknown, message: string): PlacelessFault {
  if (value === undefined) {
    const key = path[path.length - 1];
    const name = typeof key === 'string' ? `"${key}": ` : '';
    return { code: 'missing-key', path, found: 'nothing', expected: `${name}${message}`, hint: null };
  }
  if (value === Infinity || value === -Infinity)
    return { code: 'not-finite', path, found: describe(value), expected: message, hint: null };
  const hint =
    value === null
      ? 'leave the key out where there is no value'
      : typeof value === 'string' && isNumeric(value)
        ? `write ${value.trim()} without quotes`
        : null;
  return { code: 'wrong-type', path, found: describe(value), expected: message, hint };
}

const isNumeric = (text: string): boolean => /^\s*-?(?:0|[1-9][0-9]{0,15})(?:\.[0-9]{1,15})?\s*$/.test(text);

function faultOfChoice(path: Path, value: unknown, values: readonly unknown[], message: string): PlacelessFault {
  if (value === undefined) return faultOfType(path, value, message);
  const [first] = path;
  const isTop = path.length === 1;
  const code = isTop && first === 'format' ? 'wrong-format' : isTop && first === 'version' ? 'wrong-version' : 'not-a-choice';
  const names = values.filter((choice) => typeof choice === 'string');
  return {
    code,
    path,
    found: describe(value),
    expected: message,
    hint: typeof value === 'string' ? suggest(value, names) : null,
  };
}

/** Of the forms that a value may have, the findings of the one that was meant; null when none was. */
function meantBranch(branches: readonly (readonly Issue[])[]): readonly Issue[] | null {
  const isOfOtherKind = (issue: Issue): boolean =>
    issue.path.length === 0 && (issue.code === 'invalid_type' || issue.code === 'invalid_value');
  const candidates = branches.filter((issues) => issues.length > 0 && !issues.some(isOfOtherKind));
  return candidates.reduce<readonly Issue[] | null>(
    (best, issues) => (best === null || issues.length < best.length ? issues : best),
    null,
  );
}

function faultsOfIssue(document: unknown, issue: Issue, before: Path): PlacelessFault[] {
  const path = [...before, ...asPath(issue.path)];
  const value = valueAt(document, path);
  const { message } = issue;
  switch (issue.code) {
    case 'invalid_type':
      return [faultOfType(path, value, message)];
    case 'invalid_value':
      return [faultOfChoice(path, value, issue.values, message)];
    case 'unrecognized_keys': {
      const known = knownKeysAt(carSchema, document, path);
      return issue.keys
        .filter((key) => !FORBIDDEN_KEYS.has(key))
        .slice(0, MOST_FAULTS + 1)
        .map((key) => ({
          code: 'unknown-key',
          path: [...path, key],
          on: 'key',
          found: describe(key),
          expected: known.length === 0 ? 'no key here' : listNames(known),
          hint: suggest(key, known),
        }));
    }
    case 'invalid_key':
      return [
        {
          code: 'bad-name',
          path,
          on: 'key',
          found: describe(path[path.length - 1]),
          expected: issue.issues[0]?.message ?? message,
          hint: null,
        },
      ];
    case 'invalid_format':
      return [{ code: 'bad-name', path, found: describe(value), expected: message, hint: null }];
    case 'too_small':
    case 'too_big': {
      const bound = issue.code === 'too_small' ? issue.minimum : issue.maximum;
      const code = issue.origin === 'array' ? 'wrong-length' : issue.origin === 'string' ? 'empty-text' : codeOfNumber(bound);
      return [{ code, path, found: describe(value), expected: message, hint: null }];
    }
    case 'invalid_union': {
      if ('discriminator' in issue && issue.discriminator !== undefined) {
        if (value === undefined) return [faultOfType(path, value, message)];
        const kinds = ('options' in issue ? (issue.options as readonly unknown[]) : []).filter(
          (kind) => typeof kind === 'string',
        );
        return [
          {
            code: 'unknown-kind',
            path,
            found: describe(value),
            expected: listNames(kinds),
            hint: typeof value === 'string' ? suggest(value, kinds) : null,
          },
        ];
      }
      const meant = meantBranch(issue.errors);
      if (meant === null) return [faultOfType(path, value, message)];
      return meant.flatMap((inner) => faultsOfIssue(document, inner, path));
    }
    default:
      return [{ code: 'wrong-type', path, found: describe(value), expected: message, hint: null }];
  }
}

/** Everything in which a document is not of the car file's form. */
export function findSchemaFaults(document: unknown): PlacelessFault[] {
  let outcome: ReturnType<typeof carSchema.safeParse>;
  try {
    outcome = carSchema.safeParse(document);
  } catch (error) {
    // the library gathers its findings by spreading them, which hundreds of thousands of them overflow
    if (!(error instanceof RangeError)) throw error;
    return [{ code: 'more-faults', path: [], found: 'more faults than can be listed', expected: 'a car file', hint: null }];
  }
  if (outcome.success) return [];
  const faults: PlacelessFault[] = [];
  const judged = new Set<string>();
  for (const issue of outcome.error.issues) {
    // of one value the first finding counts: a list where text belongs is not "too short" as well
    const place = JSON.stringify(issue.path);
    if (issue.code !== 'unrecognized_keys') {
      if (judged.has(place)) continue;
      judged.add(place);
    }
    for (const fault of faultsOfIssue(document, issue, [])) faults.push(fault);
    if (faults.length > MOST_FAULTS) break;
  }
  return faults;
}
