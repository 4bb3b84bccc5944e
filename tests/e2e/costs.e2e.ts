import { expect, test } from './program.ts';

test('a grower sees which beds and crops paid, why, and how likely a crop covers its cost', async ({ page, host }) => {
  await page.goto(`${host.origin}/costs`);
  await expect(page.getByRole('grid', { name: 'What beds earned' })).toBeVisible();
  await page
    .getByRole('button', { name: /Margin of .* Show the working/ })
    .first()
    .click();
  await expect(page.getByText('margin = I - (D + B + W + O)')).toBeVisible();
  await page.goto(`${host.origin}/costs?tab=earned&by=crop`);
  const grid = page.getByRole('grid', { name: 'What crops earned' });
  await grid.getByRole('button', { name: 'Open Spinach' }).click();
  await expect(page.getByRole('heading', { name: 'Chance of covering its cost' })).toBeVisible();
  await page.getByRole('tab', { name: 'Against plan' }).click();
  await expect(page.getByRole('grid', { name: 'Against plan' })).toBeVisible();
});

test('a lot is traced back to its bed, and a record is appended', async ({ page, host }) => {
  await page.goto(`${host.origin}/costs?tab=trace`);
  await page.getByLabel('Lot code, or a part of it').fill('LETT');
  await page
    .getByRole('button', { name: /^LETTU-2026.* Lettuce, leaf$/ })
    .first()
    .click();
  await expect(page.getByRole('region', { name: /^Lot LETTU/ })).toContainText('Harvested');
  await page.getByRole('tab', { name: 'Records' }).click();
  await page.getByRole('button', { name: 'Add a record' }).click();
  const dialog = page.getByRole('dialog', { name: 'Add a record' });
  await dialog.getByLabel('Date').fill('2026-11-24');
  await dialog.getByLabel('Who, name or initials').fill('AN');
  await dialog.getByLabel('Seen or done, with actual values').fill('crates washed, 150 ppm');
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(page.getByRole('row', { name: /crates washed, 150 ppm/ })).toBeVisible();
});
