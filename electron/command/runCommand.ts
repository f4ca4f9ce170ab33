import type { Answer, Tell } from './answer';
import { readCarFile } from './carSource';
import { errorInWords, errorOfThrown, exitStatusOf, usageError } from './commandError';
import { jsonPieces } from './jsonText';
import type { VerbSpec } from './optionSpecs';
import { studyWith, StudyCrew } from './studyCrew';
import { parseArguments, wantsJson, type CommandLine } from './parseArguments';
import { hasColour, print, printError, Progress } from './terminal';
import { signed, PROGRAM } from './version';

/**
 * Answers one command line.
 *
 * @param words - what stands after `jounce`
 * @returns the exit status
 */
export async function runCommand(words: readonly string[]): Promise<number> {
  const json = wantsJson(words);
  const progress = new Progress();
  try {
    await answerCommand(parseArguments(words), json, progress);
    return 0;
  } catch (thrown) {
    progress.end();
    const error = errorOfThrown(thrown);
    printError(`jounce: ${errorInWords(error)}\n`);
    if (json) await print(`${JSON.stringify({ error }, null, 2)}\n`);
    return exitStatusOf(error.kind);
  }
}

async function answerCommand(command: CommandLine, json: boolean, progress: Progress): Promise<void> {
  switch (command.ask) {
    case 'version':
      return printAnswer({ document: {}, words: () => PROGRAM }, json, progress);
    case 'help': {
      const { helpOn } = await import('./help');
      const text = helpOn(command.topic);
      return printAnswer({ document: { help: text }, words: () => text }, json, progress);
    }
    case 'verb':
      return answerVerb(command, json, progress);
  }
}

async function answerVerb(command: CommandLine & { ask: 'verb' }, json: boolean, progress: Progress): Promise<void> {
  const { verb, options, positionals } = command;
  if (verb.name === 'batch') {
    const { runBatch } = await import('./batch');
    await runBatch(batchDefaults(options), {
      input: process.stdin,
      write: print,
      progress: (lines) => progress.report(lines, null),
    });
    progress.end();
    return;
  }
  const { loadVerb } = await import('./verbModules');
  const place = verb.takesCar ? (positionals[0] ?? '-') : verb.carByOption ? options.car : undefined;
  const [{ answer }, car] = await Promise.all([loadVerb(verb.name), place === undefined ? null : readCarFile(place)]);
  const reads = [positionals[0], options.car, options.in, options.datum, options.list].filter((read) => read !== undefined);
  const asked = askedOf(verb, options, positionals);
  const tell: Tell = (done, total) => progress.report(done, total);
  const crew = new StudyCrew();
  const study = studyWith(crew, car, asked, tell);
  const answered = await answer({ car, options: asked, reads, study, progress: tell }).finally(() => crew.end());
  progress.end();
  await printAnswer(answered, json, progress);
}

type Options = (CommandLine & { ask: 'verb' })['options'];

/** The options with the words that stand in the place of one. */
const askedOf = (verb: VerbSpec, options: Options, [first, second]: readonly string[]): Options => {
  if (verb.carByOption && first !== undefined) return withList(options, first);
  return verb.second && second !== undefined ? { ...options, [verb.second]: second } : options;
};

const withList = (options: Options, list: string): Options => {
  if (options.in !== undefined) throw usageError(`the list is given twice: ${list} and --in ${options.in}`);
  return { ...options, in: list };
};

/** What of a batch's own options holds for its lines. */
const batchDefaults = ({ setup, set, workers }: Options) => ({
  ...(setup === undefined ? {} : { setup }),
  ...(set === undefined ? {} : { set }),
  ...(workers === undefined ? {} : { workers }),
});

async function printAnswer(answer: Answer, json: boolean, progress: Progress): Promise<void> {
  if (!json && answer.text !== undefined) return print(answer.text);
  if (!json) return print(`${answer.words({ colour: hasColour() })}\n`);
  for (const piece of jsonPieces(signed(answer.document))) {
    await print(piece);
    await progress.breathe();
  }
}
