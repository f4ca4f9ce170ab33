import { readFile } from 'node:fs/promises';
import path from 'node:path';
import { uniformInt } from 'pure-rand/distribution/uniformInt';
import { xoroshiro128plus } from 'pure-rand/generator/xoroshiro128plus';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { CATALOGUE, parseCar } from '../../geometry/index';
import { shownReading } from '../../renderer/units/shownQuantity';
import { STANDARD_UNITS } from '../../renderer/units/unitChoice';
import { jounceJson, type Json } from '../electron/command/jounce';
import { temporaryFolder } from '../electron/temporaryFolder';
import { cellsOf, motionField, type } from './bench';
import { openWindow } from './chromium';

/** `npm run test:long` goes on for longer (vitest.config.ts). */
const ACTIONS = Number(process.env['JOUNCE_ACTIONS']);
const CHECKED_EVERY = 20;
const SEED = 20260914;
const SAMPLE = path.resolve(import.meta.dirname, '../../samples/saltmarsh-hatch.jounce.json');

const plain = (text: string): number => Number(text.replace('−', '-').replaceAll(',', ''));

/** A person who does anything, the same things in every run. */
const someone = (page: Page, setups: readonly string[]) => {
  const random = xoroshiro128plus(SEED);
  const below = (count: number): number => uniformInt(random, 0, count - 1);
  const oneOf = <Thing>(things: readonly Thing[]): Thing => {
    const thing = things[below(things.length)];
    if (thing === undefined) throw new Error('there is something to choose from');
    return thing;
  };
  const fields = () => page.locator('.adjusters [role="spinbutton"]:not([aria-readonly="true"])');
  const anyField = async () => {
    const all = await fields().count();
    return fields().nth(below(all));
  };
  const axle = (name: string) =>
    page.getByRole('group', { name: 'Axle', exact: true }).getByRole('button', { name, exact: true });
  const actions: Readonly<Record<string, () => Promise<void>>> = {
    typed: async () => {
      const field = await anyField();
      const [min, max] = [Number(await field.getAttribute('aria-valuemin')), Number(await field.getAttribute('aria-valuemax'))];
      await type(field, (Math.max(min, -20) + (Math.min(max, 20) - Math.max(min, -20)) * (below(101) / 100)).toFixed(2));
    },
    stepped: async () => (await anyField()).press(oneOf(['ArrowUp', 'ArrowDown', 'Shift+ArrowUp', 'PageUp', 'PageDown', 'Home'])),
    sides: async () => {
      const choice = page.locator('.held').getByRole('group', { name: /: sides$/ });
      if (await choice.count()) await choice.getByRole('button', { name: oneOf(['L = R', 'apart']) }).click();
    },
    bump: () => type(motionField(page, 'Bump'), String(below(101) - 50)),
    roll: () => type(motionField(page, 'Roll'), ((below(31) - 15) / 10).toFixed(1)),
    steer: async () => {
      const field = motionField(page, 'Steer');
      if (await field.count()) await type(field, String(below(61) - 30));
    },
    axle: () => axle(oneOf(['Front', 'Rear'])).click(),
    setup: async () => void (await page.getByLabel('Setup on the bench').selectOption(oneOf(setups))),
    against: async () => void (await page.getByLabel('Setup compared with').selectOption({ index: below(setups.length) })),
    view: () => page.getByRole('group', { name: 'View', exact: true }).getByRole('button').nth(below(4)).click(),
    zero: () => page.getByRole('button', { name: /^Zero/ }).click(),
    page: async () => {
      await page.getByRole('link', { name: 'Points' }).click();
      await page.getByRole('link', { name: 'Bench' }).click();
    },
    undo: () => page.keyboard.press('Control+z'),
    redo: () => page.keyboard.press('Control+Shift+Z'),
  };
  return {
    act: async (): Promise<string> => {
      const name = oneOf([...Object.keys(actions), 'typed', 'typed', 'stepped', 'stepped']);
      await actions[name]?.();
      return name;
    },
  };
};

/** Every number of the table against what the command line answers for the file, setup and position. */
const expectSameAsCommandLine = async (page: Page, file: string): Promise<void> => {
  const axle = (
    await page.getByRole('group', { name: 'Axle', exact: true }).locator('[aria-pressed="true"]').innerText()
  ).toLowerCase();
  const fieldValue = async (name: string) => {
    const field = motionField(page, name);
    return (await field.count()) ? String(plain(await field.inputValue())) : '0';
  };
  const { document } = await jounceJson([
    'readings',
    file,
    ...['--axle', axle, '--setup', await page.getByLabel('Setup on the bench').inputValue()],
    ...['--travel', await fieldValue('Bump'), '--rack', await fieldValue('Steer'), '--roll', await fieldValue('Roll')],
  ]);
  if (document['error']) {
    await page.getByRole('region', { name: 'Readings' }).getByRole('alert').waitFor();
    return;
  }
  const row: Json | undefined = document['rows']?.[0];
  for (const entry of CATALOGUE.filter(({ of, components }) => of !== 'car' && !components)) {
    const cells = await cellsOf(page, entry.key);
    if (cells.length === 0) continue;
    const values = (entry.of === 'corner' ? ['left', 'right'] : ['both']).map((side) => row?.[side]?.[entry.key] as unknown);
    const texts = values.map((value) => (typeof value === 'number' ? shownReading(entry, STANDARD_UNITS).format(value) : null));
    for (const [index, text] of texts.entries()) if (text !== null) expect(cells[index], `${axle} ${entry.key}`).toBe(text);
  }
};

test(
  'whatever one does: no complaint, the numbers of the command line, and undone to the exact file',
  { timeout: 90_000 + ACTIONS * 3_000 },
  async () => {
    const original = await readFile(SAMPLE, 'utf8');
    const folder = await temporaryFolder({ 'any.jounce.json': original });
    const file = `${folder}/any.jounce.json`;
    const parsed = parseCar(original);
    const setups = parsed.ok ? Object.keys(parsed.value.document.setups ?? {}) : [];
    const { page, complaints } = await openWindow({
      reducedMotion: 'reduce',
      served: { stateFolder: `${folder}/state`, handed: [file] },
    });
    await page.locator('tr[data-reading="camber"]').waitFor();
    const person = someone(page, setups);
    const done: string[] = [];
    const save = async () => {
      await page.keyboard.press('Control+s');
      await page.getByRole('img', { name: 'changed since it was saved' }).waitFor({ state: 'detached' });
    };
    for (let count = 1; count <= ACTIONS; count += 1) {
      done.push(await person.act());
      expect(complaints, done.join(' ')).toEqual([]);
      if (count % CHECKED_EVERY !== 0) continue;
      await save();
      await expectSameAsCommandLine(page, file);
    }
    expect(await readFile(file, 'utf8')).not.toBe(original);
    const undo = page.getByRole('button', { name: /^Undo: / });
    while (await undo.count()) await undo.click();
    await save();
    expect(await readFile(file, 'utf8')).toBe(original);
    expect(complaints).toEqual([]);
  },
);
