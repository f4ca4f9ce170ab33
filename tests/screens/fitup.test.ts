import { AxeBuilder } from '@axe-core/playwright';
import { readFile } from 'node:fs/promises';
import { expect, test } from 'vitest';
import { openEdges, readStl } from '../../geometry/index';
import { binaryStl, tetrahedron } from '../geometry/fitup/stlFiles';
import { callOff } from './callOff';
import { openWindow } from './chromium';

test('fit-up: clearance and joints, a row chosen by key and taken to the bench', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce', graphics: 'none' });
  await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
  await page.getByRole('link', { name: 'Fit-up' }).click();
  const rows = page.getByRole('region', { name: 'Table of clearance' }).locator('tbody tr');
  await rows.first().waitFor({ timeout: 60_000 });
  expect(await rows.count()).toBeGreaterThan(20);
  const [first] = await rows.allInnerTexts();
  expect(first).toMatch(/short/);
  await page.getByText('What would clear it').waitFor();
  await page.getByRole('note', { name: 'Cautions' }).getByText('Prove it with clay or tape').waitFor();
  await page.getByRole('radio').first().focus();
  await page.keyboard.press('ArrowDown');
  expect(await rows.nth(1).getAttribute('class')).toBe('chosen');
  const faults = async (): Promise<readonly string[]> => {
    const { violations } = await new AxeBuilder({ page }).include('main').analyze();
    return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
  };
  expect(await faults()).toEqual([]);
  // under the pairs: what is lowest over the ground, reached from the head of the list, which scrolls alone
  await page.getByRole('button', { name: /^Over the ground: [\d.]+ mm$/ }).click();
  const ground = page.getByRole('region', { name: 'Over the ground' });
  expect(await ground.evaluate((table) => table === document.activeElement)).toBe(true);
  expect(await ground.locator('thead').innerText()).toMatch(/Standing[^]*Left flat[^]*Right flat[^]*Solid/);
  // the table scrolls and the window does not, to its end and past it
  expect(await page.evaluate(() => document.scrollingElement!.scrollTop)).toBe(0);
  const past = await page.evaluate(() => {
    const { scrollHeight, scrollWidth } = document.documentElement;
    return [scrollHeight - innerHeight, scrollWidth - innerWidth];
  });
  expect(past).toEqual([0, 0]);
  expect(await faults()).toEqual([]);
  await page.getByRole('group', { name: 'Fit-up' }).getByRole('button', { name: 'Joints' }).click();
  await page.getByRole('region', { name: 'Table of joints' }).locator('tbody tr').first().waitFor();
  await page.getByText('4 close').waitFor();
  await page.getByText(/^Best bolt: turned by 3\.\d°, its top [\d.]+° forward and [\d.]+° outward$/).waitFor();
  expect(await faults()).toEqual([]);
  const tab = page.getByRole('group', { name: 'Fit-up' });
  await tab.getByRole('button', { name: 'Stroke' }).click();
  await page.getByRole('region', { name: 'Table of stroke' }).locator('tbody tr').first().waitFor();
  expect(await faults()).toEqual([]);
  await tab.getByRole('button', { name: 'Joints' }).click();
  const bench = page.getByRole('button', { name: 'Take position to the bench' });
  await bench.click();
  await page.getByRole('group', { name: 'Motion' }).waitFor();
  expect(await page.getByLabel('Setup on the bench').inputValue()).toBe('Sprint');
  expect(complaints).toEqual([]);
}, 120_000);

