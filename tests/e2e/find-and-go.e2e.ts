import type { Page } from '@playwright/test';
import { expect, test } from './program.ts';

const find = async (page: Page, typed: string): Promise<void> => {
  await page.keyboard.press('Control+k');
  await page.keyboard.type(typed);
  await expect(page.getByRole('listbox', { name: 'Found' }).getByRole('option').first()).toBeVisible();
};

test('one box goes to a tab, a line, an offer, a soil test and a heap, and forgives a slip', async ({ page, host }) => {
  await page.goto(`${host.origin}/week`);
  await expect(page.getByRole('heading', { name: 'This week', level: 1 })).toBeVisible();

  await find(page, 'stores and');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('tab', { name: 'Stores and stress' })).toHaveAttribute('aria-selected', 'true');

  await find(page, 'bag line');
  await page.getByRole('option', { name: /^Water line Bag line/ }).click();
  await expect(page.getByRole('tab', { name: 'Line', exact: true })).toHaveAttribute('aria-selected', 'true');
  await expect(page.getByRole('combobox', { name: 'Water line' }).locator('option:checked')).toHaveText(/Bag line/);

  await find(page, 'block a');
  await page
    .getByRole('option', { name: /^Soil test Block A/ })
    .first()
    .click();
  await expect(page.getByRole('complementary').getByRole('heading', { name: /Block A/ })).toBeVisible();

  await find(page, 'tomatoo');
  await expect(page.getByRole('option', { name: /^Crop Tomato/ }).first()).toBeVisible();
  await page.keyboard.press('Escape');

  await find(page, 'offers');
  await page.keyboard.press('Enter');
  await expect(page.getByRole('tab', { name: 'Offers' })).toHaveAttribute('aria-selected', 'true');

  await find(page, 'last frost');
  await page.getByRole('option', { name: /^Setting Last frost/ }).click();
  await expect(page.getByRole('region', { name: 'Frost' }).getByRole('textbox').first()).toBeFocused();

  await find(page, 'need mix');
  await page
    .getByRole('option', { name: /^Need / })
    .first()
    .click();
  await expect(page.getByRole('complementary')).toBeVisible();

  await page.keyboard.press('Control+k');
  await page.keyboard.type('xyzzy');
  await expect(page.getByText('Nothing here is called “xyzzy”.')).toBeVisible();
});
