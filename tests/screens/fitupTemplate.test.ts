import { AxeBuilder } from '@axe-core/playwright';
import DxfParser from 'dxf-parser';
import { readFile } from 'node:fs/promises';
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { readPdf } from '../geometry/sheet/pdfReader';
import { dayOf } from '../../renderer/sheet/sheetChoices';
import { callOff } from './callOff';
import { openWindow } from './chromium';

const faultsOf = async (page: Page): Promise<readonly string[]> => {
  const { violations } = await new AxeBuilder({ page }).include('main').analyze();
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
};

const openKeepOut = async (options: Parameters<typeof openWindow>[0] = {}) => {
  const opened = await openWindow({ reducedMotion: 'reduce', graphics: 'none', ...options });
  const { page } = opened;
  await page.getByRole('heading', { name: 'Saltmarsh hatch' }).waitFor();
  await page.getByRole('navigation').getByRole('link', { name: 'Fit-up' }).click();
  await page.getByRole('group', { name: 'Fit-up' }).getByRole('button', { name: 'Keep-out' }).click();
  return opened;
};

const setField = async (page: Page, name: RegExp, value: string) => {
  const field = page.getByRole('spinbutton', { name });
  await field.fill(value);
  await field.press('Enter');
};

/** Words and arrows of the preview that lie on a point's cross or on the outline, by what they say. */
const onEachOther = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.templateside')].flatMap((side) => {
      const boxOf = (element: Element) => element.getBoundingClientRect();
      const fixed = [...side.querySelectorAll('text, .templatebar')].filter(
        (element) => element.closest('g:has(title)') === null,
      );
      const crosses = [...side.querySelectorAll('.templatepoint, .templateswept')];
      return fixed.flatMap((one) =>
        crosses.flatMap((other) => {
          const [a, b] = [boxOf(one), boxOf(other)];
          const isOn = a.left < b.right && b.left < a.right && a.top < b.bottom && b.top < a.bottom;
          return isOn ? [`${one.textContent || one.className} on ${other.parentElement?.textContent ?? ''}`] : [];
        }),
      );
    }),
  );

/** Arrows of the preview with their words, and the bar, that lie on each other, by what they say. */
const inLegend = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() =>
    [...document.querySelectorAll('.templateside')].flatMap((side) => {
      const all = [...side.querySelectorAll('.templatebar')].map((bar) => bar.closest('g') ?? bar);
      return all.flatMap((one, i) =>
        all.slice(i + 1).flatMap((other) => {
          const [a, b] = [one.getBoundingClientRect(), other.getBoundingClientRect()];
          return a.left < b.right && b.left < a.right ? [`${one.textContent || 'bar'} on ${other.textContent}`] : [];
        }),
      );
    }),
  );

const MM = 72 / 25.4;

