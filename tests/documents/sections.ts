import { readFile, readdir } from 'node:fs/promises';
import path from 'node:path';
import { readCarFile } from '../../electron/command/carSource';
import {
  CHECK_WARNING_CODES,
  COMMAND_FAULT_CODES,
  COMMAND_ROW_WARNING_CODES,
  POINTS_WARNING_CODES,
  SHEET_WARNING_CODES,
} from '../../electron/command/codes';
import { helpOn } from '../../electron/command/help';
import { VERBS } from '../../electron/command/optionSpecs';
import { answer as readingsVerb } from '../../electron/command/readings';
import { signed } from '../../electron/command/version';
import { ROOT } from '../../electron/building/products.mjs';
import {
  assembleCar,
  CATALOGUE,
  CONTRACT_UNITS,
  FAULT_CODES,
  FITUP_WARNING_CODES,
  findReading,
  findSetup,
  inContractUnits,
  LOAD_WARNING_CODES,
  parseCar,
  readingsOf,
  readingsOfAxle,
  ROW_WARNING_CODES,
  SYMBOLS,
  toMechanism,
  WARNING_CODES,
  type AxleDocument,
  type CarDocument,
  type ReadingEntry,
} from '../../geometry/index';

const SAMPLE = 'samples/saltmarsh-hatch.jounce.json';
const textOf = (file: string): Promise<string> => readFile(path.join(ROOT, file), 'utf8');

/** What documents hold that is made from the program itself, by the names of their markers. */
export async function makeSections(): Promise<ReadonlyMap<string, string>> {
  return new Map([
    ['bushing', bushingTable(await textOf(SAMPLE))],
    ['samples', await samplesTable()],
    ['library-example', fenced('js', await textOf('samples/library-example.mjs'))],
    ['readings', readingsList()],
    ['symbols', SYMBOLS],
    ['fault-codes', codeTable(FAULT_CODES)],
    ['warning-codes', codeTable(WARNING_CODES)],
    ['command-fault-codes', codeTable(COMMAND_FAULT_CODES)],
    ['check-warning-codes', codeTable(CHECK_WARNING_CODES)],
    ['points-warning-codes', codeTable(POINTS_WARNING_CODES)],
    ['fitup-warning-codes', codeTable(FITUP_WARNING_CODES)],
    ['load-warning-codes', codeTable(LOAD_WARNING_CODES)],
    ['sheet-warning-codes', codeTable(SHEET_WARNING_CODES)],
    ['row-warning-codes', codeTable({ ...ROW_WARNING_CODES, ...COMMAND_ROW_WARNING_CODES })],
    ['verbs', verbTable()],
    ['options', VERBS.map(({ name }) => fenced('text', helpOn(name))).join('\n\n')],
    ['keys', keyTable()],
    ['readings-json', fenced('json', await shortenedAnswer())],
  ]);
}

const fenced = (language: string, text: string): string => `\`\`\`${language}\n${text.trimEnd()}\n\`\`\``;
const cell = (text: string): string => text.replaceAll('|', '\\|');
const row = (cells: readonly string[]): string => `| ${cells.map(cell).join(' | ')} |`;

const table = (head: readonly string[], rows: readonly (readonly string[])[]): string =>
  [row(head), row(head.map(() => '---')), ...rows.map(row)].join('\n');

const codeTable = (codes: Readonly<Record<string, string>>): string =>
  table(
    ['code', 'what it means'],
    Object.entries(codes).map(([code, meaning]) => [`\`${code}\``, meaning]),
  );

const verbTable = (): string =>
  table(
    ['verb', 'does'],
    VERBS.map(({ name, positional, summary }) => [`\`${`${name} ${positional}`.trim()}\``, summary]),
  );

const unitOf = ({ quantity }: ReadingEntry): string => (quantity === 'ratio' ? 'no unit' : CONTRACT_UNITS[quantity]);
const nameOf = ({ key, components }: ReadingEntry): string => `\`${key}\`${components ? ` [${components.join(', ')}]` : ''}`;

const OWNERS = { corner: 'left and right', axle: 'both', car: 'wholeCar' } as const;

const keyTable = (): string =>
  table(
    ['under', 'keys, with units'],
    (['corner', 'axle', 'car'] as const).map((owner) => [
      `\`${OWNERS[owner].replace(' and ', '`, `')}\``,
      readingsOf(owner)
        .map((entry) => `${nameOf(entry)} ${unitOf(entry)}`)
        .join(', '),
    ]),
  );

