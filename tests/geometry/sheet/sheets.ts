import {
  describeSheet,
  findSetup,
  STANDARD_UNITS,
  toMechanism,
  WHOLE_SHEET,
  type CarDocument,
  type Sheet,
  type SheetQuestion,
  type SheetSection,
} from '../../../geometry/index';

export const DAY = '2026-05-16';

/** A whole sheet of a setup, both axles, with what the file says is on the car. */
export const sheetQuestion = (document: CarDocument, setup: string, more: Partial<SheetQuestion> = {}): SheetQuestion => ({
  setup: { name: setup, setup: findSetup(document, setup) },
  onCar: document.onCar === undefined ? null : { name: document.onCar, setup: findSetup(document, document.onCar) },
  axles: ['front', 'rear'],
  clock: 'fitter',
  parts: WHOLE_SHEET,
  units: STANDARD_UNITS,
  date: DAY,
  fileName: 'a-car.jounce.json',
  ...more,
});

export const sheetOf = (document: CarDocument, setup: string, more: Partial<SheetQuestion> = {}): Sheet => {
  const sheet = describeSheet(toMechanism(document), sheetQuestion(document, setup, more));
  if (!sheet.ok) throw new Error(sheet.failure.message);
  return sheet.value;
};

/** The sections of one kind, in order. */
export const sectionsOf = <Kind extends SheetSection['kind']>(sheet: Sheet, kind: Kind) =>
  sheet.sections.filter((section): section is Extract<SheetSection, { kind: Kind }> => section.kind === kind);
