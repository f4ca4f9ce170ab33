import { FITUP_WARNING_CODES } from '../../geometry/index';

/**
 * Codes of the command line's own: those of the car file are with the car file, those of rows with the readings. Kept as one
 * list for the guide, which is made from it. Codes never change their meaning.
 */

/** Of faults in files that are not car files, or not there. */
export const COMMAND_FAULT_CODES = {
  'mesh-unreadable': 'The mesh of a part that is no STL, is cut off, is too large, or is not where the car file says.',
  'cannot-read': 'A file that is not there, that is a folder, or that the system does not let be read.',
  'bad-list': 'A line of a list of positions that is not what its header says, or a header that is none.',
  'bad-points': 'A row of a list of points that cannot be read: fields, a number, a name, an open quote.',
  'point-twice': 'Two rows of a list that are the same point of the same side.',
  'unnamed-point': 'A row of a list whose name is no point of the axle, with `--out`: say what it is with `--map`.',
  'datum-unknown': 'A reference point that the list, or the car, does not have.',
  'datum-too-few': 'Fewer than three reference points.',
  'datum-collinear': 'Reference points on one line.',
  'datum-mirrored': 'Reference points that fit only as a mirror image.',
} as const satisfies Readonly<Record<string, string>>;

/** Of warnings of `check` about setups, on top of those of the car file. */
export const CHECK_WARNING_CODES = {
  'setup-unreachable': 'A setup in which the car cannot be put together, or cannot stand.',
  'toe-adjuster-idle': 'A `toeAdjuster` that moves nothing that toe depends on: no setup can ask for a toe there.',
  'setup-toe-out-of-range': 'A setup whose toe needs its adjuster outside the range that the file gives.',
  'mesh-unreadable': COMMAND_FAULT_CODES['mesh-unreadable'],
  'mesh-open': FITUP_WARNING_CODES['mesh-open'],
  'kind-without-margin': FITUP_WARNING_CODES['kind-without-margin'],
  'thread-out': FITUP_WARNING_CODES['thread-out'],
  'thread-watch': FITUP_WARNING_CODES['thread-watch'],
  'thread-material': FITUP_WARNING_CODES['thread-material'],
} as const satisfies Readonly<Record<string, string>>;

/** Of warnings of rows that the command line adds to those of the readings. */
export const COMMAND_ROW_WARNING_CODES = {
  'axle-not-steered': 'The rack is asked for with `--axle`, and that axle is not steered: it stays as it is.',
} as const satisfies Readonly<Record<string, string>>;

/** Of warnings of `points`. */
export const POINTS_WARNING_CODES = {
  'unit-differs': 'The header of the list names another unit than `--units`.',
  'axes-differ': 'The header of the list says other directions than `--axes`.',
  'list-is-posed': 'A list whose points stand beside other design points: it is of a setup at a position.',
  'datum-planar': 'More than three reference points, all in one plane: a list from a mirrored frame would fit as well.',
  'datum-size': 'The reference points fit best at another size: the unit may be wrong.',
  'other-side': 'A point over the middle plane from the side that it is said to be on.',
  'one-side-only': 'A point to be averaged that was measured on one side.',
} as const satisfies Readonly<Record<string, string>>;

/** Of warnings of `sheet`. */
export const SHEET_WARNING_CODES = {
  'letters-missing': 'Letters that the typeface of the sheet does not have: they are printed as question marks.',
  'left-out': 'Something that was asked for found no room on two pages: the foot of the sheet says what.',
  'look-out': "Something of this setup is wrong or short, and is printed so: a broken rule, a toe past its adjuster's range.",
} as const satisfies Readonly<Record<string, string>>;

export type CommandFaultCode = keyof typeof COMMAND_FAULT_CODES;
export type CommandRowWarningCode = keyof typeof COMMAND_ROW_WARNING_CODES;
export type CheckWarningCode = keyof typeof CHECK_WARNING_CODES;
