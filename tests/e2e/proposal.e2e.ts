import { expect, test } from './program.ts';

test.setTimeout(180_000);

test('a grower has a plan proposed, takes over some beds, undoes it, then takes it whole', async ({ page, host }) => {
  await page.goto(`${host.origin}/season?tab=proposal`);
  await page.getByLabel('How long to look').selectOption('quick');
  await page.getByRole('button', { name: 'Propose a plan' }).click();
  const all = page.getByRole('button', { name: 'Accept all of it' });
  await expect(all).toBeVisible({ timeout: 60_000 });
  await expect(page.getByText(/more is possible|No plan can be better/)).toBeVisible();

  await page.getByRole('button', { name: 'Tick none' }).click();
  const ticks = page.getByRole('checkbox', { name: /now .* Proposed/ });
  await ticks.nth(0).check();
  await ticks.nth(1).check();
  await expect(page.getByRole('columnheader', { name: 'With 2 beds of it' })).toBeVisible();
  await page.getByRole('button', { name: /^Accept 2 of/ }).click();
  await expect(page.getByText('The proposal for 2 beds is in your plan')).toBeVisible();

  await page.keyboard.press('Control+z');
  await expect(page.getByRole('button', { name: /^Accept/ })).toBeEnabled();
  await page.getByRole('tab', { name: 'List of changes' }).click();
  await expect(page.getByRole('grid', { name: 'Changes of the proposal' })).toBeVisible();
  await page.getByRole('tab', { name: 'Orders' }).click();
  await expect(page.getByRole('heading', { name: /Standing orders/ })).toBeVisible();
  await page.getByRole('tab', { name: 'Hours, water, worth' }).click();
  await expect(page.getByRole('heading', { name: 'What one more is worth' })).toBeVisible();

  const tickAll = page.getByRole('button', { name: 'Tick every bed' });
  if (await tickAll.isEnabled()) await tickAll.click();
  await all.click();
  await expect(page.getByText('The whole proposal is in your plan')).toBeVisible({ timeout: 30_000 });
  await expect(page.getByText('Your plan is this proposal already.')).toBeVisible({ timeout: 30_000 });
});

test('a question is solved beside the plan, and a figure of the grower’s own is counted with', async ({ page, host }) => {
  await page.goto(`${host.origin}/season?tab=proposal&part=what-if`);
  await page.getByLabel('What if', { exact: true }).selectOption('beds');
  await page.getByRole('button', { name: 'Add to the questions' }).click();
  await page.getByRole('button', { name: 'Set them side by side' }).click();
  await expect(page.getByRole('columnheader', { name: /Ten more beds/ })).toBeVisible({ timeout: 60_000 });
  await page.getByRole('tab', { name: 'What it counts with' }).click();
  await page.getByLabel('Hours you have each week').fill('30');
  await page.getByRole('button', { name: 'Keep these limits' }).click();
  await expect(page.getByText('The figures are kept.')).toBeVisible();
  await page.reload();
  await expect(page.getByLabel('Hours you have each week')).toHaveValue('30');
});
