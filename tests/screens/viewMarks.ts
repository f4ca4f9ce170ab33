import type { Page } from 'playwright-core';
import { drawn } from './bench';

/** Presses one of the words in a row of them: a view, an axle, a page of the column. */
export const choose = (page: Page, group: string, name: string): Promise<void> =>
  page.getByRole('group', { name: group, exact: true }).getByRole('button', { name, exact: true }).click();

/** Opens what is seldom changed in the view, does something there, and closes it. */
export const inShowList = async (page: Page, act: () => Promise<unknown>): Promise<void> => {
  await page.getByRole('button', { name: /^Show \d/ }).click();
  await act();
  await page.keyboard.press('Escape');
};

/** Switches things that are drawn over the solids. */
export const show = (page: Page, ...names: readonly RegExp[]): Promise<void> =>
  inShowList(page, async () => {
    for (const name of names) await page.getByRole('checkbox', { name }).click();
  });

/** Words over the picture. */
export const labelsOf = async (page: Page): Promise<readonly string[]> =>
  (await page.locator('.overlay .tag').allTextContents()).filter((text) => text !== '');

/** Pairs of labels that lie on one another, or on something that stands over the view. */
export const collisions = (page: Page): Promise<readonly string[]> =>
  page.evaluate(() => {
    const boxOf = (element: Element) => ({ words: element.textContent ?? '', box: element.getBoundingClientRect() });
    const labels = [...document.querySelectorAll('.overlay .tag')].filter(({ textContent }) => textContent).map(boxOf);
    const over = [...document.querySelectorAll('[data-over-view]')].map(boxOf);
    const meet = (a: DOMRect, b: DOMRect): boolean =>
      a.left < b.right - 1 && b.left < a.right - 1 && a.top < b.bottom - 1 && b.top < a.bottom - 1;
    return labels.flatMap((label, index) =>
      [...labels.slice(index + 1), ...over]
        .filter((other) => meet(label.box, other.box))
        .map((other) => `${label.words} on ${other.words}`),
    );
  });

/** Where the mark of a class stands in the window [px]. */
export const placeOfMark = async (page: Page, name: string): Promise<readonly [number, number]> => {
  await drawn(page);
  return page.evaluate((className) => {
    const mark = [...document.querySelectorAll(`.overlay path.${className}`)].find((path) => path.getAttribute('d'));
    if (!(mark instanceof SVGPathElement)) throw new Error(`${className} is not in sight`);
    const box = mark.getBoundingClientRect();
    return [box.x + box.width / 2, box.y + box.height / 2] as const;
  }, name);
};

/** Chooses a point by its name, or none with "none chosen". */
export const choosePoint = (page: Page, name: string): Promise<void> =>
  inShowList(page, () => page.getByLabel('Chosen point', { exact: true }).selectOption({ label: name }));
