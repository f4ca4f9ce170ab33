import {
  describeSheet,
  findSetup,
  layOutSheet,
  lettersMissing,
  PAPERS,
  printedPart,
  toMechanism,
  type CarDocument,
  type NamedSetup,
  type Sheet,
  type SheetPage,
  type UnitChoice,
} from '../../geometry/index';
import { memoLast } from '../compute/memoLast';
import { axlesOf, type SheetChoices } from './sheetChoices';

/** What a sheet of the window is asked for. */
export interface WindowSheet {
  readonly document: CarDocument;
  readonly setup: string;
  readonly onCar: string | null;
  readonly choices: SheetChoices;
  readonly units: UnitChoice;
  readonly date: string;
  readonly fileName: string | null;
}

export type MadeSheet =
  | {
      readonly ok: true;
      readonly sheet: Sheet;
      readonly pages: readonly SheetPage[];
      /** what of this setup is wrong or short, as it is printed */
      readonly faults: readonly string[];
      /** letters that are printed as question marks */
      readonly missing: readonly string[];
    }
  | { readonly ok: false; readonly message: string };

const mechanismOf = memoLast(toMechanism);

const named = (document: CarDocument, name: string): NamedSetup => ({ name, setup: findSetup(document, name) });

/** The sheet as it is shown, printed and saved: one description, laid out once. */
export const madeSheet = ({ document, setup, onCar, choices, units, date, fileName }: WindowSheet): MadeSheet => {
  const described = describeSheet(mechanismOf(document), {
    setup: named(document, setup),
    onCar: onCar === null ? null : named(document, onCar),
    axles: axlesOf(document, choices.axles),
    clock: choices.clock,
    parts: choices.parts,
    units,
    date,
    fileName,
  });
  if (!described.ok) return { ok: false, message: described.failure.message };
  const paper = PAPERS[choices.paper];
  const sheet = printedPart(described.value, paper);
  return {
    ok: true,
    sheet,
    pages: layOutSheet(sheet, paper),
    faults: sheet.sections.flatMap((section) => (section.kind === 'cautions' ? section.faults : [])),
    missing: lettersMissing(JSON.stringify(sheet, (key, value: unknown) => (key === 'drawing' ? null : value))),
  };
};
