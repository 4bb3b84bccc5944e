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
  await dialog.getByLabel('Straw, loose').fill('12 ft3');
  await dialog.getByRole('button', { name: 'Take the counts' }).click();
  await expect(dialog).toBeHidden();
  await expect(page.getByRole('row', { name: /Straw, loose.*12 ft³/ })).toBeVisible();
});

test('beds to be built, and a worn part of a line, are needs with their reason and their day', async ({ page, host }) => {
  await page.goto(`${host.origin}/orders`);
  const needs = page.getByRole('grid', { name: 'Needs' });
  await expect(needs).toBeVisible();
  await page.getByRole('button', { name: 'Beds to build' }).click();
  const plans = page.getByRole('dialog', { name: 'Beds to build' });
  await expect(plans.getByText('None yet.')).toBeVisible();
  await plans.getByLabel('Design').selectOption({ index: 1 });
  const design = (await plans.getByLabel('Design').locator('option:checked').textContent()) ?? '';
  await plans.getByLabel('Beds', { exact: true }).fill('6');
  await plans.getByRole('button', { name: 'Plan them' }).click();
  await expect(page.getByRole('status').filter({ hasText: 'One field' })).toBeVisible();
  await plans.getByLabel('Wanted by').fill('2027-03-01');
  await plans.getByRole('button', { name: 'Plan them' }).click();
  await expect(plans.getByRole('row', { name: new RegExp(`6.*${design}.*Mar 1, 2027`) })).toBeVisible();
  await plans.getByLabel('For').press('Escape');
  await expect(plans).toBeHidden();
  await page.getByPlaceholder('Filter by typing').fill(design);
  await expect(needs.getByRole('row', { name: new RegExp(`6.*${design}.*Mar 1, 2027`) }).first()).toBeVisible();

  await page.goto(`${host.origin}/water?tab=line`);
  const wear = page.getByRole('region', { name: 'Wear of the parts' });
  await wear.getByRole('button', { name: 'Enter a part' }).click();
  await wear.getByLabel('Part', { exact: true }).selectOption({ index: 1 });
  const part = (await wear.getByLabel('Part', { exact: true }).locator('option:checked').textContent()) ?? '';
  await wear.getByLabel('In since').fill('2022-04-01');
  await wear.getByLabel('Life').fill('4');
  await wear.getByRole('button', { name: 'Enter it' }).click();
  await expect(wear.getByRole('row', { name: new RegExp(`${part}.*Apr 1, 2022`) })).toBeVisible();
  await page.goto(`${host.origin}/orders`);
  await page.getByPlaceholder('Filter by typing').fill(part);
  await expect(needs.getByRole('row', { name: new RegExp(`${part}.*[Ww]orn|${part}.*line`) }).first()).toBeVisible();
});
