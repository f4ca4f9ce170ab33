import type { WindowTools } from '../shell/benchContext';
import type { Bench, BenchState } from '../state/benchStore';

/** One thing that the command list can do. */
export interface Command {
  /** stable, unlike any other's: "bench.zero", "hold.front.rearBush" */
  readonly id: string;
  /** what it does, as one would say it: "Turn the picture to the front" */
  readonly label: string;
  /** where it lives in the window: "Bench, adjuster" */
  readonly where: string;
  /** the keys that do the same, as they are printed: "Ctrl Z" */
  readonly keys?: string;
  /** other words that one might look for */
  readonly words?: readonly string[];
  readonly run: () => void;
}

/** Commands that there are in any state of the window. */
export type CommandMaker = (tools: WindowTools, state: BenchState) => readonly Command[];
/** Commands that there are while a car is open. */
export type CommandGroup = (tools: WindowTools, state: BenchState, bench: Bench) => readonly Command[];

/** A label in runs of letters, those that were typed told from the others. */
export const markTyped = (label: string, typed: string): readonly { readonly text: string; readonly typed: boolean }[] => {
  const wanted = typed.trim();
  const at = wanted === '' ? -1 : label.toLowerCase().indexOf(wanted.toLowerCase());
  if (at < 0) return [{ text: label, typed: false }];
  return [
    { text: label.slice(0, at), typed: false },
    { text: label.slice(at, at + wanted.length), typed: true },
    { text: label.slice(at + wanted.length), typed: false },
  ].filter(({ text }) => text !== '');
};

/**
 * How well a command answers what was typed, from 0 (not at all) to 1 (the label begins with it). Every word that was typed
 * must be there as it stands, in the label or among the command's other words: letters strewn about are no answer.
 */
export const judgeCommand = (label: string, otherWords: readonly string[], typed: string): number => {
  const [name, others] = [label.toLowerCase(), otherWords.join(' ').toLowerCase()];
  const wanted = typed.trim().toLowerCase();
  if (wanted === '') return 1;
  if (name.startsWith(wanted)) return 1;
  if (` ${name}`.includes(` ${wanted}`)) return 0.9;
  if (name.includes(wanted)) return 0.8;
  const words = wanted.split(/\s+/);
  if (words.every((word) => name.includes(word))) return 0.7;
  return words.every((word) => name.includes(word) || others.includes(word)) ? 0.5 : 0;
};
