import { fail, succeed, type Result } from '../core/result';
import type { CarDocument } from './document';
import { describe, formatPath, type Fault, type PlacelessFault, type Warning } from './fault';
import { MOST_FAULTS, type FaultCode } from './faultCodes';
import { isObject } from './place';
import { judgeRules } from './rules/judgeRules';
import { findSchemaFaults } from './schema/schemaFaults';
import { decodeText, fileTooLarge, LARGEST_FILE_BYTES, utf16 } from './text/decodeText';
import { findKeyFaults } from './text/keyFaults';
import { placeFaults } from './text/linesAndColumns';
import { DEEPEST_NESTING, findTooDeep } from './text/nesting';
import { findSyntaxFault } from './text/syntaxFault';
import { judgeVersion } from './versions';
import { findWarnings } from './warnings';

/** A car file that was read: a valid document, the text it came from, and what is odd about it. */
export interface ParsedCar {
  readonly document: CarDocument;
  readonly warnings: readonly Warning[];
  /** the version that the file was written in, when it was older than this program's */
  readonly olderVersion?: number;
  /** the text as read, without a byte-order mark */
  readonly text: string;
}

export interface BadCarFile {
  readonly faults: readonly Fault[];
}

/** A fault found on the linkage itself; `path` as it is printed. */
export interface MechanismFault {
  readonly code: string;
  readonly path: string;
  readonly found: string | null;
  readonly expected: string | null;
  readonly hint: string | null;
}

export interface ParseOptions {
  /** Rules that need the linkage solved (singular at design); asked only of a document that breaks no other rule. */
  readonly judge?: (document: CarDocument) => readonly MechanismFault[];
}

const BYTE_ORDER_MARK = '\uFEFF';

const one = (text: string, fault: PlacelessFault): Result<never, BadCarFile> => fail({ faults: placeFaults(text, [fault]) });

/** A fault of the file as a whole, which has no place in its text. */
const ofFile = (fault: PlacelessFault, place: { line: number; column: number } | null = null): Result<never, BadCarFile> =>
  fail({
    faults: [
      {
        code: fault.code,
        path: null,
        line: place?.line ?? null,
        column: place?.column ?? null,
        found: fault.found,
        expected: fault.expected,
        hint: fault.hint ?? null,
      },
    ],
  });

/**
 * Reads a car file: judges the text, then the form, then what fields ask of one another, then the linkage.
 * A file that breaks a rule is refused whole, with every fault that was found.
 *
 * @param given - the text of the file; a byte-order mark is read and dropped
 * @param options - `judge`: rules that need the linkage
 * @returns the document as it stands in the file (its unit, degrees, the order of its keys), or the faults in the order of the text
 */
export function parseCar(given: string, options: ParseOptions = {}): Result<ParsedCar, BadCarFile> {
  const text = given.startsWith(BYTE_ORDER_MARK) ? given.slice(1) : given;
  const refused = judgeText(text);
  if (refused !== null) return refused;
  let parsed: unknown;
  try {
    parsed = JSON.parse(text);
  } catch {
    return one(text, findSyntaxFault(text));
  }
  if (!isObject(parsed)) {
    return one(text, {
      code: 'not-an-object',
      path: [],
      found: describe(parsed),
      expected: 'a car: an object { "format": "jounce-car", … }',
    });
  }
  const version = judgeVersion(parsed);
  if (version.kind === 'newer') return one(text, version.fault);
  const faults = findFaults(text, version.document);
  if (faults.length > 0) return fail({ faults: listFaults(text, faults) });
  // the schema and the rules have just judged it: this is what they say it is
  const document = version.document as CarDocument;
  const onLinkage = options.judge?.(document) ?? [];
  if (onLinkage.length > 0) return fail({ faults: placeMechanismFaults(text, onLinkage) });
  const warnings = findWarnings(document);
  if (version.kind === 'current') return succeed({ document, warnings, text });
  const older: Warning = {
    code: 'older-version',
    path: 'version',
    message: `The file is of version ${version.version}; it was brought up to this one in memory.`,
  };
  return succeed({ document, warnings: [older, ...warnings], olderVersion: version.version, text });
}

