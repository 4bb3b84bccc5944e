import { readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { placeNames } from '../../renderer/app/place-names.ts';
import { expect, test } from './program.ts';

const read = (path: string): string => readFileSync(new URL(`../../${path}`, import.meta.url), 'utf8');
const catalogue = new Set(Object.keys(JSON.parse(read('resources/texts/en.json')) as object));

/**
 * What stays as it is: months (the locale writes them), signs of quantities and units, and words that the farm keeps with its
 * records (categories of materials, kinds of work, names of places, as the invented farm has them).
 */
const asTheyAre = [
  ...Array.from({ length: 12 }, (_, at) => new Date(2026, at, 1).toLocaleDateString('en-US', { month: 'short' })),
  'pH',
  'CEC',
  'fl oz',
  'soil and amendments',
  'set out',
  'Tank',
];

/** Words of the shipped libraries and of the farm, which are no sentences of the program. */
const data = new Set([
  ...asTheyAre,
  ...['resources/crops.csv', 'resources/materials.csv', 'resources/produce-units.csv'].flatMap((file) =>
    read(file)
      .split(/[,\r\n"]+/)
      .map((cell) => cell.trim()),
  ),
]);

/** Every text on the page that a reader sees or hears, once. */
const textsOn = (page: Page): Promise<readonly string[]> =>
  page.evaluate(`(() => {
    const texts = new Set();
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    for (let node = walk.nextNode(); node !== null; node = walk.nextNode())
      if (node.parentElement.closest('script, style, .farm-name') === null) texts.add(node.textContent.trim());
    for (const element of document.querySelectorAll('[aria-label], [title], [placeholder]'))
      for (const name of ['aria-label', 'title', 'placeholder']) texts.add((element.getAttribute(name) ?? '').trim());
    return [...texts];
  })()`);

/** Buttons and heads whose words are cut off, and how far the page itself runs out at the side. */
const misfits = (page: Page): Promise<readonly string[]> =>
  page.evaluate(`(() => {
    const wide = document.documentElement.scrollWidth - document.documentElement.clientWidth;
    const cut = [...document.querySelectorAll('button.button, .tab, h1, h2, label')].filter(
      (each) => each.clientWidth > 0 && each.scrollWidth > each.clientWidth + 2 && getComputedStyle(each).overflow !== 'visible',
    );
    return [...(wide > 1 ? ['the page is ' + wide + ' px too wide'] : []), ...cut.map((each) => 'cut: ' + each.textContent)];
  })()`);

for (const place of placeNames) {
  test(`in the test language no sentence of ${place} stays English, and longer words fit 900 px`, async ({ page, host }) => {
    test.setTimeout(120_000);
    await page.setViewportSize({ width: 900, height: 860 });
    await page.addInitScript({ content: "localStorage.setItem('bedwright.language', 'en-XA')" });
    await page.goto(`${host.origin}/${place}`);
    await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
    const tabs = page.getByRole('tab');
    const count = await tabs.count();
    const bare: string[] = [];
    const unfit: string[] = [];
    for (let at = 0; at < Math.max(1, count); at += 1) {
      if (count > 0) await tabs.nth(at).click();
      await page.waitForLoadState('networkidle');
      const texts = await textsOn(page);
      expect(texts.filter((text) => text.includes('~')).length).toBeGreaterThan(10);
      bare.push(...texts.filter((text) => catalogue.has(text) && !data.has(text)).map((text) => `view ${at + 1}: ${text}`));
      unfit.push(...(await misfits(page)).map((text) => `view ${at + 1}: ${text}`));
    }
    expect({ bare, unfit }).toEqual({ bare: [], unfit: [] });
  });
}

test('where the comma is the decimal sign every figure, field and file follows', async ({ page, host }) => {
  await page.goto(`${host.origin}/farm`);
  await page.getByLabel('Numbers and dates as in').selectOption('de-DE');
  await page.getByLabel('Units', { exact: true }).selectOption('metric');
  await page.getByRole('button', { name: 'Save settings' }).click();
  await expect(page.getByRole('status').last()).not.toHaveText('');
  await page.goto(`${host.origin}/beds`);
  const grid = page.getByRole('grid', { name: 'Beds' });
  await expect(grid).toBeVisible();
  const numbers = (await grid.getByRole('gridcell').allTextContents()).filter((text) => /^\d[\d.,]*$/.test(text));
  expect(numbers.some((text) => /,\d/.test(text))).toBe(true);
  expect(numbers.filter((text) => /\.\d{1,2}$|\.\d{4,}$/.test(text))).toEqual([]);
  // a decimal comma typed into a cell is kept
  const cell = grid.locator('[data-row="0"] [data-column="4"]');
  await cell.dblclick();
  const editor = grid.getByRole('textbox');
  await editor.fill('2,75');
  await editor.press('Enter');
  await expect(cell).toContainText(',');
  await page.getByRole('button', { name: /^Undo/ }).first().click();
});
