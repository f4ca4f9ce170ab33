import path from 'node:path';
import {
  describeSheet,
  layOutSheet,
  lettersMissing,
  PAPERS,
  printedPart,
  printedSheet,
  sheetHtml,
  STANDARD_UNITS,
  WHOLE_SHEET,
  type NamedSetup,
  type Sheet,
  type SheetPage,
} from '../../geometry/index';
import type { Answer, Call } from './answer';
import type { LoadedCar } from './carSource';
import { CommandError, errorOfFailure, usageError } from './commandError';
import type { Options } from './options';
import { axlesAsked, changedSetup, chooseSetup } from './question';
import { heading, wrap, type TextStyle } from './textTable';
import { refuseUnwritable, writeWholeFile } from './wholeFile';

type Kind = 'pdf' | 'html';

/** `sheet`: writes the set-up sheet of a setup as PDF or HTML, whole or not at all. */
export async function answer({ car, options, reads }: Call): Promise<Answer> {
  if (!car) throw usageError('a car is needed');
  const { out = '', force = false } = options;
  const kind = kindOf(out);
  const date = dayOf(options.date);
  await refuseUnwritable(out, force, reads);
  const { name, setup } = changedSetup(car, options.setup, options.set);
  const onCar = onCarOf(car, options);
  const axles = axlesAsked(car, options);
  const described = describeSheet(car.mechanism, {
    setup: { name: options.set === undefined ? name : `${name}, changed`, setup },
    onCar,
    axles,
    clock: 'fitter',
    parts: WHOLE_SHEET,
    units: STANDARD_UNITS,
    date,
    fileName: reads[0] === undefined || reads[0] === '-' ? null : path.basename(reads[0]),
  });
  if (!described.ok) throw new CommandError(errorOfFailure(described.failure));
  const paper = PAPERS[options.paper ?? 'A4'];
  const sheet = printedPart(described.value, paper);
  const pages = layOutSheet(sheet, paper);
  const file = kind === 'pdf' ? await pdfOf(sheet, pages, date) : sheetHtml(sheet, pages);
  await writeWholeFile(out, file, force, reads);
  const warnings = warningsOf(sheet);
  const document = {
    car: car.document.name,
    setup: name,
    from: onCar?.name ?? null,
    axles,
    date,
    file: out,
    kind,
    paper: paper.name,
    pages: pages.length,
    changes: changesOf(sheet),
    warnings,
  };
  return { document, words: (style) => inWords(sheet, pages, out, warnings, style) };
}

/** The writer of PDF is a file of its own beside the bundle: no other verb loads it. */
async function pdfOf(sheet: Sheet, pages: readonly SheetPage[], date: string): Promise<Uint8Array> {
  const { sheetPdf } = await import('../../geometry/pdf/sheetPdf');
  return sheetPdf(printedSheet(sheet, pages, date));
}

function kindOf(out: string): Kind {
  if (out === '-') throw usageError('sheet writes a file: name one that ends in .pdf or .html');
  const ending = path.extname(out).toLowerCase();
  if (ending === '.pdf') return 'pdf';
  if (ending === '.html' || ending === '.htm') return 'html';
  throw usageError(`"${out}" ends neither in .pdf nor in .html`);
}

/** The day as given, or today where the person is. */
export function dayOf(given: string | undefined): string {
  if (given === undefined) {
    const now = new Date();
    const two = (number: number): string => String(number).padStart(2, '0');
    return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
  }
  const isDay = /^\d{4}-\d{2}-\d{2}$/.test(given) && new Date(`${given}T00:00:00Z`).toJSON()?.startsWith(given) === true;
  if (!isDay) throw usageError(`--date: "${given}" is not a day, as in 2026-05-16`);
  return given;
}

/** What is on the car now: as asked, else what the file says; null where neither does. */
function onCarOf(car: LoadedCar, { onCar }: Options): NamedSetup | null {
  const name = onCar ?? car.document.onCar;
  return name === undefined ? null : chooseSetup(car, name);
}

const changesOf = (sheet: Sheet) => sheet.sections.flatMap((section) => (section.kind === 'changes' ? section.steps : []));

interface SheetWarning {
  readonly code: 'left-out' | 'letters-missing' | 'look-out';
  readonly path: null;
  readonly message: string;
}

function warningsOf(sheet: Sheet): readonly SheetWarning[] {
  const faults = sheet.sections.flatMap((section) => (section.kind === 'cautions' ? section.faults : []));
  const missing = lettersMissing(JSON.stringify(sheet, (key, value: unknown) => (key === 'drawing' ? null : value)));
  return [
    ...faults.map((message) => ({ code: 'look-out', path: null, message }) as const),
    ...(sheet.leftOut === undefined ? [] : [{ code: 'left-out', path: null, message: sheet.leftOut } as const]),
    ...(missing.length === 0
      ? []
      : [{ code: 'letters-missing', path: null, message: `printed as question marks: ${missing.join(' ')}` } as const]),
  ];
}

function inWords(
  sheet: Sheet,
  pages: readonly SheetPage[],
  out: string,
  warnings: readonly SheetWarning[],
  style: TextStyle,
): string {
  const setup = sheet.head[0]?.value ?? '';
  const count = `${pages.length} ${pages.length === 1 ? 'page' : 'pages'} ${pages[0]?.paper.name ?? ''}`;
  return [
    heading(`${sheet.car}, setup ${setup}: ${count} written to ${out}`, style),
    ...warnings.flatMap(({ message }) => wrap(`  ${message}`, '    ')),
  ].join('\n');
}