test('a bracket for a duct of 76 mm beside the tyre: from the tyre to sheets of paper, a cutter’s file and the printer', async () => {
  const { page, complaints } = await openKeepOut();
  await page.getByLabel('everything that moves').uncheck();
  await page.getByRole('checkbox', { name: 'Tyre front' }).check();
  await setField(page, /^Grown by/, '48');
  await setField(page, /^Surface outside/, '8');
  await page.getByRole('button', { name: 'Work it out' }).click();
  const template = page.getByRole('region', { name: 'Template' });
  await template.waitFor({ timeout: 120_000 });
  // both wheels were asked about: both are seen
  const preview = page.getByRole('group', { name: 'Template, to scale' });
  await preview.getByRole('img', { name: /^Section on the left side, [\d,]+ × [\d,]+ mm, 1 outline, \d+ sheets/ }).waitFor();
  await preview.getByRole('img', { name: /^Section on the right side/ }).waitFor();
  await template
    .getByRole('status')
    .getByText(/^\d+ sheets of A4 and the words before them$/)
    .waitFor();
  // the hole of the rim is not seen, and that is said
  await page
    .getByRole('region', { name: 'Keep-out' })
    .getByText(/Filled right through, the inside of the rim with it: Tyre front\./)
    .waitFor();
  // which side of the line is to be kept free, and what the growth is for
  await preview.getByText('Hatched: keep out.').first().waitFor();
  expect(await preview.locator('pattern').count()).toBe(2);
  await template.getByText(/^Hatched: keep out\. Grown by 48\.0 mm: .*each of its faces/).waitFor();
  expect(await faultsOf(page)).toEqual([]);
  await page.setViewportSize({ width: 1280, height: 720 });
  await expect.poll(() => onEachOther(page)).toEqual([]);
  for (const way of ['Across the car', 'Along the car', 'Level']) {
    await template.getByRole('group', { name: 'Plane' }).getByRole('button', { name: way }).click();
    await preview
      .getByText(way === 'Level' ? /seen from above/ : way === 'Along the car' ? /seen from the left/ : /seen from the front/)
      .first()
      .waitFor();
    expect(await preview.locator('.templatebar').count(), way).toBe(6);
    expect(await inLegend(page), way).toEqual([]);
  }
  if (process.env['JOUNCE_PICTURES']) await page.screenshot({ path: `${process.env['JOUNCE_PICTURES']}/template.png` });
  // level, through the wheel centre; on Letter
  await template.getByRole('group', { name: 'Plane' }).getByRole('button', { name: 'Level' }).click();
  await template.getByLabel('Plane through a point').selectOption({ label: 'through wheel centre' });
  await template.getByLabel('Paper').selectOption('Letter');
  await template.getByText(/sheets of Letter/).waitFor();
  const sheets = Number(/^\d+/.exec(await template.getByRole('status').last().innerText())?.[0]);
  const pdfComes = page.waitForEvent('download');
  await template.getByRole('button', { name: 'Save PDF' }).click();
  const pdf = await pdfComes;
  expect(pdf.suggestedFilename()).toMatch(/^Saltmarsh hatch template tyreFront front both z [\d.]+\.pdf$/);
  const { pages } = readPdf(await readFile(await pdf.path()));
  // a page of words for each side
  expect(pages).toHaveLength(sheets + 2);
  for (const { width, height } of pages) {
    expect(width).toBeCloseTo(215.9 * MM, 1);
    expect(height).toBeCloseTo(279.4 * MM, 1);
  }
  const words = pages.flatMap(({ texts }) => texts.map(({ text }) => text)).join(' ');
  for (const said of [
    'left side',
    'right side',
    'Grown by 48 mm',
    'Hatched: keep out.',
    dayOf(new Date()),
    'Print at 100 %',
    'Prove it on the car',
    'FRONT',
  ])
    expect(words).toContain(said);
  const dxfComes = page.waitForEvent('download');
  await template.getByRole('button', { name: 'Save DXF, right' }).click();
  const dxf = await dxfComes;
  expect(dxf.suggestedFilename()).toMatch(/^Saltmarsh hatch template tyreFront front right z [\d.]+\.dxf$/);
  const read = new DxfParser().parseSync(await readFile(await dxf.path(), 'latin1'));
  expect(read?.entities.some(({ type, layer }) => type === 'POLYLINE' && layer === 'OUTLINE')).toBe(true);
  // what goes to the printer: the sheets at their size, and nothing of the window
  await page.evaluate(() => {
    window.print = () =>
      document.documentElement.setAttribute('data-printed', String(document.querySelectorAll('.templateprint > svg').length));
  });
  await template.getByRole('button', { name: 'Print' }).click();
  await page.locator(':root[data-printed]').waitFor();
  expect(Number(await page.evaluate(() => document.documentElement.getAttribute('data-printed')))).toBe(sheets + 2);
  const printed = (await page.pdf({ preferCSSPageSize: true })).toString('latin1');
  const boxes = [...printed.matchAll(/\/MediaBox\s*\[0 0 ([\d.]+) ([\d.]+)\]/g)];
  expect(boxes).toHaveLength(sheets + 2);
  for (const [, width, height] of boxes) {
    // the browser rounds a page to whole pixels
    expect(Math.abs(Number(width) - 215.9 * MM)).toBeLessThan(1);
    expect(Math.abs(Number(height) - 279.4 * MM)).toBeLessThan(1);
  }
  await page.evaluate(() => window.dispatchEvent(new Event('afterprint')));
  await page.locator('.templateprint').waitFor({ state: 'detached' });
  // a plane that misses says so, and nothing can be saved
  await setField(page, /^Plane at z/, '5000');
  await template.getByRole('alert').first().getByText('No section on the left: all that is swept lies').waitFor();
  expect(await template.getByRole('button', { name: 'Save PDF' }).isDisabled()).toBe(true);
  expect(complaints).toEqual([]);
}, 240_000);

