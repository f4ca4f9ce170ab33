import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { ROOT } from '../../electron/building/products.mjs';
import { refreshedExcerpt } from './excerpt';
import { blocksOf, withBlock, type Block } from './markdown';
import type { Playground } from './playground';

/** Commands that do not end by themselves: what they say once they are well under way. */
const STARTED: Readonly<Record<string, RegExp>> = { 'npm start': /http:\/\/127\.0\.0\.1:\d+\// };

/** Commands too long for a test: their script has to be there. */
const LONG: readonly string[] = ['npm run bench'];

const USES_LIBRARY = /^node samples\//;

/** Beside the fence of what needs a program or a machine that not everyone has. */
const BY_HAND = 'by-hand';

/** What a document's first command does before anything else; a test that runs has it behind it. */
const INSTALL = 'npm install && ';

/**
 * Runs every `sh` block of a document, in order, and returns the document with the outputs beside them (`text` blocks that
 * follow) brought up to date.
 *
 * @throws Error when a command ends with another status than 0, or than `status=N` beside its fence
 */
export async function withOutputs(markdown: string, playground: Playground): Promise<string> {
  const blocks = blocksOf(markdown);
  const outputs: { readonly block: Block; readonly text: string }[] = [];
  for (const [index, block] of blocks.entries()) {
    if (block.language !== 'sh' || block.remark === BY_HAND) continue;
    const output = await outputOf(block, playground);
    const next = blocks[index + 1];
    if (next?.language === 'text' && output !== null) outputs.push({ block: next, text: refreshedExcerpt(next.text, output) });
  }
  return outputs.reduceRight((document, { block, text }) => withBlock(document, block, text), markdown);
}

async function outputOf(block: Block, playground: Playground): Promise<string | null> {
  const command = block.text.startsWith(INSTALL) ? block.text.slice(INSTALL.length) : block.text;
  if (command === 'npm test') return sameAsGate(command);
  if (LONG.includes(command)) return scriptIsThere(command);
  const until = STARTED[command];
  if (until) return playground.start(command, until);
  const wanted = Number(/^status=(\d+)$/.exec(block.remark)?.[1] ?? 0);
  if (USES_LIBRARY.test(command)) await playground.addLibrary();
  const { status, output } = await playground.run(block.text);
  if (status !== wanted) throw new Error(`${block.text}\nended with ${status} instead of ${wanted}:\n${output}`);
  return output;
}

/** The command that runs this test cannot run within it: the gate before every change runs it, word for word. */
async function sameAsGate(command: string): Promise<null> {
  const gate = await readFile(path.join(ROOT, '.ci/run'), 'utf8');
  if (!new RegExp(`(^|[ =])${command}$`, 'm').test(gate)) throw new Error(`.ci/run does not run ${command}`);
  return null;
}

async function scriptIsThere(command: string): Promise<null> {
  const { scripts } = JSON.parse(await readFile(path.join(ROOT, 'package.json'), 'utf8')) as { scripts: Record<string, string> };
  const [, file = ''] = (scripts[command.replace('npm run ', '')] ?? '').split(' ');
  await readFile(path.join(ROOT, file));
  return null;
}