/** As `parseCar`, from the bytes of a file: UTF-8, with or without a byte-order mark. */
export function parseCarBytes(bytes: Uint8Array, options: ParseOptions = {}): Result<ParsedCar, BadCarFile> {
  const decoded = decodeText(bytes);
  return decoded.ok ? parseCar(decoded.value, options) : ofFile(decoded.failure, decoded.failure.place ?? null);
}

/** What can be said of a text before it is parsed. */
function judgeText(text: string): Result<never, BadCarFile> | null {
  const bytes = utf8Length(text);
  if (bytes > LARGEST_FILE_BYTES) return ofFile(fileTooLarge(bytes));
  // text whose every other character is NUL was UTF-16, decoded as something else
  if (text.charCodeAt(0) === 0 || text.charCodeAt(1) === 0) return ofFile(utf16('UTF-16'));
  if (/^[\t\n\r ]*$/.test(text))
    return ofFile({ code: 'empty-file', path: [], found: 'nothing', expected: 'a car: an object { "format": "jounce-car", … }' });
  const tooDeep = findTooDeep(text);
  if (tooDeep === null) return null;
  return one(text, {
    code: 'nesting-too-deep',
    path: [],
    found: `nesting over ${DEEPEST_NESTING}`,
    expected: `nesting of ${DEEPEST_NESTING} at most`,
    offset: tooDeep,
  });
}

/** Sections that the rest of the file names things of. */
const NAMED_SECTIONS = ['front', 'rear', 'setups', 'parts', 'points', 'rods', 'adjusters', 'spring', 'damper', 'antiRollBar'];
const REFERENCES: readonly FaultCode[] = [
  'missing-axle',
  'missing-part',
  'missing-point',
  'point-not-movable',
  'unknown-adjuster',
  'unknown-carrier',
  'unknown-hole',
  'unknown-part',
  'unknown-point',
  'unknown-rod',
  'unknown-setup',
];

function findFaults(text: string, document: unknown): PlacelessFault[] {
  const ofForm = findSchemaFaults(document);
  const isSectionLost = ofForm.some(
    ({ code, path }) => code === 'wrong-type' && path.length <= 2 && NAMED_SECTIONS.includes(String(path[path.length - 1])),
  );
  // what is named may well be in a section that could not be read: then it is not called unknown
  const ofRules = judgeRules(document).filter(({ code }) => !isSectionLost || !REFERENCES.includes(code));
  const seen = new Set<string>();
  return [...findKeyFaults(text), ...ofForm, ...ofRules].filter(({ code, path, offset }) => {
    const key = JSON.stringify([code, path, offset]);
    return !seen.has(key) && seen.add(key);
  });
}

function utf8Length(text: string): number {
  if (text.length * 3 <= LARGEST_FILE_BYTES || text.length > LARGEST_FILE_BYTES) return text.length;
  let bytes = text.length;
  for (let i = 0; i < text.length; i++) {
    const unit = text.charCodeAt(i);
    // each half of a surrogate pair stands for two of the four bytes
    if (unit >= 0x80) bytes += unit >= 0x800 && (unit < 0xd800 || unit > 0xdfff) ? 2 : 1;
  }
  return bytes;
}

function listFaults(text: string, faults: readonly PlacelessFault[]): Fault[] {
  const listed = placeFaults(text, faults.slice(0, MOST_FAULTS));
  if (faults.length > listed.length)
    listed.push({
      code: 'more-faults',
      path: null,
      line: null,
      column: null,
      found: `more than ${MOST_FAULTS} faults`,
      expected: null,
      hint: 'mend these first',
    });
  return listed;
}

/** The linkage's faults name their place as text ("front.rods"); their line and column are looked up. */
function placeMechanismFaults(text: string, faults: readonly MechanismFault[]): Fault[] {
  return faults.map((fault) => {
    const path = fault.path === '' ? [] : fault.path.split('.');
    const [placed] = placeFaults(text, [
      { code: 'singular-linkage', path, found: fault.found, expected: fault.expected, hint: fault.hint },
    ]);
    return { ...placed, code: fault.code, path: formatPath(path) };
  });
}
