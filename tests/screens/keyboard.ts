import type { Locator, Page } from 'playwright-core';

/** Presses of Tab after which a control counts as out of reach. */
const MOST_PRESSES = 250;

/** Goes to a control with the Tab key alone. */
export const tabTo = async (page: Page, control: Locator): Promise<void> => {
  await control.waitFor();
  for (let presses = 0; presses < MOST_PRESSES; presses += 1) {
    if (await control.evaluate((element) => element === document.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`Tab does not reach ${String(control)}`);
};

export const pressOn = async (page: Page, control: Locator, key = 'Enter'): Promise<void> => {
  await tabTo(page, control);
  await page.keyboard.press(key);
};

/** Types into a field in place of what stands there. @param then - the key that takes it; Enter asks a study */
export const typeInto = async (page: Page, control: Locator, text: string, then = 'Enter'): Promise<void> => {
  await tabTo(page, control);
  await page.keyboard.press('Control+a');
  await page.keyboard.insertText(text);
  await page.keyboard.press(then);
};
