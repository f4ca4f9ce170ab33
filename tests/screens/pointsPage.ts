import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';

/** A car measured somewhere else: inches, X back, Y right, decimal commas, names as they were written on the floor. */
export const MEASURED = [
  'arm front;-0,6;-14,2;8,3',
  'arm_rear;11,4;-14,6;8,4',
  'BallJoint;-0,3;-28,5;7,7',
  'strut top;1,5;-22,7;32,7',
  'strut foot;0,1;-25;15,7',
  'rack end;5,5;-13,4;10,1',
  'tieRod_out;4,9;-27,4;9,7',
  'wheelCentre;0;-30,6;12,2',
].join('\n');

/** What axe finds that keeps somebody out. */
export const seriousFaults = async (page: Page): Promise<readonly string[]> => {
  const { violations } = await new AxeBuilder({ page }).analyze();
  return violations
    .filter(({ impact }) => impact === 'serious' || impact === 'critical')
    .map(({ id, nodes }) => `${id}: ${nodes.map(({ target }) => target.join(' ')).join(', ')}`);
};
/** A step on the way to a new car, by its name. */
export const step = (page: Page, name: string) =>
  page.getByRole('navigation', { name: 'Steps to a new car' }).getByRole('button', { name });
/** A field of the part that is being made. */
export const field = (page: Page, label: string) => page.locator('.draft').getByLabel(label, { exact: true });
export const setField = async (page: Page, label: string, text: string): Promise<void> => {
  await field(page, label).fill(text);
  await field(page, label).press('Enter');
};
