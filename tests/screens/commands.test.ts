import { AxeBuilder } from '@axe-core/playwright';
import { expect, test } from 'vitest';
import { openBench } from './bench';

test.each(['light', 'dark'] as const)(
  'the command list on the %s theme: typed, chosen, done, by keyboard alone',
  async (colorScheme) => {
    const { page, complaints } = await openBench('car-23', { colorScheme });
    await page.keyboard.press('Control+k');
    const list = page.getByRole('dialog', { name: 'Command list' });
    await list.waitFor();
    const { violations } = await new AxeBuilder({ page }).include('.commandlist').analyze();
    expect(violations.map(({ id, nodes }) => `${id}: ${nodes[0]?.html.slice(0, 120)}`)).toEqual([]);

    await page.keyboard.type('camber bolt');
    await expect.poll(() => list.getByRole('option').first().innerText()).toMatch(/Go to Camber bolt, rear/);
    await page.keyboard.press('Enter');
    expect(await list.count()).toBe(0);
    expect(
      await page.getByRole('group', { name: 'Axle' }).getByRole('button', { name: 'Rear' }).getAttribute('aria-pressed'),
    ).toBe('true');
    await expect.poll(() => page.evaluate(() => document.activeElement?.getAttribute('aria-label'))).toMatch(/^Camber bolt/);

    await page.getByRole('button', { name: 'Commands' }).click();
    await page.keyboard.type('no such thing');
    expect(await list.innerText()).toContain('Nothing is called');
    await page.keyboard.press('Escape');
    expect(await list.count()).toBe(0);
    expect(complaints).toEqual([]);
  },
);
