/**
 * Codes of the command line's own: those of the car file are with the car file, those of rows with the readings. Kept as one
 * list for the guide, which is made from it. Codes never change their meaning.
 */

/** Of faults in files that are not car files, or not there. */
export const COMMAND_FAULT_CODES = {
  'cannot-read': 'A file that is not there, that is a folder, or that the system does not let be read.',
  'bad-list': 'A line of a list of positions that is not what its header says, or a header that is none.',
} as const satisfies Readonly<Record<string, string>>;

/** Of warnings of `check` about setups, on top of those of the car file. */
export const CHECK_WARNING_CODES = {
  'setup-unreachable': 'A setup in which the car cannot be put together, or cannot stand.',
  'setup-toe-out-of-range': 'A setup whose toe needs its adjuster outside the range that the file gives.',
} as const satisfies Readonly<Record<string, string>>;

export type CommandFaultCode = keyof typeof COMMAND_FAULT_CODES;
export type CheckWarningCode = keyof typeof CHECK_WARNING_CODES;
