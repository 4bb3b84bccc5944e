import { expect, test } from './program.ts';

test('a grower finds the cheapest list, keeps it, ticks it off, orders and receives it', async ({ page, host }) => {
  await page.goto(`${host.origin}/orders`);
  await expect(page.getByRole('grid', { name: 'Needs' })).toBeVisible();
  await page.getByRole('button', { name: 'Find the cheapest list' }).click();
  await page.getByRole('button', { name: 'Find the cheapest list' }).click();
  await page.getByRole('button', { name: 'Keep this list' }).click({ timeout: 60_000 });
  const part = page.getByRole('region', { name: /Tidewrack Soil Yard/ });
  await expect(part).toBeVisible();
  const boxes = part.getByRole('checkbox');
  const lines = await boxes.count();
  for (let at = 0; at < lines; at += 1) {
    await boxes.nth(at).click();
    await expect(boxes.nth(at)).toBeChecked();
  }
  await part.getByRole('button', { name: 'Order all of it' }).click();
  await expect(part).toBeHidden();
  await page.getByRole('tab', { name: 'Purchases' }).click();
  const row = page.getByRole('row', { name: /Tidewrack Soil Yard.*Ordered/ }).first();
  await row.getByRole('gridcell').nth(1).dblclick();
  await page.getByRole('button', { name: 'Take into stock' }).click();
  await expect(page.getByText('All of it is here.')).toBeVisible();
});

test('a count of the shed is a correction with a name to it', async ({ page, host }) => {
  await page.goto(`${host.origin}/orders?tab=stock`);
  await page.getByRole('button', { name: 'Count', exact: true }).click();
  const dialog = page.getByRole('dialog', { name: 'Count' });
  await dialog.getByLabel('Counted by').fill('AN');
  await dialog.getByLabel('Straw, loose').fill('90 gal');
  await dialog.getByRole('button', { name: 'Take the counts' }).click();
  await expect(dialog).toBeHidden();
  await expect(page.getByRole('row', { name: /Straw, loose.*90 gal/ })).toBeVisible();
});
