import { describe, expect, test } from 'vitest';
import { CommandError } from '../../../electron/command/commandError';
import { findVerb } from '../../../electron/command/optionSpecs';
import { readJson } from '../../../electron/command/options';
import { parseArguments, wantsJson } from '../../../electron/command/parseArguments';

const options = (...words: string[]): object => {
  const line = parseArguments(words);
  if (line.ask !== 'verb') throw new Error(line.ask);
  return line.options;
};
const refusal = (...words: string[]): string => {
  try {
    parseArguments(words);
  } catch (thrown) {
    if (thrown instanceof CommandError && thrown.document.kind === 'usage') return thrown.message;
    throw thrown;
  }
  throw new Error(`${words.join(' ')} was accepted`);
};

describe('the words of a command', () => {
  test('values stand behind the flag or behind =, negative numbers too', () => {
    expect(options('readings', 'car', '--travel', '-20,10', '--rack=-3.5', '--roll', '1e-1', '--axle', 'rear', '--json')).toEqual(
      {
        travel: { left: -20, right: 10 },
        rack: -3.5,
        roll: 0.1,
        axle: 'rear',
        json: true,
      },
    );
    expect(options('readings', 'car', '--travel', '25')).toEqual({ travel: 25 });
  });

  test('--set may be given again and again, other flags once', () => {
    expect(options('readings', 'car', '--set', 'front.both.a=1', '--set=rear.setToe=none')).toEqual({
      set: [
        { name: 'front.both.a', value: '1' },
        { name: 'rear.setToe', value: 'none' },
      ],
    });
    expect(refusal('readings', 'car', '--setup', 'A', '--setup', 'B')).toContain('twice');
  });

  test('after -- everything is a file', () => {
    const line = parseArguments(['check', '--', '--json']);
    expect(line.ask === 'verb' && line.positionals).toEqual(['--json']);
    expect(wantsJson(['check', '--', '--json'])).toBe(false);
    expect(wantsJson(['check', 'car', '--json'])).toBe(true);
  });

  test('help and version are understood with and without a verb', () => {
    expect(parseArguments(['--help'])).toEqual({ ask: 'help', topic: null });
    expect(parseArguments(['help', '--help'])).toEqual({ ask: 'help', topic: null });
    expect(parseArguments(['help', 'camber'])).toEqual({ ask: 'help', topic: 'camber' });
    expect(parseArguments(['sweep', '--help'])).toEqual({ ask: 'help', topic: 'sweep' });
    expect(parseArguments(['--version'])).toEqual({ ask: 'version' });
    expect(parseArguments(['check', '--version'])).toEqual({ ask: 'version' });
  });

  test('what is wrong is said, with the nearest that is right', () => {
    expect(refusal('chek', 'car')).toContain('`check`');
    expect(refusal('readings', 'car', '--travl', '2')).toContain('`travel`');
    expect(refusal('readings', 'car', '--axle', 'frnt')).toContain('`front`');
    expect(refusal('readings')).toContain('car file');
    expect(refusal('readings', 'one', 'two')).toContain('"two"');
    expect(refusal('schema', 'car')).toContain('no file');
    expect(refusal('check', 'car', '--axle', 'front')).toContain(
      'it is one of readings, sweep, influence, ways, clearance, joints, stroke, loads, keep-out, template, sheet, points',
    );
    expect(refusal('check', 'car', '--qqq')).toContain('jounce check --help');
    expect(refusal('readings', 'car', '-rack', '3')).toContain(': --rack');
    expect(refusal('--hlp')).toContain('`--help`');
    expect(refusal('check', '')).toContain('empty');
    expect(refusal('readings', 'car', '-x')).toContain('two dashes');
    expect(refusal('readings', 'car', '--rack')).toContain('needs a value');
    expect(refusal('readings', 'car', '--rack', '--json')).toContain('needs a value');
    expect(refusal('readings', 'car', '--json=1')).toContain('no value');
    expect(refusal('sweep', '-', '--list', '-')).toContain('standard input');
    expect(refusal()).toContain('readings');
  });

  test('what is no number is refused', () => {
    for (const text of ['', 'x', '1,5,2', 'NaN', 'Infinity', '1e400', '0x10', '1.2.3', '5mm', '1e12'])
      expect(refusal('readings', 'car', `--travel=${text}`)).toContain('travel');
    for (const text of ['0', '-3', '2.5', '1000000']) expect(refusal('sweep', 'car', `--steps=${text}`)).toContain('steps');
  });
});

describe('the options of a line of a batch', () => {
  const option = (verb: string, name: string) => {
    const found = findVerb(verb)?.options.find((candidate) => candidate.name === name);
    if (!found) throw new Error(name);
    return found;
  };

  test('are numbers, pairs, names and settings', () => {
    expect(readJson(option('readings', 'travel'), [1, 2])).toEqual({ left: 1, right: 2 });
    expect(readJson(option('readings', 'travel'), 25)).toBe(25);
    expect(readJson(option('readings', 'axle'), 'front')).toBe('front');
    expect(readJson(option('readings', 'set'), { 'front.both.a': 1, 'front.barHole': 'soft', 'front.both.b': null })).toEqual([
      { name: 'front.both.a', value: 1 },
      { name: 'front.barHole', value: 'soft' },
      { name: 'front.both.b', value: null },
    ]);
  });

  test('of another kind are refused', () => {
    const wrong: [string, unknown][] = [
      ['travel', 'x'],
      ['travel', [1]],
      ['travel', [1, 2, 3]],
      ['travel', [1, null]],
      ['rack', '3'],
      ['rack', null],
      ['roll', true],
      ['axle', 'both'],
      ['axle', 1],
      ['setup', ''],
      ['setup', {}],
      ['set', []],
      ['set', 'a=1'],
      ['set', { a: true }],
      ['set', { a: {} }],
    ];
    for (const [name, value] of wrong) expect(() => readJson(option('readings', name), value), name).toThrow(CommandError);
  });
});