test('fit-up: load cases are invented until one is given figures; every change is an undo step of the car', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce', graphics: 'none' });
  await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
  await page.getByRole('link', { name: 'Fit-up' }).click();
  await page.getByRole('group', { name: 'Fit-up' }).getByRole('button', { name: 'Link loads' }).click();
  const table = page.getByRole('region', { name: 'Table of link loads' });
  const cells = (row: string) => table.getByRole('row', { name: row }).getByRole('cell');
  await cells('Arm front').first().waitFor();
  await page.getByText('The file gives no load cases').waitFor();
  await page.getByRole('note', { name: 'Cautions' }).getByText('Not proof of strength').waitFor();
  const { violations } = await new AxeBuilder({ page }).include('main').analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual([]);
  // a bar is twisted by roll alone
  await page.getByText('both wheels stand alike here, so the bar carries nothing').waitFor();
  const roll = page.getByRole('spinbutton', { name: /^Roll/ });
  await roll.fill('-2');
  await roll.press('Enter');
  await page.getByText('both wheels stand alike here').waitFor({ state: 'detached' });
  await expect.poll(async () => (await cells('Bar link').allInnerTexts())[2]).toMatch(/^\+1,\d{3}$/);
  await roll.fill('0');
  await roll.press('Enter');
  await page.getByText('both wheels stand alike here').waitFor();
  const heads = () => table.getByRole('columnheader').allInnerTexts();
  const [before] = (await cells('Arm front').allInnerTexts()).slice(2);
  await table.getByRole('button', { name: 'Cornering' }).click();
  const sideways = page.getByRole('spinbutton', { name: 'To the left, g' });
  expect(await sideways.inputValue()).toBe('−1.2');
  await sideways.fill('-0.6');
  await sideways.press('Enter');
  await page.getByText('The file gives no load cases').waitFor({ state: 'detached' });
  await expect.poll(() => cells('Arm front').allInnerTexts()).not.toContain(before);
  expect(await page.getByLabel('Notes').inputValue()).toBe('');
  const editor = page.getByRole('group', { name: 'Load case' });
  await editor.getByRole('button', { name: 'Copy' }).click();
  await expect.poll(heads).toContain('Cornering 2');
  await editor.getByLabel('Case').fill('Long left');
  await editor.getByLabel('Case').press('Enter');
  await expect.poll(heads).toContain('Long left');
  await editor.getByRole('button', { name: 'By wheel' }).click();
  const up = editor.getByRole('spinbutton', { name: /^Fz, up/ });
  await up.fill('4 kN');
  await up.press('Enter');
  await expect.poll(() => cells('Given: Fz').allInnerTexts()).toContain('+4,000');
  await editor.getByRole('button', { name: 'Remove' }).click();
  await expect.poll(heads).not.toContain('Long left');
  await page.keyboard.press('Control+z');
  await expect.poll(heads).toContain('Long left');
  expect(complaints).toEqual([]);
}, 120_000);

test('parts: one of an STL file, with its unit; another shape in its place, a copy, and away again', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce', graphics: 'none' });
  await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
  // dropped on the page of fit-up it goes to where parts are made
  await page.getByRole('navigation').getByRole('link', { name: 'Fit-up' }).click();
  await page.getByRole('group', { name: 'Fit-up' }).waitFor();
  await page.evaluate(
    (bytes) => {
      const dataTransfer = new DataTransfer();
      dataTransfer.items.add(new File([Uint8Array.from(bytes)], 'dropped.STL'));
      document.body.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
    },
    [...binaryStl(tetrahedron(30))],
  );
  const mesh = page.getByRole('region', { name: 'Part from an STL file' });
  const choose = (name: string, bytes: Uint8Array) =>
    mesh.locator('input[type=file]').setInputFiles({ name, mimeType: 'model/stl', buffer: Buffer.from(bytes) });
  await mesh.getByText('dropped.STL: 4 triangles, 30.0 × 30.0 × 30.0 mm, closed').waitFor();
  await choose('cut off.stl', binaryStl(tetrahedron(40)).slice(0, 150));
  await mesh.getByRole('alert').getByText('save the mesh again as binary STL').waitFor();
  await choose('ear.stl', binaryStl(tetrahedron(40).slice(9)));
  await mesh.getByText('Not closed: 3 edges').waitFor();
  await choose('Seat bracket.stl', binaryStl(tetrahedron(2)));
  await mesh.getByText('4 triangles, 2.0 × 2.0 × 2.0 mm').waitFor();
  await mesh.getByLabel('Unit of the STL').selectOption('in');
  await mesh.getByText('50.8 × 50.8 × 50.8 mm, closed').waitFor();
  await mesh.getByRole('button', { name: 'Go on' }).click();
  const draft = page.getByRole('group', { name: 'New part' });
  expect(await draft.getByRole('textbox', { name: /^Name/ }).inputValue()).toBe('SeatBracket');
  await draft.getByRole('button', { name: 'Make it' }).click();
  await draft.waitFor({ state: 'detached' });
  const summary = page.locator('details.part > summary').filter({ hasText: 'Seat bracket' });
  await summary.click();
  const tools = page.getByRole('group', { name: 'Part SeatBracket' });
  await tools.getByText('50.8 × 50.8 × 50.8 mm').waitFor();
  const { violations } = await new AxeBuilder({ page }).include('main').analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual([]);
  await tools.getByLabel('Kind of shape of SeatBracket').selectOption('box');
  await expect.poll(() => page.getByRole('button', { name: /^Undo/ }).first().innerText()).toContain('shape of SeatBracket');
  await tools.getByRole('button', { name: 'Copy' }).click();
  await page.locator('details.part > summary').filter({ hasText: 'SeatBracket2' }).waitFor();
  await page
    .locator('details.part[open]')
    .getByRole('button', { name: /^Remove/ })
    .last()
    .click();
  await expect.poll(() => page.locator('details.part > summary').filter({ hasText: 'Seat bracket' }).count()).toBe(1);
  expect(complaints).toEqual([]);
}, 120_000);

