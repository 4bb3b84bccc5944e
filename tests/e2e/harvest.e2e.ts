import type { Page } from '@playwright/test';
import { expect, test } from './program.ts';

const said = (page: Page) => page.getByRole('contentinfo');
const entry = (page: Page) => page.getByRole('form', { name: 'Enter a harvest' });

async function openOn(page: Page, origin: string, day: string): Promise<void> {
  await page.goto(`${origin}/harvest?from=2026-10-01&to=2026-12-31`);
  await entry(page).getByLabel('Day').fill(day);
}

test('a harvest is logged by keyboard alone, stands in the log, and is taken back', async ({ page, host }) => {
  await openOn(page, host.origin, '2026-10-20');
  const finder = entry(page).getByRole('combobox', { name: 'Bed or crop' });
  await finder.focus();
  await page.keyboard.type('d-24 spin');
  await expect(page.getByRole('option').first()).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(entry(page).getByLabel('Amount')).toBeFocused();
  await page.keyboard.type('1.25 kg');
  await page.keyboard.press('Enter');
  await expect(said(page)).toContainText('Logged 1.25 kg');
  await expect(finder).toBeFocused();
  await expect(page.getByRole('row', { name: /Oct 20, 2026 Spinach .* 1\.25 kg/ })).toBeVisible();
  await page.getByRole('button', { name: /Undo log a harvest of .*: 1.25 kg/i }).click();
  await expect(page.getByRole('row', { name: /Oct 20, 2026 Spinach .* 1\.25 kg/ })).toHaveCount(0);
});

test('a wrong entry is said at its field and nothing is written', async ({ page, host }) => {
  await openOn(page, host.origin, '2026-10-20');
  await entry(page).getByRole('button', { name: 'Log harvest' }).click();
  await expect(entry(page).getByText('Choose a planting.')).toBeVisible();
  const finder = entry(page).getByRole('combobox', { name: 'Bed or crop' });
  await finder.fill('d-24 spin');
  await page.keyboard.press('Enter');
  await entry(page).getByLabel('Amount').fill('lots');
  await page.keyboard.press('Enter');
  await expect(entry(page).getByText(/"lots" is not an amount/)).toBeVisible();
});

test('an amount ten times the record is asked about once, then kept', async ({ page, host }) => {
  await openOn(page, host.origin, '2026-10-20');
  await entry(page).getByRole('combobox', { name: 'Bed or crop' }).fill('d-24 spin');
  await page.keyboard.press('Enter');
  await page.keyboard.type('9000');
  await page.keyboard.press('Enter');
  await expect(entry(page).getByText(/more than ten times/)).toBeVisible();
  await entry(page).getByRole('button', { name: 'Yes, log it so' }).click();
  await expect(said(page)).toContainText('Logged 9000');
  await page.getByRole('button', { name: /Undo log a harvest of .*: 9000/i }).click();
});

test('a lot is sold and never for more than it has left', async ({ page, host }) => {
  await page.goto(`${host.origin}/harvest?tab=sales&from=2026-01-01`);
  const lots = page.getByRole('grid', { name: 'Lots on hand' });
  await lots.getByRole('checkbox').nth(1).check();
  await page.getByRole('button', { name: 'Sell this lot' }).click();
  const form = page.getByRole('form', { name: 'Sale' });
  await form.getByLabel('Outlet').selectOption({ label: 'Saturday stall' });
  await form.getByLabel('Price a unit').fill('9');
  await form.getByLabel(/^Amount/).fill('500');
  await form.getByRole('button', { name: 'Keep sale' }).click();
  await expect(form.getByText(/left|only/i).last()).toBeVisible();
  await form.getByLabel(/^Amount/).fill('0.01');
  await form.getByRole('button', { name: 'Keep sale' }).click();
  await expect(said(page)).toContainText('Sale kept.');
  await page.getByRole('button', { name: /Undo enter a sale of one lot/i }).click();
});

test('harvests come in from CSV only when every line is right', async ({ page, host }) => {
  await page.goto(`${host.origin}/harvest`);
  await page.getByRole('button', { name: 'Bring in CSV' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('or paste it here').fill('date,bed,crop,amount,unit\n2026-10-21,D-24,Spinach,two,kg\n');
  await expect(dialog.getByText(/Line 2, amount/)).toBeVisible();
  await expect(dialog.getByRole('button', { name: /Bring in 0 harvests/ })).toBeDisabled();
});

test('a price is added, refused a second time, and corrected in the list', async ({ page, host }) => {
  await page.goto(`${host.origin}/harvest`);
  await page.getByRole('tab', { name: 'Prices' }).click();
  const form = page.getByRole('form', { name: 'Add a price' });
  const fill = async () => {
    await form.getByLabel('Outlet').selectOption({ label: 'Saturday stall' });
    await form.getByLabel('Crop').selectOption({ label: 'Spinach' });
    await form.getByLabel('Unit', { exact: true }).fill('crate');
    await form.getByLabel('Price a unit').fill('12');
    await form.getByRole('button', { name: 'Add the price' }).click();
  };
  await fill();
  await expect(said(page)).toContainText('Added the price.');
  await fill();
  await expect(form.getByText(/has a price for it from that day/)).toBeVisible();
  await page.getByRole('searchbox').fill('crate');
  const row = page.getByRole('grid', { name: 'Prices' }).getByRole('row', { name: /Spinach .*crate/ });
  await row.getByRole('gridcell', { name: '12.00' }).dblclick();
  await page.keyboard.press('Control+A');
  await page.keyboard.type('13.50');
  await page.keyboard.press('Enter');
  await expect(row).toContainText('13.50');
});

test('standing orders of a week say what is open and which have no lot', async ({ page, host }) => {
  await page.goto(`${host.origin}/harvest?tab=sales`);
  await page.getByLabel('In the week of').fill('2027-07-08');
  await page.keyboard.press('Enter');
  const orders = page.getByRole('grid', { name: 'Standing orders' });
  await orders.getByRole('checkbox').nth(1).check();
  await expect(page.getByRole('button', { name: 'No lot on hand for it' })).toBeDisabled();
});
