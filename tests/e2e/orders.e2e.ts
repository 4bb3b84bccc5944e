import { expect, test } from './program.ts';

test('a grower finds the cheapest list, keeps it, ticks it off, orders and receives it', async ({ page, host }) => {
  await page.goto(`${host.origin}/orders`);
  await expect(page.getByRole('grid', { name: 'Needs' })).toBeVisible();
  await page.getByRole('button', { name: 'Find the cheapest list' }).click();
  await page.getByRole('button', { name: 'Find the cheapest list' }).click();
  await page.getByRole('button', { name: 'Keep this list' }).click({ timeout: 60_000 });
  const part = page.getByRole('region', { name: /Tidewrack Soil Yard/ });
  await expect(part).toBeVisible();
  const packages = part.getByLabel(/^Packages of/).first();
  const before = await packages.inputValue();
  await packages.fill('1.5');
  await packages.press('Enter');
  await expect(part.getByRole('alert')).toHaveText('A whole number of packages, 0 or more.');
  await expect(packages).toHaveAttribute('aria-invalid', 'true');
  await packages.press('Escape');
  await expect(packages).toHaveValue(before);
  await expect(part.getByRole('alert')).toBeHidden();
  await packages.fill(String(Number(before) + 1));
  await packages.press('Enter');
  await expect(page.getByRole('button', { name: /^Undo change the packages/ })).toBeVisible();
  await expect(packages).toBeFocused();
  await packages.fill(before);
  await packages.press('Enter');
  await packages.press('Tab');
  await expect(packages).toHaveValue(before);
  const boxes = part.getByRole('checkbox');
  const lines = await boxes.count();
  for (let at = 0; at < lines; at += 1) {
    await boxes.nth(at).click();
    await expect(boxes.nth(at)).toBeChecked();
  }
  await part.getByRole('button', { name: 'Order all of it' }).click();
  await expect(part).toBeHidden();
  // what is on the way is not bought again
  await page.getByRole('tab', { name: 'Needs' }).click();
  await page.getByPlaceholder('Filter by typing').fill('compost');
  await expect(page.getByRole('row', { name: /Compost, yard trimmings.*yd³, by Nov 29, 2026/ }).first()).toBeVisible();
  await page.getByRole('button', { name: 'Find the cheapest list' }).click();
  await page.getByRole('button', { name: 'Find the cheapest list' }).click();
  await page.getByRole('button', { name: 'Keep this list' }).click({ timeout: 60_000 });
  await expect(page.getByRole('region', { name: /Mill Lane Hardware/ })).toBeVisible();
  await expect(part).toBeHidden();
  await page.getByRole('tab', { name: 'Purchases' }).click();
  const row = page.getByRole('row', { name: /Tidewrack Soil Yard.*Ordered/ }).first();
  await row.getByRole('gridcell').nth(1).dblclick();
  const sheet = page.getByRole('form', { name: 'Receive' });
  const came = sheet.getByLabel(/^Compost, yard trimmings, of/);
  const ordered = await came.inputValue();
  await came.fill('500');
  await page.getByRole('button', { name: 'Take into stock' }).click();
  await expect(sheet.getByText(/500 more is too many/)).toBeVisible();
  await expect(came).toHaveAttribute('aria-invalid', 'true');
  await came.fill(ordered);
  await page.getByRole('button', { name: 'Take into stock' }).click();
  await expect(page.getByText('All of it is here.')).toBeVisible();
});

test('what has not come of a purchase is called off, and taken back with one step', async ({ page, host }) => {
  await page.goto(`${host.origin}/orders`);
  await page.getByRole('button', { name: 'Find the cheapest list' }).click();
  await page.getByRole('button', { name: 'Find the cheapest list' }).click();
  await page.getByRole('button', { name: 'Keep this list' }).click({ timeout: 60_000 });
  const part = page.getByRole('region', { name: /Tidewrack Soil Yard/ });
  const boxes = part.getByRole('checkbox');
  for (const at of [0, 1]) {
    await boxes.nth(at).click();
    await expect(boxes.nth(at)).toBeChecked();
  }
  await part.getByRole('button', { name: /^Order the 2 ticked/ }).click();
  await page.getByRole('tab', { name: 'Purchases' }).click();
  const row = page.getByRole('row', { name: /Nov 25, 2026.*Tidewrack Soil Yard/ });
  await expect(row.first()).toHaveText(/Ordered/);
  await row.first().getByRole('gridcell').nth(1).dblclick();
  await page
    .getByRole('form', { name: 'Receive' })
    .getByLabel(/, of \d+$/)
    .nth(1)
    .fill('0');
  await page.getByRole('button', { name: 'Take into stock' }).click();
  await expect(row.first()).toHaveText(/Here/);
  await page.getByRole('button', { name: 'Call off the rest' }).click();
  await expect(page.getByText('What came is here, the rest was called off.')).toBeVisible();
  await expect(page.getByRole('row', { name: /Nov 25, 2026.*Called off/ })).toBeVisible();
  await page.getByRole('button', { name: /^Undo call off/ }).click();
  await expect(page.getByRole('row', { name: /Nov 25, 2026.*Called off/ })).toBeHidden();
});

test('a budget that cannot be is refused above its rows, and the refusal can be closed', async ({ page, host }) => {
  await page.goto(`${host.origin}/orders?tab=budget`);
  await page.getByRole('button', { name: 'Add a category' }).first().click();
  const dialog = page.getByRole('dialog', { name: 'Add a category' });
  await dialog.getByLabel('Category', { exact: true }).fill('hardware');
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(dialog.getByText('Something is needed here.')).toBeVisible();
  await dialog.getByLabel('Budget of the season').fill('120');
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(dialog).toBeHidden();
  const budget = page.getByRole('grid', { name: 'Budget', exact: true });
  const amount = budget
    .getByRole('row', { name: /hardware/ })
    .getByRole('gridcell')
    .nth(2);
  await amount.dblclick();
  await page.keyboard.type('-5');
  await page.keyboard.press('Enter');
  await expect(page.getByText('A budget cannot be negative.')).toBeVisible();
  await expect(budget.getByRole('row', { name: /hardware.*120.00/ })).toBeVisible();
  await page.getByRole('button', { name: 'Close this list' }).click();
  await expect(page.getByText('A budget cannot be negative.')).toBeHidden();
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
