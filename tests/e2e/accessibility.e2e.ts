import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { placeNames } from '../../renderer/app/place-names.ts';
import { expect, test } from './program.ts';

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** What axe finds on the page as it is now, each as one readable line. */
async function findings(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(rules).analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.target.join(' ')} ${node.failureSummary ?? ''}`),
  );
}

async function open(page: Page, origin: string, path: string): Promise<void> {
  await page.goto(`${origin}${path}`);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await page.waitForLoadState('networkidle');
}

const look = (page: Page, stored: string) =>
  page.addInitScript({ content: `localStorage.setItem('bedwright.look', '${stored}')` });

for (const theme of ['light normal', 'dark normal', 'light high', 'dark high'] as const) {
  test(`every place passes the accessibility rules, ${theme} contrast`, async ({ page, host }) => {
    test.setTimeout(180_000);
    await look(page, theme);
    for (const place of placeNames) {
      await open(page, host.origin, `/${place}`);
      expect(await findings(page), place).toEqual([]);
    }
  });
}

test('the open sheet, help, find box and dialogs pass them too', async ({ page, host }) => {
  test.setTimeout(120_000);
  await open(page, host.origin, '/library?tab=materials');
  await page.getByRole('gridcell', { name: 'pieces' }).first().click();
  await expect(page.getByRole('complementary')).toBeVisible();
  expect(await findings(page), 'sheet').toEqual([]);
  await page.keyboard.press('F1');
  await expect(page.getByRole('heading', { name: 'Help: Library' })).toBeVisible();
  expect(await findings(page), 'help').toEqual([]);
  await page.keyboard.press('Control+k');
  await page.getByRole('combobox', { name: /Find/ }).fill('b-1');
  expect(await findings(page), 'find').toEqual([]);
  await page.keyboard.press('Escape');
  await page.getByRole('button', { name: 'Choose columns' }).click();
  expect(await findings(page), 'columns').toEqual([]);
  await page.keyboard.press('Escape');
  for (const tab of ['crops', 'designs', 'suppliers', 'offers']) {
    await open(page, host.origin, `/library?tab=${tab}`);
    expect(await findings(page), tab).toEqual([]);
  }
  for (const tab of ['new', 'files', 'backups', 'start']) {
    await open(page, host.origin, `/farm?tab=${tab}`);
    expect(await findings(page), tab).toEqual([]);
  }
});

test('keys alone go to a place, through its table, into a sheet and back', async ({ page, host }) => {
  await open(page, host.origin, '/week');
  await page.keyboard.press('Alt+9');
  await expect(page.getByRole('heading', { name: 'Library' })).toBeVisible();
  await page.goto(`${host.origin}/library?tab=materials`);
  await expect(page.getByRole('grid')).toBeVisible();
  for (let presses = 0; presses < 60; presses += 1) {
    if (await page.evaluate("document.activeElement?.matches('td') === true")) break;
    await page.keyboard.press('Tab');
  }
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Alt+Enter');
  await expect(page.getByRole('complementary')).toBeVisible();
  await page.getByRole('complementary').getByRole('button', { name: 'Close the sheet' }).focus();
  await page.keyboard.press('Escape');
  await expect(page.getByRole('complementary')).toHaveCount(0);
  expect(await page.evaluate('document.activeElement?.tagName')).toBe('TD');
});

test('nothing scrolls sideways in a window of 900 px at 200 % zoom', async ({ page, host }) => {
  // zoom of 200 % halves the window's width and height in CSS pixels
  await page.setViewportSize({ width: 450, height: 350 });
  for (const place of placeNames) {
    await open(page, host.origin, `/${place}`);
    const wide = await page.evaluate<number>('document.documentElement.scrollWidth - window.innerWidth');
    expect(wide, place).toBeLessThanOrEqual(0);
  }
});
