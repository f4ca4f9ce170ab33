import {
  CONTRACT_UNITS,
  findReading,
  readingsOf,
  suggest,
  SYMBOLS,
  type ReadingEntry,
  type ReadingOwner,
} from '../../geometry/index';
import { usageError } from './commandError';
import { findVerb, VERB_NAMES, VERBS, type OptionSpec, type VerbSpec } from './optionSpecs';
import { wrap } from './textTable';

const READINGS_LIST = 'readings-list';

/** Help on a verb, on a reading, on all readings, or on the program. */
export function helpOn(topic: string | null): string {
  if (topic === null) return helpOnProgram();
  if (topic === READINGS_LIST) return helpOnReadings();
  const verb = findVerb(topic);
  if (verb) return helpOnVerb(verb);
  const reading = findReading(topic) ?? readingOfDotted(topic);
  if (reading) return helpOnReading(reading);
  const keys = (['corner', 'axle', 'car'] as const).flatMap((owner) => readingsOf(owner).map((entry) => entry.key));
  const hint = suggest(topic.split('.').at(-1) ?? topic, [...VERB_NAMES, READINGS_LIST, ...keys]);
  throw usageError(`there is no help on "${topic}"${hint ? `; ${hint}` : ''}`);
}

/** The owners that a dotted name tells, by its part before the reading's. */
const OWNERS: Readonly<Record<string, ReadingOwner>> = { left: 'corner', right: 'corner', both: 'axle', wholeCar: 'car' };

/** The reading of a dotted name as JSON, CSV and limits have it: `front.left.camber`, `both.track`, `left.wheelCentre.x`. */
function readingOfDotted(name: string): ReadingEntry | undefined {
  const parts = name.split('.');
  const axle = parts[0] === 'front' || parts[0] === 'rear' ? parts.shift() : undefined;
  const [owner = '', key = '', component, ...more] = parts;
  const entry = findReading(key);
  if (!entry || more.length > 0 || OWNERS[owner] !== entry.of || (axle !== undefined && entry.of === 'car')) return undefined;
  const isKnown = component === undefined || (entry.components ?? []).some((known) => known === component);
  return isKnown ? entry : undefined;
}

function helpOnProgram(): string {
  return [
    'jounce: suspension geometry from pickup points and adjusters to every reading',
    '',
    'usage: jounce <verb> [car file] [options]',
    '',
    ...VERBS.map((verb) => `  ${verb.name.padEnd(10)}${verb.summary}`),
    '',
    ...wrap(
      'jounce <verb> --help shows its options and an example. jounce help readings-list says what every reading means, jounce help camber (or front.left.camber) tells more of one.',
    ),
    '',
    ...wrap(
      'Lengths are in mm and angles in degrees. Exit status: 0 answered, 1 nothing could be answered, 2 command, file or setup wrong, 3 the system failed, 130 stopped by Ctrl-C.',
    ),
  ].join('\n');
}

const NAME_WIDTH = 26;

function optionLines(option: OptionSpec): string[] {
  const name = `  --${option.name}${option.value === '' ? '' : ` ${option.value}`}`;
  const indent = ' '.repeat(NAME_WIDTH);
  const [first = '', ...rest] = wrap(option.help, '', 100 - NAME_WIDTH);
  const lines = name.length < NAME_WIDTH ? [name.padEnd(NAME_WIDTH) + first] : [name, indent + first];
  return [...lines, ...rest.map((line) => indent + line)];
}

function helpOnVerb(verb: VerbSpec): string {
  const usage = ['jounce', verb.name, verb.positional, '[options]'].filter((word) => word !== '').join(' ');
  return [
    `jounce ${verb.name}: ${verb.summary}`,
    '',
    `usage: ${usage}`,
    '',
    ...verb.details.flatMap((paragraph) => [...wrap(paragraph), '']),
    ...verb.options.filter(({ idle }) => idle === undefined).flatMap(optionLines),
    '',
    verb.examples.length === 1 ? 'example:' : 'examples:',
    ...verb.examples.map((example) => `  ${example}`),
  ].join('\n');
}

const unitWords = (entry: ReadingEntry): string => (entry.quantity === 'ratio' ? 'no unit' : CONTRACT_UNITS[entry.quantity]);

function helpOnReadings(): string {
  const lines = ['Readings, with unit and what + means. In JSON and CSV they stand under left, right, both and wholeCar.'];
  for (const owner of ['corner', 'axle', 'car'] as const) {
    let group = '';
    for (const entry of readingsOf(owner)) {
      if (entry.group !== group) lines.push('', entry.group);
      group = entry.group;
      lines.push(`  ${entry.key} (${unitWords(entry)})${entry.plus === '' ? '' : `, + ${entry.plus}`}`);
      lines.push(...wrap(`    ${entry.meaning}`, '    '));
    }
  }
  return [...lines, '', 'jounce help <reading> adds why one cares, the definition and where it is from.'].join('\n');
}

function helpOnReading(entry: ReadingEntry): string {
  const points = entry.components ? `, [${entry.components.join(', ')}]` : '';
  const owner =
    entry.of === 'car' ? 'the whole car' : entry.of === 'axle' ? 'an axle, under both' : 'a corner, under left and right';
  return [
    `${entry.name} (${entry.key}${points}), ${unitWords(entry)}; of ${owner}`,
    '',
    ...wrap(entry.meaning),
    ...wrap(entry.why),
    ...(entry.plus === '' ? [] : wrap(`+ means: ${entry.plus}.`)),
    '',
    ...wrap(`Definition: ${entry.formula}`, '  '),
    ...wrap(`  ${SYMBOLS}`, '  '),
    ...wrap(`Source: ${entry.source}.`, '  '),
  ].join('\n');
}
