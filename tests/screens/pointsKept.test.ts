import { expect, test } from 'vitest';
import { openWindow } from './chromium';
import { field, seriousFaults, setField, step } from './pointsPage';
import { choose } from './viewMarks';

test(
  'what was typed on Points and not taken yet is there again: a list and its names, each axle’s own, and a part half made',
  { timeout: 120_000 },
  async () => {
    const { page, complaints } = await openWindow({ reducedMotion: 'reduce' });
    await page.locator('tr[data-reading="camber"]').waitFor();
    const goTo = (name: string) => page.getByRole('navigation').getByRole('link', { name, exact: true }).click();
    await goTo('Points');
    await page.getByRole('button', { name: 'New car' }).click();
    const newCar = page.getByRole('region', { name: 'New car' });
    await choose(page, 'Unit of the file', 'inches');

    // a size that is none makes no car
    const wheelbase = newCar.getByLabel('Wheelbase');
    await wheelbase.fill('abc');
    await newCar.getByRole('radio', { name: /list of coordinates/ }).check();
    await newCar.getByRole('button', { name: 'Next: coordinates' }).click();
    expect(await newCar.getByRole('alert').innerText()).toContain('Wheelbase');
    expect(await wheelbase.evaluate((input) => input === document.activeElement)).toBe(true);
    await wheelbase.fill('104');
    await newCar.getByRole('button', { name: 'Next: coordinates' }).click();

    // a row named for the front axle is no point of the rear one
    const panel = page.getByRole('region', { name: 'Coordinates in' });
    await page.getByLabel('The list', { exact: true }).fill('Floor bolt,9.2913,-13.8583,11.5748');
    await page.getByLabel('Add to Z', { exact: true }).fill('-20');
    const row = page.getByLabel('Floor bolt is', { exact: true });
    await row.selectOption('rackEnd');
    await panel.getByRole('button', { name: 'Take 1 point' }).waitFor();
    await choose(page, 'Axle', 'Rear');
    expect(await row.inputValue()).toBe('');
    expect(await panel.getByRole('button', { name: /^Take/ }).isDisabled()).toBe(true);
    await choose(page, 'Axle', 'Front');

    // another page and back
    await goTo('Bench');
    await goTo('Points');
    expect(await row.inputValue()).toBe('rackEnd');
    expect(await page.getByLabel('Add to Z', { exact: true }).inputValue()).toBe('-20');

    // taken and closed: the frame is that of the next list too, and that is said
    await panel.getByRole('button', { name: 'Take 1 point' }).click();
    await panel.getByRole('button', { name: 'Close' }).click();
    await choose(page, 'Axle', 'Rear');
    await page.getByRole('button', { name: 'Coordinates in' }).click();
    expect(await page.getByLabel('The list', { exact: true }).inputValue()).toBe('');
    expect(await page.getByLabel('Add to Z', { exact: true }).inputValue()).toBe('-20');
    expect(await panel.innerText()).toContain('that of the list before');
    await panel.getByRole('button', { name: 'Close' }).click();

    // a part that is half made stays through steps and pages, and goes with Cancel
    await step(page, 'Wheel and body').click();
    await page.getByRole('button', { name: 'Add body' }).click();
    await setField(page, 'Mass', '640');
    await step(page, 'Limits').click();
    // a limit is in the unit of its reading, as chosen, and takes others
    await page.getByRole('button', { name: 'Add limit' }).click();
    await field(page, 'Reading').selectOption({ label: 'Track' });
    await field(page, 'Axle').selectOption('front');
    await setField(page, 'Least', '1540 mm');
    expect(await field(page, 'Least').inputValue()).toBe('60.629921');
    await setField(page, 'Most', '50');
    await page.locator('.draft').getByRole('button', { name: 'Make it' }).click();
    expect(await page.locator('.draft .leaffault').first().innerText()).toContain('“Most”');
    await setField(page, 'Most', '62');
    await page.locator('.draft').getByRole('button', { name: 'Make it' }).click();
    await page.locator('details.part', { hasText: 'Track front' }).waitFor();
    await step(page, 'Wheel and body').click();
    expect(await field(page, 'Mass').inputValue()).toBe('640');
    await goTo('Bench');
    await goTo('Points');
    expect(await step(page, 'Wheel and body').getAttribute('aria-current')).toBe('step');
    expect(await field(page, 'Mass').inputValue()).toBe('640');
    await page.locator('.draft').getByRole('button', { name: 'Cancel' }).click();
    await page.getByRole('button', { name: 'Add body' }).click();
    expect(await field(page, 'Mass').inputValue()).toBe('');
    await page.locator('.draft').getByRole('button', { name: 'Cancel' }).click();

    // so does a part inside of one, and what is typed into it and not taken; each goes with the part that it is in
    await step(page, 'Spring, damper, bar').click();
    await page.getByRole('button', { name: 'Add anti-roll bar' }).click();
    const within = page.locator('.draft .draft');
    const inHole = (name: RegExp) => within.getByRole('textbox', { name });
    await page.locator('.draft').getByRole('button', { name: 'Add hole' }).click();
    await inHole(/^Name/).fill('Soft');
    await inHole(/^Rate/).fill('forty');
    await goTo('Bench');
    await goTo('Points');
    expect(await inHole(/^Name/).inputValue()).toBe('Soft');
    expect(await inHole(/^Rate/).inputValue()).toBe('forty');
    expect(await within.locator('.leaffault').first().innerText()).toContain('forty');
    await step(page, 'Limits').click();
    await step(page, 'Spring, damper, bar').click();
    expect(await inHole(/^Rate/).inputValue()).toBe('forty');
    await page.locator('.draft').getByRole('button', { name: 'Cancel' }).last().click();
    await page.getByRole('button', { name: 'Add anti-roll bar' }).click();
    expect(await within.count()).toBe(0);
    await page.locator('.draft').getByRole('button', { name: 'Cancel' }).click();

    // what contradicts itself is taken and said: over the form, and at its field
    const form = page.locator('.forms');
    for (const [label, length] of [
      ['Free length', '9'],
      ['Installed length', '20'],
    ] as const) {
      // prettier-ignore
      await form.getByLabel(label, { exact: true }).first().fill(length);
      await form.getByLabel(label, { exact: true }).first().press('Enter');
    }
    await page.locator('.carcautions', { hasText: 'loose at design' }).waitFor();
    expect(await form.locator('.leafnote').innerText()).toContain('longer than its free length');
    expect(await seriousFaults(page)).toEqual([]);
    expect(complaints).toEqual([]);
  },
);