test('tyre, rods and disc of the axle’s own numbers can be kept out of; Escape calls it off at once, and the bar never steps back', async () => {
  const { page, complaints } = await openKeepOut();
  await page.getByLabel('everything that moves').uncheck();
  for (const name of ['Bar link', 'Drive shaft']) await page.getByRole('checkbox', { name, exact: true }).waitFor();
  await page.getByRole('checkbox', { name: 'Tie rod', exact: true }).check();
  await page.getByLabel('Wheels').selectOption('left');
  await setField(page, /^Surface outside/, '8');
  await page.getByRole('button', { name: 'Work it out' }).click();
  await page.getByText(/triangles, closed, .* litres/).waitFor({ timeout: 120_000 });
  expect(await page.getByRole('region', { name: 'Keep-out' }).locator('dd').first().innerText()).toBe('Tie rod');
  // everything that moves takes long enough to watch
  await page.getByLabel('everything that moves').check();
  await setField(page, /^Surface outside/, '2');
  await page.getByRole('button', { name: 'Work it out' }).click();
  await page.getByRole('progressbar').waitFor({ timeout: 60_000 });
  const told = await page.evaluate(async () => {
    const seen: number[] = [];
    const until = performance.now() + 8000;
    while (performance.now() < until) {
      const bar = document.querySelector('.runprogress progress');
      if (!(bar instanceof HTMLProgressElement)) break;
      if (seen.at(-1) !== bar.value) seen.push(bar.value);
      await new Promise(requestAnimationFrame);
    }
    return seen;
  });
  expect(told.length).toBeGreaterThan(2);
  expect(told).toEqual([...told].sort((a, b) => a - b));
  expect(await callOff(page)).toBeLessThan(100);
  expect(complaints).toEqual([]);
}, 240_000);

test.each(['light', 'dark'] as const)(
  'every tab of fit-up is well for those who hear or tab through it: %s',
  async (colorScheme) => {
    const { page, complaints } = await openKeepOut({ colorScheme });
    const tabs = page.getByRole('group', { name: 'Fit-up' });
    for (const [name, table] of [
      ['Clearance', 'Table of clearance'],
      ['Joints', 'Table of joints'],
      ['Stroke, threads', 'Table of stroke'],
      ['Link loads', 'Table of link loads'],
    ] as const) {
      await tabs.getByRole('button', { name }).click();
      await page.getByRole('region', { name: table }).locator('tbody tr').first().waitFor({ timeout: 120_000 });
      expect(await faultsOf(page), name).toEqual([]);
    }
    await tabs.getByRole('button', { name: 'Keep-out' }).click();
    expect(await faultsOf(page), 'keep-out, before').toEqual([]);
    await page.getByLabel('everything that moves').uncheck();
    expect(await faultsOf(page), 'nothing chosen').toEqual([]);
    await page.getByRole('checkbox', { name: 'Caliper front' }).check();
    await setField(page, /^Surface outside/, '8');
    await page.getByRole('button', { name: 'Work it out' }).click();
    const template = page.getByRole('region', { name: 'Template' });
    await template.waitFor({ timeout: 120_000 });
    for (const way of ['Any', 'Along the car', 'Level']) {
      await template.getByRole('group', { name: 'Plane' }).getByRole('button', { name: way }).click();
      expect(await faultsOf(page), way).toEqual([]);
    }
    await setField(page, /^Plane at z/, '4000');
    await template.getByRole('alert').first().waitFor();
    expect(await faultsOf(page), 'missed').toEqual([]);
    expect(complaints).toEqual([]);
  },
  240_000,
);