test('fit-up by keys alone: from the command list to a row; Escape calls the search off at once', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce', graphics: 'none' });
  await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
  const command = async (typed: string) => {
    await page.keyboard.press('Control+k');
    await page.getByRole('dialog', { name: 'Command list' }).waitFor();
    await page.keyboard.type(typed);
    await page.keyboard.press('Enter');
  };
  await command('Clearance of parts');
  await page.getByRole('progressbar').waitFor({ timeout: 60_000 });
  expect(await callOff(page)).toBeLessThan(100);
  await page.getByRole('button', { name: 'Work it out' }).focus();
  await page.keyboard.press('Enter');
  await page.getByRole('region', { name: 'Table of clearance' }).locator('tbody tr').first().waitFor({ timeout: 60_000 });
  await command('Go to the chosen row');
  await expect.poll(() => page.evaluate(() => document.activeElement?.className)).toBe('pickrow');
  await command('Loads in the links');
  await page.getByRole('region', { name: 'Table of link loads' }).waitFor();
  await command('Take the position of the row to the bench');
  await page.getByRole('group', { name: 'Motion' }).waitFor();
  await command('Parts, joints and hoses');
  await page.getByRole('region', { name: 'Part from an STL file' }).waitFor();
  expect(complaints).toEqual([]);
}, 120_000);

test('fit-up: the space that a part sweeps is worked out when asked for, and saved as a closed STL', async () => {
  const { page, complaints } = await openWindow({ reducedMotion: 'reduce', graphics: 'none' });
  await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
  await page.getByRole('link', { name: 'Fit-up' }).click();
  await page.getByRole('group', { name: 'Fit-up' }).getByRole('button', { name: 'Keep-out' }).click();
  await page.getByLabel('Wheels').selectOption('left');
  await page.getByLabel('everything that moves').uncheck();
  const make = page.getByRole('button', { name: 'Work it out' });
  expect(await make.isDisabled()).toBe(true);
  await page.getByRole('checkbox', { name: 'Caliper front' }).check();
  const bound = page.getByRole('spinbutton', { name: /^Surface outside/ });
  await bound.fill('8');
  await bound.press('Enter');
  const save = page.getByRole('button', { name: 'Save as STL' });
  expect(await save.isDisabled()).toBe(true);
  await make.click();
  await page.getByText(/triangles, closed, .* litres/).waitFor({ timeout: 60_000 });
  const { violations } = await new AxeBuilder({ page }).include('main').analyze();
  expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`)).toEqual([]);
  const download = page.waitForEvent('download');
  await save.click();
  const saved = await download;
  expect(saved.suggestedFilename()).toBe('Saltmarsh hatch keep-out caliperFront front left.stl');
  const stl = readStl(await readFile(await saved.path()));
  expect(stl.ok && openEdges(stl.value)).toBe(0);
  // another question: what stands there is of before
  await page.getByRole('checkbox', { name: 'Tyre front' }).check();
  await page.getByText('What stands below is of before the last change.').waitFor();
  expect(await save.isDisabled()).toBe(true);
  expect(complaints).toEqual([]);
}, 120_000);
