import { setupNames, type AxleName, type CarDocument, type PaperName, type SheetParts } from '../../geometry/index';
import { preferredList, preferredOf, type Preferences } from '../state/preferences';

/** Names under which the choices are kept, with their words; the first is the usual one. */
export const SHEET_PREFERENCES = {
  axles: { name: 'sheet.axles', words: ['both', 'front', 'rear'] },
  clock: { name: 'sheet.clock', words: ['fitter', 'file'] },
  paper: { name: 'sheet.paper', words: ['A4', 'Letter'] },
} as const;
export const SHEET_PARTS = 'sheet.parts';

/** What may be put on the sheet, as the options say it. */
export const PART_CHOICES: readonly { readonly part: keyof SheetParts; readonly label: string }[] = [
  { part: 'drawings', label: 'Drawings of the parts' },
  { part: 'boxes', label: 'Boxes for what was read' },
  { part: 'rules', label: 'What the rules allow' },
  { part: 'makes', label: 'What it makes' },
  { part: 'curves', label: 'Toe and camber through the travel' },
  { part: 'changes', label: 'What to change' },
];
const ALL_PARTS = PART_CHOICES.map(({ part }) => part);

/** What a person chose for sheets, kept from one start to the next. */
export interface SheetChoices {
  readonly axles: 'both' | AxleName;
  readonly clock: 'fitter' | 'file';
  readonly paper: PaperName;
  readonly parts: SheetParts;
}

export const sheetChoices = (preferences: Preferences): SheetChoices => {
  const { axles, clock, paper } = SHEET_PREFERENCES;
  const shown = preferredList(preferences, SHEET_PARTS, ALL_PARTS);
  const has = (part: keyof SheetParts): boolean => shown.includes(part);
  return {
    axles: preferredOf(preferences, axles.name, axles.words),
    clock: preferredOf(preferences, clock.name, clock.words),
    paper: preferredOf(preferences, paper.name, paper.words),
    parts: {
      drawings: has('drawings'),
      boxes: has('boxes'),
      rules: has('rules'),
      makes: has('makes'),
      changes: has('changes'),
      curves: has('curves'),
    },
  };
};

/** The list of parts with one put on the sheet or taken off it. */
export const withPart = (parts: SheetParts, part: keyof SheetParts, isShown: boolean): readonly string[] =>
  ALL_PARTS.filter((one) => (one === part ? isShown : parts[one]));

/** The axles of the car that are wanted; all of them where the car has none of the wanted ones. */
export const axlesOf = (document: CarDocument, wanted: SheetChoices['axles']): readonly AxleName[] => {
  const has = (['front', 'rear'] as const).filter((axle) => document[axle] !== undefined);
  const chosen = has.filter((axle) => wanted === 'both' || wanted === axle);
  return chosen.length === 0 ? has : chosen;
};

/** What is picked for this sheet alone: null follows the bench, or what the file says is on the car. */
export interface SheetPicks {
  readonly setup: string | null;
  /** empty: nobody says */
  readonly onCar: string | null;
}

export const NO_PICKS: SheetPicks = { setup: null, onCar: null };

/** The setups that the picks lead to; one that the car has not, or has no longer, counts as not picked. */
export const pickedSetups = (
  document: CarDocument,
  bench: string,
  picks: SheetPicks,
): { readonly setup: string; readonly onCar: string | null } => {
  const names = setupNames(document);
  const known = (name: string | null | undefined): string | null =>
    typeof name === 'string' && names.includes(name) ? name : null;
  return {
    setup: known(picks.setup) ?? known(bench) ?? names[0] ?? bench,
    onCar: picks.onCar === '' ? null : (known(picks.onCar) ?? known(document.onCar)),
  };
};

/** YYYY-MM-DD where the person is. */
export const dayOf = (now: Date): string => {
  const two = (number: number): string => String(number).padStart(2, '0');
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
};
