import type { AxleName, SetupDocument } from '../car/document';
import type { Shape } from '../drawing/shape';
import type { UnitChoice } from '../format/unitChoice';

/** What is put on the sheet besides the settings and the cautions, which are always there. */
export interface SheetParts {
  /** the parts as they stand */
  readonly drawings: boolean;
  /** boxes for what was read */
  readonly boxes: boolean;
  /** limits of the file beside the targets */
  readonly rules: boolean;
  /** what the setup makes: roll centre, trail, bump steer … */
  readonly makes: boolean;
  /** what to change from the setup now on the car */
  readonly changes: boolean;
  /** toe and camber through the travel */
  readonly curves: boolean;
}

export const WHOLE_SHEET: SheetParts = { drawings: true, boxes: true, rules: true, makes: true, changes: true, curves: true };

export interface NamedSetup {
  readonly name: string;
  readonly setup: SetupDocument;
}

/** What a sheet is asked for. */
export interface SheetQuestion {
  readonly setup: NamedSetup;
  /** the setup that is on the car now; null where nobody says */
  readonly onCar: NamedSetup | null;
  readonly axles: readonly AxleName[];
  /** clock faces as the fitter sees them, each side from its own place, or as the file keeps them */
  readonly clock: 'fitter' | 'file';
  readonly parts: SheetParts;
  readonly units: UnitChoice;
  /** day of the sheet, YYYY-MM-DD */
  readonly date: string;
  /** name of the car file; null where it has none */
  readonly fileName: string | null;
}

/** A set-up sheet in words, numbers and drawings: what stands on it, not where. */
export interface Sheet {
  readonly car: string;
  readonly head: readonly Labelled[];
  readonly sections: readonly SheetSection[];
  /** what was asked for and found no room, in words for the foot of the sheet; absent where nothing was left out */
  readonly leftOut?: string;
}

export interface Labelled {
  readonly label: string;
  readonly value: string;
}

export type SheetSection =
  | SettingsSection
  | ChangesSection
  | TargetsSection
  | CornersSection
  | FiguresSection
  | CurvesSection
  | NotesSection
  | CautionsSection;

/** The settings of one axle, a row a part. */
export interface SettingsSection {
  readonly kind: 'settings';
  readonly heading: string;
  readonly note: string;
  readonly axle: AxleName;
  readonly rows: readonly SettingRow[];
}

export interface SettingRow {
  readonly name: string;
  /** one size of the part, or what the number is of */
  readonly detail: string;
  readonly left: PartSetting;
  readonly right: PartSetting;
  /** words say it all: nothing is set, or a number that the alignment has again; drawn only where there is room */
  readonly isPlain: boolean;
  /** the targets say it again for each side, with room for what was read; it is to be done all the same, and never left out */
  readonly isTarget?: true;
  /** why the rules lock it; null where they do not */
  readonly locked: string | null;
  /** the maker's torque as somebody typed it; null: a line to write it on; absent: the row has no bolt */
  readonly torque?: string | null;
}

export interface PartSetting {
  /** what the fitter does or reads, short */
  readonly words: string;
  readonly detail: string;
  /** in a square of `PART_SIZE`; null where there is nothing to draw */
  readonly drawing: readonly Shape[] | null;
}

/** What to do, in the order that needs the least doing over. */
export interface ChangesSection {
  readonly kind: 'changes';
  readonly heading: string;
  readonly note: string;
  readonly axles: readonly AxleName[];
  readonly steps: readonly ChangeStep[];
}

export interface ChangeStep {
  readonly title: string;
  readonly items: readonly ChangeItem[];
}

/** One thing to do, at one axle or at the car as a whole. */
export interface ChangeItem {
  readonly axle: AxleName | null;
  readonly text: string;
}

/** Readings to set to, with what is allowed and room for what was read. */
export interface TargetsSection {
  readonly kind: 'targets';
  readonly heading: string;
  readonly note: string;
  readonly rows: readonly TargetRow[];
  readonly hasRules: boolean;
  readonly hasBoxes: boolean;
}

export interface TargetRow {
  readonly name: string;
  readonly unit: string;
  /** of each wheel, or of the axle as one; a dash where there is none */
  readonly value: { readonly left: string; readonly right: string } | string;
  /** "± 0.10"; empty where nobody says */
  readonly tolerance: string;
  /** "−4.00 … 0.00"; empty where no rule is given */
  readonly rule: string;
  readonly isBroken: boolean;
}

/** Numbers of the four corners: as recorded with the setup, or a blank to write on. */
export interface CornersSection {
  readonly kind: 'corners';
  readonly heading: string;
  /** what the file knows of the car's weight */
  readonly note: string;
  readonly axles: readonly AxleName[];
  readonly rows: readonly CornerRow[];
  readonly hasBoxes: boolean;
}

export interface CornerRow {
  readonly name: string;
  readonly unit: string;
  /** front left, front right, rear left, rear right, of the axles on the sheet; empty where nothing is recorded */
  readonly values: readonly string[];
}

/** Names with one value each. */
export interface FiguresSection {
  readonly kind: 'figures';
  readonly heading: string;
  readonly figures: readonly Labelled[];
}

/** Readings of an axle through its travel, a small plot each; left out, and said so, where they would cost a third page. */
export interface CurvesSection {
  readonly kind: 'curves';
  readonly heading: string;
  /** what the lines are */
  readonly note: string;
  readonly plots: readonly CurvePlot[];
}

export interface CurvePlot {
  /** "Toe, front" */
  readonly name: string;
  readonly unit: string;
  /** travel from standing, as it is read; evenly apart, its middle is where the car stands */
  readonly travels: readonly number[];
  readonly travelUnit: string;
  readonly curves: readonly SheetCurve[];
  /** ends of all its curves */
  readonly lowest: SaidValue;
  readonly highest: SaidValue;
  /** no less is drawn from end to end: what cannot be read is no wave */
  readonly span: number;
}

/** A reading in contract units, and as it is read. */
export interface SaidValue {
  readonly value: number;
  readonly said: string;
}

export interface SheetCurve {
  /** "both" where left and right are the same as far as one can read; "was": of the setup on the car now */
  readonly of: 'left' | 'right' | 'both' | 'was';
  readonly name: string;
  /** one for each travel */
  readonly values: readonly SaidValue[];
}

export interface NotesSection {
  readonly kind: 'notes';
  readonly heading: string;
  readonly lines: readonly string[];
}

/** What has to be seen to before the car runs; never left out. */
export interface CautionsSection {
  readonly kind: 'cautions';
  readonly heading: string;
  /** what of this very setup is wrong or short: broken rules, adjusters past their range */
  readonly faults: readonly string[];
  readonly lines: readonly string[];
}
