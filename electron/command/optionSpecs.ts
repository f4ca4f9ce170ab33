import { FIT_UP_VERBS } from './fitUpVerbs';
import { COMMON, WITHOUT_CAR, AXLE, TRAVEL, RACK, ROLL, TOE_RESET, LOCKED, WORKERS, SIDE, POSITIONS } from './commonOptions';

/** What the value of an option is. `settings` may be given again and again. */
export type OptionKind =
  | 'flag'
  | 'text'
  /** one name or several, with commas between them */
  | 'names'
  | 'number'
  | 'count'
  | 'travel'
  /** two numbers with a comma */
  | 'pair'
  | 'axle'
  | 'motion'
  | 'choice'
  | 'settings'
  /** a number where one follows, else a flag */
  | 'number?'
  /** a document, or the path of one */
  | 'document';

export interface OptionSpec {
  /** as spelled after the dashes, and as key in `batch` */
  readonly name: string;
  /** under which its value is kept, where a name means another thing to another verb */
  readonly key?: 'onCar' | 'sheets';
  readonly kind: OptionKind;
  /** how the value is written in help; empty for a flag */
  readonly value: string;
  readonly help: string;
  /** the largest that a count may be, where that is less than anybody's patience */
  readonly most?: number;
  /** it makes the verb write a file, which `batch` refuses */
  readonly writes?: true;
  /** it says how to print, or where the car is: no key of a batch's options */
  readonly printing?: true;
  /** every verb takes it, and to this one it says nothing: not in its help */
  readonly idle?: true;
}

export type VerbName =
  | 'check'
  | 'readings'
  | 'sweep'
  | 'influence'
  | 'ways'
  | 'reach'
  | 'map'
  | 'clearance'
  | 'joints'
  | 'stroke'
  | 'loads'
  | 'keep-out'
  | 'template'
  | 'sheet'
  | 'points'
  | 'schema'
  | 'batch';

export interface VerbSpec {
  readonly name: VerbName;
  /** positional arguments as help writes them; empty when there is none */
  readonly positional: string;
  readonly takesCar: boolean;
  /** the option that a second word is the value of */
  readonly second?: 'wanted' | 'question' | 'out';
  /** it writes a file, which `batch` refuses */
  readonly writes?: true;
  /** the car comes with `--car`, and in a batch with the line's own key; the first word is a file of another kind */
  readonly carByOption?: true;
  readonly summary: string;
  /** what else there is to know, one paragraph each */
  readonly details: readonly string[];
  readonly options: readonly OptionSpec[];
  readonly examples: readonly string[];
}

