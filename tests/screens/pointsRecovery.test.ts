import { readdir, readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { temporaryFolder } from '../electron/temporaryFolder';
import { launchDoomedChromium } from './chromium';
import { seriousFaults } from './pointsPage';
import { startProgram } from './startProgram';
import { choose } from './viewMarks';

const QUIET = { viewport: { width: 1280, height: 720 }, reducedMotion: 'reduce' } as const;

const given = (page: Page) => page.getByRole('region', { name: 'Points of the new car' });
const cell = (page: Page, name: string) => given(page).getByLabel(name, { exact: true });
const give = async (page: Page, name: string, text: string): Promise<void> => {
  await cell(page, name).fill(text);
  await cell(page, name).press('Tab');
};

test(
  'points of a new car are being given: kill server and browser, start both again, go on, and it becomes a car',
  { timeout: 180_000 },
  async () => {
    const state = await temporaryFolder();
    /** What is kept, by the first line of each copy. */
    const copies = async (): Promise<readonly string[]> => {
      const folder = `${state}/jounce/recovery`;
      const names = (await readdir(folder).catch(() => [])).filter((name) => name.endsWith('.copy'));
      const heads = await Promise.all(names.map(async (name) => (await readFile(`${folder}/${name}`, 'utf8')).split('\n')[0]));
      return heads.map((head) => (JSON.parse(head ?? '') as { note: { title: string } }).note.title);
    };
    const first = await startProgram(state);
    const doomed = await launchDoomedChromium();
    const lost = await (await doomed.browser.newContext(QUIET)).newPage();
    await lost.goto(first.address);
    await lost.locator('tr[data-reading="camber"]').waitFor();
    await lost.getByRole('navigation').getByRole('link', { name: 'Points' }).click();
    await lost.getByRole('button', { name: 'New car' }).click();
    const newCar = lost.getByRole('region', { name: 'New car' });
    await newCar.getByLabel('Name', { exact: true }).fill('Fen saloon');
    await newCar.getByRole('region', { name: 'Rear axle' }).getByRole('button', { name: 'No such axle' }).click();
    await newCar.getByRole('radio', { name: /^Empty points/ }).check();
    await newCar.getByRole('button', { name: 'Next: points' }).click();
    expect(await given(lost).innerText()).toContain('kept on this machine as you give it');
    const ball = { 'X fwd': '8', 'Y left': '724.25', 'Z up': '195' };
    for (const [axis, text] of Object.entries(ball)) await give(lost, `ballJoint, ${axis}, front, mm`, text);
    await give(lost, 'armFront, X fwd, front, mm', '15');
    await give(lost, 'camber, front, °', '-0.5');
    // another page and back: the points are where they were left
    await lost.getByRole('navigation').getByRole('link', { name: 'Bench' }).click();
    await lost.getByRole('navigation').getByRole('link', { name: 'Points' }).click();
    expect(await cell(lost, 'ballJoint, Y left, front, mm').inputValue()).toBe('724.25');
    await expect.poll(copies, { timeout: 10_000 }).toEqual(['Fen saloon, unfinished']);
    await lost.waitForTimeout(1000); // the last of it is on the disk within half a second

    first.child.kill('SIGKILL');
    await doomed.kill();

    const second = await startProgram(state);
    const doomedToo = await launchDoomedChromium();
    const page = await (await doomedToo.browser.newContext(QUIET)).newPage();
    await page.goto(second.address);
    const dialog = page.getByRole('dialog', { name: /^Jounce ended.* while the points of a new car were given$/ });
    await dialog.waitFor();
    expect(await dialog.innerText()).toMatch(/Of Fen saloon, 1 of 8 points were kept at \d\d:\d\d:\d\d/);
    for (const theme of ['Dark', 'Light'] as const) {
      await page.emulateMedia({ colorScheme: theme === 'Dark' ? 'dark' : 'light' });
      expect(await seriousFaults(page), theme).toEqual([]);
    }
    // thrown away only at the second press
    await dialog.getByRole('button', { name: 'Throw the copy away…' }).click();
    await dialog.getByRole('button', { name: 'Throw it away for good' }).waitFor();
    expect(await copies()).toEqual(['Fen saloon, unfinished']);
    // later: it waits in the file menu
    await page.keyboard.press('Escape');
    await page.getByRole('button', { name: 'File', exact: true }).click();
    await page.getByRole('menuitem', { name: /^Fen saloon, unfinished/ }).click();
    await page.getByRole('dialog').getByRole('button', { name: 'Go on giving its points' }).click();
    expect(await given(page).getByRole('status').innerText()).toContain('1 of 8 points given');
    expect(await cell(page, 'ballJoint, Y left, front, mm').inputValue()).toBe('724.25');
    expect(Number(await cell(page, 'armFront, X fwd, front, mm').inputValue())).toBe(15);
    expect(await cell(page, 'armFront, Y left, front, mm').inputValue()).toBe('');
    expect(await cell(page, 'camber, front, °').inputValue()).toMatch(/^[−-]0\.5/);

    const rest = {
      armFront: [15, 360, 212],
      armRear: [-290, 370, 214],
      strutTop: [-38, 577, 830],
      strutFoot: [-2, 634, 400],
      rackEnd: [-140, 340, 257],
      tieRodEnd: [-124, 697, 246],
      wheelCentre: [0, 776, 310],
    };
    for (const [name, at] of Object.entries(rest))
      for (const [index, axis] of Object.keys(ball).entries()) await give(page, `${name}, ${axis}, front, mm`, String(at[index]));
    await give(page, 'toe, front, °', '0.1');
    await give(page, 'loaded radius, front, mm', '310');
    await given(page).getByRole('button', { name: 'Open the car' }).click();
    await page.getByRole('heading', { level: 1, name: 'Fen saloon' }).waitFor();
    await choose(page, 'Side', 'Left');
    // the copy of its points made room for one of the car
    await expect.poll(copies, { timeout: 10_000 }).toEqual(['Fen saloon']);
    await page.getByRole('button', { name: 'File', exact: true }).click();
    expect(await page.getByRole('menuitem', { name: /unfinished/ }).count()).toBe(0);

    second.child.kill('SIGKILL');
    await doomedToo.kill();
    const third = await startProgram(state);
    const { browser } = await launchDoomedChromium();
    const last = await (await browser.newContext(QUIET)).newPage();
    await last.goto(third.address);
    const car = last.getByRole('dialog');
    await car.getByRole('button', { name: 'Throw the copy away…' }).click();
    expect(await copies()).toEqual(['Fen saloon']);
    await car.getByRole('button', { name: 'Throw it away for good' }).click();
    await expect.poll(copies, { timeout: 10_000 }).toEqual([]);
    await car.waitFor({ state: 'hidden' });
  },
);
