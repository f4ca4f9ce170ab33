import { suggest } from '../../geometry/index';
import { usageError } from './commandError';
import { findVerb, VERB_NAMES, type VerbSpec } from './optionSpecs';
import { parseNumber, readText, unknownOption, type Options, type Setting } from './options';

/** What was asked on the command line. */
export type CommandLine =
  | { readonly ask: 'verb'; readonly verb: VerbSpec; readonly positionals: readonly string[]; readonly options: Options }
  | { readonly ask: 'help'; readonly topic: string | null }
  | { readonly ask: 'version' };

/** Whether the answer is wanted as JSON: asked before anything else is read, so that an error in the rest is JSON too. */
export const wantsJson = (words: readonly string[]): boolean => {
  const end = words.indexOf('--');
  return (end < 0 ? words : words.slice(0, end)).includes('--json');
};

/**
 * Reads the words after `jounce`.
 *
 * @throws CommandError of kind usage that says which word is wrong
 */
export function parseArguments(words: readonly string[]): CommandLine {
  const rest = [...words];
  while (rest[0] === '--json') rest.shift();
  const first = rest.shift();
  if (first === undefined) throw usageError(`say what to do: ${VERB_NAMES.join(', ')} or help`);
  if (first === '--help' || first === '-h') return { ask: 'help', topic: null };
  if (first === '--version' || first === '-V') return { ask: 'version' };
  if (first === 'help') {
    const topics = rest.filter((word) => !['--json', '--help', '-h'].includes(word));
    if (topics.length > 1) throw usageError('help takes one topic');
    return { ask: 'help', topic: topics[0] ?? null };
  }
  const verb = findVerb(first);
  if (!verb) {
    const hint = suggest(first, [...VERB_NAMES, 'help', '--help', '--version', '--json']);
    throw usageError(`there is no verb "${first}"${hint ? `; ${hint}` : `: ${VERB_NAMES.join(', ')} or help`}`);
  }
  const { options, positionals } = parseOptions(verb, rest);
  if (options.help) return { ask: 'help', topic: verb.name };
  if (options.version) return { ask: 'version' };
  checkPositionals(verb, positionals, options);
  return { ask: 'verb', verb, positionals, options };
}

function parseOptions(verb: VerbSpec, words: readonly string[]): { options: Options; positionals: string[] } {
  const values: Record<string, unknown> = {};
  const positionals: string[] = [];
  for (let i = 0; i < words.length; i++) {
    const word = words[i] ?? '';
    if (word === '--') {
      positionals.push(...words.slice(i + 1));
      break;
    }
    if (!word.startsWith('--')) {
      if (word === '-h') values['help'] = true;
      else if (word.length > 1 && word.startsWith('-')) {
        const meant = verb.options.some(({ name }) => word === `-${name}`) ? `: --${word.slice(1)}` : '';
        throw usageError(`"${word}" is not an option; options have two dashes${meant}`);
      } else positionals.push(word);
      continue;
    }
    const equals = word.indexOf('=');
    const name = word.slice(2, equals < 0 ? undefined : equals);
    const option = verb.options.find((candidate) => candidate.name === name);
    if (!option) throw usageError(unknownOption(name, verb));
    if (option.kind === 'flag') {
      if (equals >= 0) throw usageError(`--${name} takes no value`);
      values[name] = true;
      continue;
    }
    if (option.kind === 'number?' && equals < 0 && parseNumber(words[i + 1] ?? '') === null) {
      if (name in values) throw usageError(`--${name} is given twice`);
      values[name] = true;
      continue;
    }
    const text = equals >= 0 ? word.slice(equals + 1) : words[++i];
    // a forgotten value must not swallow the next option; a negative number is no option
    if (text === undefined || text.startsWith('--')) throw usageError(`--${name} needs a value: ${option.value}`);
    const key = option.key ?? name;
    if (option.kind === 'settings') {
      values[name] = [...((values[name] as Setting[] | undefined) ?? []), ...(readText(option, text) as Setting[])];
    } else {
      if (key in values) throw usageError(`--${name} is given twice`);
      values[key] = readText(option, text);
    }
  }
  return { options: values as Options, positionals };
}

function checkPositionals(verb: VerbSpec, positionals: readonly string[], options: Options): void {
  if (verb.takesCar && positionals.length === 0)
    throw usageError(`${verb.name} needs a car file: jounce ${verb.name} ${verb.positional} (- reads it from standard input)`);
  if (verb.carByOption && options.car === undefined)
    throw usageError(`${verb.name} needs a car file: jounce ${verb.name} ${verb.positional} --car CAR`);
  if (verb.second && positionals.length < 2 && options[verb.second] === undefined)
    throw usageError(`${verb.name} needs ${verb.positional.split(' ')[1]}: jounce ${verb.name} ${verb.positional}`);
  if (verb.second && positionals.length > 1 && options[verb.second] !== undefined)
    throw usageError(
      `${verb.second === 'out' ? 'the file' : 'what is wanted'} is given twice: "${positionals[1]}" and --${verb.second}`,
    );
  if (verb.second === 'question' && positionals[0] === '-' && (positionals[1] ?? options.question) === '-')
    throw usageError('standard input cannot be both the car and the question');
  if (positionals.includes('')) throw usageError(`the name of the ${verb.carByOption ? 'list' : 'car file'} is empty`);
  const allowed = verb.second ? 2 : verb.takesCar || verb.carByOption ? 1 : 0;
  if (positionals.length > allowed)
    throw usageError(
      `${verb.name} takes ${allowed === 0 ? 'no file' : verb.second ? `a car file and ${verb.positional.split(' ')[1]}` : verb.carByOption ? 'one list' : 'one car file'}; "${positionals[allowed]}" is too many`,
    );
  if (options.car === '-' && (positionals[0] === '-' || options.in === '-'))
    throw usageError('standard input cannot be both the car and the list');
  if ((positionals[0] === '-' || options.car === '-') && options.list === '-')
    throw usageError('standard input cannot be both the car and the list');
}