/** The sample cars, one a line. */
async function samplesTable(): Promise<string> {
  const files = (await readdir(path.join(ROOT, 'samples'))).filter((name) => name.endsWith('.jounce.json')).sort();
  const rows = files.map(async (file) => {
    const car = JSON.parse(await textOf(`samples/${file}`)) as CarDocument;
    return [`[${car.name}](samples/${file})`, layoutOf(car.front), layoutOf(car.rear), Object.keys(car.setups ?? {}).join(', ')];
  });
  return table(['car', 'front', 'rear', 'setups'], await Promise.all(rows));
}

function layoutOf(axle: AxleDocument | undefined): string {
  if (axle === undefined) return 'none';
  if (axle.layout === 'strut') return 'strut';
  return axle.trailingArm === undefined ? 'five rods' : 'three rods and a trailing arm';
}

/** A real answer of `readings`, with the first of its readings and round numbers. */
async function shortenedAnswer(): Promise<string> {
  const car = await readCarFile(path.join(ROOT, SAMPLE));
  const { document } = await readingsVerb({
    car,
    options: { axle: 'front', setup: 'Wet', against: 'Baseline' },
    reads: [],
    study: () => Promise.reject(new Error('readings asks for no study')),
    progress: async () => {},
  });
  const text = JSON.stringify(signed(document), (key, value: unknown) => shortened(key, value), 2);
  // points and pairs on one line
  return text.replace(/\[\s+(-?[\d.]+,\s+)*-?[\d.]+\s+\]/g, (list) => list.replace(/\s+/g, ' '));
}

/** How many entries are shown of what is long. */
const SHOWN: Readonly<Record<string, number>> = { left: 5, right: 1, both: 2, limits: 1, why: 1, difference: 3 };

function shortened(key: string, value: unknown): unknown {
  if (typeof value === 'number') return Number(value.toFixed(4));
  const count = SHOWN[key];
  if (count === undefined || typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) return value.slice(0, count);
  return Object.fromEntries(Object.entries(value).slice(0, count));
}

function readingsList(): string {
  const lines: string[] = [];
  let group = '';
  for (const entry of CATALOGUE) {
    if (entry.group !== group) lines.push(`## ${entry.group}`, '');
    group = entry.group;
    lines.push(
      `### ${entry.name}`,
      '',
      `${nameOf(entry)}, ${unitOf(entry)}, under \`${OWNERS[entry.of].replace(' and ', '` and `')}\``,
      '',
    );
    lines.push(`${entry.meaning} ${entry.why}`, '');
    if (entry.plus !== '') lines.push(`- **+ means** ${entry.plus}`);
    lines.push(`- **Definition**: ${entry.formula}`, `- **Source**: ${entry.source}`, '');
  }
  return lines.join('\n');
}

/** The bushing of the README at 3 o'clock less the same at 9, toe as it falls and set back; seen from below on the left. */
function bushingTable(text: string): string {
  const readings = ['caster', 'mechanicalTrail', 'rollCentreHeight', 'toe'].map((key) => findReading(key)!);
  const positions = [
    { words: "9 o'clock", clock: 270 },
    { words: "3 o'clock", clock: 90 },
  ];
  const askedOf = (front: object): (number | null)[][] => positions.map(({ clock }) => numbersAt(text, clock, front, readings));
  const [nine = [], three = []] = askedOf({});
  const [nineSet = [], threeSet = []] = askedOf({ setToe: 0.05 });
  return table(
    ['', ...positions.map(({ words }) => words), "3 instead of 9 o'clock", 'with toe set back in both'],
    readings.map((entry, index) => {
      const value = (numbers: readonly (number | null)[]): number => numbers[index] ?? NaN;
      const written = (number: number, plus: string): string => {
        const digits = Math.abs(number).toFixed(entry.decimals);
        const sign = Number(digits) === 0 ? '' : number < 0 ? '−' : plus;
        return `${sign}${digits} ${unitOf(entry)}`;
      };
      const of = entry.of === 'corner' && entry.key === 'toe' ? `${entry.name}, each wheel` : entry.name;
      return [
        of,
        written(value(nine), ''),
        written(value(three), ''),
        `**${written(value(three) - value(nine), '+')}**`,
        written(value(threeSet) - value(nineSet), '+'),
      ];
    }),
  );
}

function numbersAt(text: string, clock: number, front: object, readings: readonly ReadingEntry[]): (number | null)[] {
  const parsed = parseCar(text);
  if (!parsed.ok) throw new Error('the sample is refused');
  const { document } = parsed.value;
  const setup = { ...findSetup(document, 'Baseline'), front: { ...front, both: { rearBush: clock } } };
  const car = assembleCar(toMechanism(document), setup);
  const answer = car.ok ? readingsOfAxle(car.value, 'front', {}) : car;
  if (!answer.ok) throw new Error(answer.failure.message);
  const { left, both } = inContractUnits(answer.value);
  return readings.map(({ key, of }) => (of === 'corner' ? left : both)[key] as number | null);
}
