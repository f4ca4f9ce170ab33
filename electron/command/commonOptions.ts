import type { OptionSpec } from './optionSpecs';

// Options that several verbs have.

const SETUP: OptionSpec = {
  name: 'setup',
  kind: 'text',
  value: 'NAME',
  help: 'setup of the car; the first in the file when not given',
};
const SET: OptionSpec = {
  name: 'set',
  kind: 'settings',
  value: 'WHAT=VALUE',
  help: "changes the setup for this call only, again and again: front.both.rearBush=90 (or none; or 3h, as seen on the left), front.setToe=0.05, rear.rideHeight=-10; in the file's unit",
};
const PRINTING: readonly OptionSpec[] = [
  { name: 'json', kind: 'flag', value: '', help: 'one JSON document on standard output, also for an error', printing: true },
  { name: 'help', kind: 'flag', value: '', help: 'this text', printing: true },
  { name: 'version', kind: 'flag', value: '', help: 'the version of the program', printing: true },
];
export const COMMON: readonly OptionSpec[] = [SETUP, SET, ...PRINTING];
/** Of a verb that looks at no car. */
export const WITHOUT_CAR: readonly OptionSpec[] = [{ ...SETUP, idle: true }, { ...SET, idle: true }, ...PRINTING];

export const SETUPS: OptionSpec = {
  name: 'setups',
  kind: 'names',
  value: 'A,B',
  help: 'the setups in use, in place of --setup: all of them are looked at',
};
export const AXLE: OptionSpec = { name: 'axle', kind: 'axle', value: 'front|rear', help: 'this axle only; both when not given' };
export const TRAVEL: OptionSpec = {
  name: 'travel',
  kind: 'travel',
  value: 'Z|L,R',
  help: 'wheel travel in mm from where the car stands, + bump; left and right may differ; with roll it is heave, + body down',
};
export const RACK: OptionSpec = {
  name: 'rack',
  kind: 'number',
  value: 'MM',
  help: "rack travel from centre in mm, + along the rack's axis; steered axles only",
};
export const ROLL: OptionSpec = {
  name: 'roll',
  kind: 'number',
  value: 'DEG',
  help: 'body roll in degrees, + left side up, as in a left turn',
};

/** What is gone through: a motion, or positions from a file. */
export const POSITIONS: readonly OptionSpec[] = [
  { name: 'motion', kind: 'motion', value: 'bump|roll|steer', help: 'what is swept' },
  { name: 'from', kind: 'number', value: 'A', help: 'first input' },
  { name: 'to', kind: 'number', value: 'B', help: 'last input' },
  { name: 'steps', kind: 'count', value: 'N', help: 'number of positions, ends included' },
  { name: 'list', kind: 'text', value: 'IN.csv', help: 'positions from a file instead of a motion; - is standard input' },
];

export const TOE_RESET: OptionSpec = {
  name: 'toe-reset',
  kind: 'number?',
  value: '[DEG]',
  help: "toe is set after every move: to DEG, or to the setup's own toe, else the design's; without it toe falls as the setup has it",
};
export const LOCKED: OptionSpec = { name: 'locked', kind: 'flag', value: '', help: 'adjusters too that the rules lock' };
export const WORKERS: OptionSpec = {
  name: 'workers',
  kind: 'count',
  value: 'N',
  most: 64,
  help: 'threads that work on it at most; as many as there are cores when not given. The answer is the same with any number',
};
export const SIDE: OptionSpec = {
  name: 'side',
  kind: 'choice',
  value: 'left|right|both',
  help: 'the wheels on which an adjuster is turned; both when not given',
};