export const VERBS: readonly VerbSpec[] = [
  {
    name: 'check',
    positional: 'CAR',
    takesCar: true,
    summary: 'reads and judges a car file',
    details: [
      'Says every fault with its line and column and what is expected there, and warns of what is odd without being wrong.',
    ],
    options: COMMON,
    examples: ['jounce check samples/saltmarsh-hatch.jounce.json'],
  },
  {
    name: 'readings',
    positional: 'CAR',
    takesCar: true,
    summary: 'every reading at one position, and the difference to another setup',
    details: [
      'Without a position: where the car stands in its setup. What every reading means: jounce help readings-list, or jounce help camber for one.',
      "Limits of the file are judged standing, rack 0, no roll, after the setup's toe.",
    ],
    options: [
      { name: 'against', kind: 'text', value: 'NAME', help: 'also the same position in this setup, and this less that' },
      AXLE,
      TRAVEL,
      RACK,
      ROLL,
      ...COMMON,
    ],
    examples: [
      'jounce readings samples/saltmarsh-hatch.jounce.json --axle front --travel 25 --rack 10',
      'jounce readings samples/saltmarsh-hatch.jounce.json --set front.both.rearBush=3h --against Wet',
    ],
  },
  {
    name: 'sweep',
    positional: 'CAR',
    takesCar: true,
    summary: 'readings over a motion, or over a list of positions',
    details: [
      'The ends are included. Bump and steer are in mm (steer moves the rack), roll in degrees; travel counts from where the car stands. What is swept is not given as a fixed flag too.',
      'A list is CSV with the header travelLeft,travelRight,rack or travelLeft,travelRight,rack,roll; its rows are numbered from 1 as input.',
      'A position that cannot be reached stays in the answer as a row with its reason.',
    ],
    options: [
      ...POSITIONS,
      {
        name: 'csv',
        kind: 'text',
        value: 'OUT.csv',
        help: 'writes every reading as CSV; - is standard output, instead of the table',
        writes: true,
      },
      { name: 'force', kind: 'flag', value: '', help: 'lets --csv replace an existing file', writes: true },
      { name: 'against', kind: 'text', value: 'NAME', help: 'also the same positions in this setup, and this less that' },
      AXLE,
      TRAVEL,
      RACK,
      ROLL,
      ...COMMON,
    ],
    examples: [
      'jounce sweep samples/saltmarsh-hatch.jounce.json --motion bump --from -60 --to 60 --steps 13',
      'jounce sweep samples/chalkboard.jounce.json --motion roll --from -3 --to 3 --steps 7 --csv a.csv',
    ],
  },
  {
    name: 'influence',
    positional: 'CAR',
    takesCar: true,
    summary: 'what one step of every adjuster does to every reading',
    details: [
      'One step of the part itself each way from the setup, by exact re-solves: a change is the difference of two calls of readings. Printed are the readings whose change is a tenth of what matters or more (tolerances of the file, else defaults); --json has them all.',
      'A bushing that is not fitted is tried at each of its marks. Curved: one step up does not undo one step down. Alike: two adjusters of one axle do the same to what matters, within 5 degrees of direction. Independent: how many readings can be set without moving each other.',
    ],
    options: [AXLE, SIDE, TOE_RESET, LOCKED, TRAVEL, RACK, ROLL, WORKERS, ...COMMON],
    examples: ['jounce influence samples/saltmarsh-hatch.jounce.json --axle front --toe-reset'],
  },
  {
    name: 'ways',
    positional: 'CAR READING=VALUE',
    takesCar: true,
    second: 'wanted',
    summary: 'every adjuster that brings one reading to a value, and what else it changes',
    details: [
      'Each way stands on a step that the part really has; between the steps the answer says where the value is met exactly. A clock that meets the value twice is two ways. Limits of the file are walls, and what the rules lock stays.',
      'Those that reach come first, then those that change least of what matters. Of a pair the marks are shown that reach with the least change of everything else.',
    ],
    options: [
      { name: 'wanted', kind: 'text', value: 'READING=VALUE', help: 'in place of the second word' },
      AXLE,
      SIDE,
      { name: 'tolerance', kind: 'number', value: 'T', help: "how near counts as reached; the reading's own when not given" },
      { name: 'pairs', kind: 'flag', value: '', help: 'every pair of adjusters too' },
      TOE_RESET,
      LOCKED,
      WORKERS,
      TRAVEL,
      RACK,
      ROLL,
      ...COMMON,
    ],
    examples: ['jounce ways samples/saltmarsh-hatch.jounce.json camber=-2.4 --axle front --toe-reset'],
  },
  {
    name: 'reach',
    positional: 'CAR QUESTION',
    takesCar: true,
    second: 'question',
    summary: 'the settings that come nearest to everything wanted at once',
    details: [
      "QUESTION is a JSON file, or the name of a question that the car file keeps. Wanted are readings with a value or a range, at a position or over a stretch of travel; may move what is listed, on its real steps, inside its range and the file's limits.",
      'Up to 200,000 combinations are all tried; past that they are searched from many starts, and the answer says how many agreed. Where it cannot be reached, the answer is the nearest, and the one range or limit that would help most.',
    ],
    options: [
      { name: 'question', kind: 'document', value: 'QUESTION', help: 'in place of the second word' },
      LOCKED,
      WORKERS,
      ...COMMON,
    ],
    examples: ['jounce reach samples/saltmarsh-hatch.jounce.json samples/camber-and-roll-centre.question.json'],
  },
  {
    name: 'map',
    positional: 'CAR',
    takesCar: true,
    summary: 'one reading over two adjusters, or over an adjuster and a motion',
    details: [
      'X and Y are dotted names of adjusters (front.both.plateAcross), or travel, rack or roll. The range of an adjuster is its own; that of a motion is what the file gives of it, or --from and --to.',
    ],
    options: [
      { name: 'x', kind: 'text', value: 'NAME', help: 'what varies along a row' },
      { name: 'y', kind: 'text', value: 'NAME', help: 'what varies from row to row' },
      {
        name: 'reading',
        kind: 'text',
        value: 'NAME',
        help: 'dotted name of the reading: front.left.camber, rear.both.track, wholeCar.rake',
      },
      { name: 'nx', kind: 'count', value: 'N', help: 'values along X; 25 when not given' },
      { name: 'ny', kind: 'count', value: 'N', help: 'values along Y; 25 when not given' },
      { name: 'from', kind: 'number', value: 'A', help: 'first value of a motion' },
      { name: 'to', kind: 'number', value: 'B', help: 'last value of a motion' },
      TOE_RESET,
      WORKERS,
      TRAVEL,
      RACK,
      ROLL,
      ...COMMON,
    ],
    examples: [
      'jounce map samples/saltmarsh-hatch.jounce.json --x front.both.plateAcross --y travel \\\n    --reading front.left.camber --nx 5 --ny 5',
    ],
  },
  ...FIT_UP_VERBS,
  {
    name: 'sheet',
    positional: 'CAR OUT',
    takesCar: true,
    second: 'out',
    writes: true,
    summary: 'the set-up sheet that goes to the car, as PDF or HTML',
    details: [
      "OUT ends in .pdf or .html. Both have the same pages: settings in the fitter's words and as the parts stand, what to change from the setup now on the car in the order that needs the least doing over, what to set to with tolerances and rules and boxes for what was read, what it makes, and what has to be seen to before the car runs.",
      "Torques and other makers' figures are those that the car file gives; else there is a line to write them on. The same car, setup and day give the same file, to the last byte.",
    ],
    options: [
      { name: 'out', kind: 'text', value: 'OUT', help: 'in place of the second word', writes: true },
      { name: 'paper', kind: 'choice', value: 'A4|Letter', help: 'size of the paper; A4 when not given' },
      AXLE,
      {
        name: 'from',
        key: 'onCar',
        kind: 'text',
        value: 'NAME',
        help: "the setup that is on the car now; the file's onCar when not given",
      },
      { name: 'date', kind: 'text', value: 'YYYY-MM-DD', help: 'day of the sheet; today when not given' },
      { name: 'force', kind: 'flag', value: '', help: 'lets it replace an existing file', writes: true },
      ...COMMON,
    ],
    examples: ['jounce sheet samples/saltmarsh-hatch.jounce.json sprint.pdf --setup Sprint'],
  },
  {
    name: 'points',
    positional: '[IN.csv]',
    takesCar: false,
    carByOption: true,
    summary: 'coordinates in from any frame, and out of any setup at any position',
    details: [
      "With a list: shows every point of it as read, in the car's frame, and what it would replace. Nothing is written without --out. A list is name,x,y,z with commas, semicolons or tabs; a header may name the columns in any order, axle and side among them.",
      'Without a list: every point of the car in its setup at a position, beside design, in mm, as CSV. With --path: where one point is all along a motion or a list of positions, relative to the body, left and right.',
      "Reference points are named points of the car (--datum armFront,ballJoint,strutTop), or a CSV of points in the car's frame, in mm unless its header says another unit. The list is moved onto them by the least-squares rigid fit; what each misses by is told.",
      "Names agree but for case, blanks, underscores and hyphens. With --side both a row's side is its column, else the word left or right in its name, else the sign of y.",
    ],
    options: [
      { name: 'car', kind: 'text', value: 'CAR', help: 'the car file; - is standard input', printing: true },
      { name: 'in', kind: 'text', value: 'IN.csv', help: 'the list, in place of the first word; - is standard input' },
      AXLE,
      {
        name: 'axes',
        kind: 'text',
        value: 'X,Y,Z',
        help: 'where the axes of the list point: forward, back, left, right, up or down each; as its header says, else forward,left,up',
      },
      {
        name: 'units',
        kind: 'choice',
        value: 'mm|in|cm|m',
        help: 'unit of the list; may be left out where its header names it, as in x [mm]',
      },
      {
        name: 'datum',
        kind: 'text',
        value: 'NAMES|FILE',
        help: "three or more reference points; without them the list is in the car's frame already",
      },
      {
        name: 'side',
        kind: 'choice',
        value: 'left|right|both',
        help: 'the side that was measured; left when not given. Of a path: both when not given',
      },
      { name: 'mirror', kind: 'flag', value: '', help: 'the other side is the mirror image of the measured one' },
      { name: 'average', kind: 'flag', value: '', help: 'both sides become the mean of them; with --side both' },
      {
        name: 'map',
        kind: 'settings',
        value: 'NAME=POINT',
        help: 'a name of the list is this point, or none to leave the row out; again and again',
      },
      { name: 'out', kind: 'text', value: 'NEW.jounce.json', help: 'writes the car with the points taken', writes: true },
      {
        name: 'csv',
        kind: 'text',
        value: 'OUT.csv',
        help: 'writes the points of the car, or the path, as CSV; - is standard output',
        writes: true,
      },
      { name: 'force', kind: 'flag', value: '', help: 'lets --out or --csv replace an existing file', writes: true },
      { name: 'path', kind: 'text', value: 'POINT', help: 'the way of this point through --motion or --list' },
      ...POSITIONS,
      TRAVEL,
      RACK,
      ROLL,
      ...COMMON,
    ],
    examples: [
      'jounce points samples/taped-front-left.csv --car samples/saltmarsh-hatch.jounce.json \\\n    --axle front --axes back,right,up --datum armFront,ballJoint,strutTop',
      'jounce points --car samples/saltmarsh-hatch.jounce.json --setup Wet --travel 25 --csv points.csv',
      'jounce points --car samples/saltmarsh-hatch.jounce.json --path tieRodEnd \\\n    --motion steer --from -70 --to 70 --steps 15 --side left',
    ],
  },
  {
    name: 'schema',
    positional: '',
    takesCar: false,
    summary: 'the JSON Schema of the car file',
    details: ['An editor that knows the schema completes names and marks faults while the file is written.'],
    options: WITHOUT_CAR,
    examples: ['jounce schema > jounce-car.schema.json'],
  },
  {
    name: 'batch',
    positional: '',
    takesCar: false,
    summary: 'JSON lines in, JSON lines out, in order',
    details: [
      'A line on standard input is { "id": any, "car": a car document or the path of one, "ask": "readings", "options": { "travel": 25, "set": { "front.both.rearBush": 90 } } }. Option keys are the flags without dashes.',
      'A line on standard output is { "id", "answer": what the verb prints with --json } or { "id", "error" }. Blank lines are skipped; a line that cannot be read answers "id": null. Verbs and options that write a file are refused.',
      '--setup, --set and --workers hold for every line that does not give its own.',
    ],
    options: [WORKERS, ...COMMON],
    examples: [`echo '{"car":"samples/saltmarsh-hatch.jounce.json","ask":"check"}' | jounce batch`],
  },
];

export const VERB_NAMES: readonly string[] = VERBS.map((verb) => verb.name);

export const findVerb = (name: string): VerbSpec | undefined => VERBS.find((verb) => verb.name === name);
