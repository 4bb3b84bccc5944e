import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test } from './program.ts';

const said = (page: Page) => page.getByRole('contentinfo');
const table = (page: Page, name: string) => page.getByRole('region', { name, exact: true });

test('one barrel, one pump and two rows of beds are drawn, solved, rebuilt wider and taken back', async ({ page, host }) => {
  await page.goto(`${host.origin}/water?tab=line`);
  await page.getByRole('button', { name: 'Draw a line' }).click();
  const form = page.getByRole('form', { name: 'A new water line' });
  await form.getByLabel('Name').fill('Trial line');
  await form.getByRole('textbox', { name: 'Rows', exact: true }).fill('2');
  await form.getByRole('textbox', { name: 'Beds in a row' }).fill('4');
  await form.getByRole('button', { name: 'Draw it' }).click();
  await expect(said(page)).toContainText('Drew the line Trial line.');
  await expect(page.getByRole('button', { name: /^Bed 8, / })).toBeVisible();
  const outlets = table(page, 'Outlets to beds');
  await expect(outlets.getByRole('gridcell', { name: /^Bed 1\b/ })).toBeVisible();
  await expect(page.getByText(/Most head goes into/)).toBeVisible();
  await page.getByRole('button', { name: /Rebuild the line so: Wider main.*0.75 in/ }).click();
  await expect(said(page)).toContainText('Rebuilt: Wider main');
  await page.getByRole('button', { name: 'Undo rebuild Trial line' }).click();
  await page.getByRole('button', { name: 'Undo draw the water line Trial line' }).click();
  await expect(page.getByRole('combobox', { name: 'Water line' })).not.toContainText('Trial line');
});

test('a place is chosen and moved by keys alone, its run grows, and the flow follows', async ({ page, host }) => {
  await page.goto(`${host.origin}/water?tab=line`);
  const last = page.getByRole('button', { name: /^B-12, / });
  const before = await last.getAttribute('aria-label');
  await last.focus();
  await page.keyboard.press('Enter');
  await expect(last).toHaveAttribute('aria-pressed', 'true');
  await expect(page.getByText('B-12', { exact: true }).first()).toBeVisible();
  for (let step = 0; step < 3; step += 1) await page.keyboard.press('Alt+Shift+ArrowRight');
  await expect(page.getByRole('button', { name: /^Undo change a place of / })).toBeVisible();
  await expect.poll(async () => last.getAttribute('aria-label')).not.toBe(before);
  await page.getByRole('button', { name: /^Undo change a place of / }).click();
});

test('a tube without a bore is refused at the table and nothing is changed', async ({ page, host }) => {
  await page.goto(`${host.origin}/water?tab=line`);
  const runs = table(page, 'Runs of tube');
  const row = runs.getByRole('row', { name: /Tee B-01/ }).first();
  const cell = row.getByRole('gridcell').nth(4);
  const was = await cell.textContent();
  await cell.dblclick();
  await page.keyboard.press('Control+a');
  await page.keyboard.type('0');
  await page.keyboard.press('Enter');
  await expect(runs.getByText(/needs the tube’s inside diameter|inside diameter, not the size/)).toBeVisible();
  await page.reload();
  await expect(row.getByRole('gridcell').nth(4)).toHaveText(was ?? '');
});

test('valves are set by the card, a measured flow is typed back, and the line is even', async ({ page, host }) => {
  await page.goto(`${host.origin}/water?tab=valves`);
  const card = page.getByRole('heading', { name: 'Set-up card: Bag line' });
  await expect(card).toBeVisible();
  await page.getByRole('button', { name: 'The valves stand as the card says' }).click();
  await expect(said(page)).toContainText('The valves stand as the card says.');
  await expect(page.getByRole('button', { name: /Evenness now, low quarter: (9[5-9]|100)%/ })).toBeVisible();
  const measured = table(page, 'Measured flows');
  const row = measured.getByRole('row', { name: /B-03/ });
  await row.getByRole('gridcell').nth(3).dblclick();
  await page.keyboard.type('10');
  await page.keyboard.press('Enter');
  await expect(said(page)).toContainText('Fitted the valves');
  await expect(row).toContainText('measured');
  await page.getByRole('button', { name: /^Undo enter (a|\d+) measured flows? of / }).click();
  await page.getByRole('button', { name: /^Undo set the valves of .* by the card$/ }).click();
});

test('timer, reservoir and power of the line answer, with cautions where they are decided', async ({ page, host }) => {
  await page.goto(`${host.origin}/water?tab=timer`);
  await page.getByRole('button', { name: 'By the beds’ need' }).click();
  await expect(said(page)).toContainText('The programme follows the beds’ need.');
  await page.getByRole('button', { name: /^Undo set the timer of .* by the beds’ need$/ }).click();
  await page.goto(`${host.origin}/water?tab=reservoir`);
  await expect(page.getByRole('heading', { name: 'When the pump stops' })).toBeVisible();
  await page.getByRole('button', { name: 'Change the supply' }).click();
  const supply = page.getByRole('form', { name: 'The supply' });
  await supply.getByLabel('Lowest water level').fill('9 ft');
  await supply.getByRole('button', { name: 'Save the supply' }).click();
  await expect(supply.getByText('The lowest level is above the highest.')).toBeVisible();
  await page.keyboard.press('Escape');
  await page.goto(`${host.origin}/water?tab=power`);
  await expect(page.getByText('The controller’s stand-by decides')).toBeVisible();
  await expect(page.getByText('A lithium power pack can catch fire')).toBeVisible();
});

for (const tab of ['line', 'valves', 'timer', 'reservoir', 'power'])
  test(`the tab ${tab} has no fault that axe can find`, async ({ page, host }) => {
    test.slow();
    await page.goto(`${host.origin}/water?tab=${tab}`);
    await page.getByRole('combobox', { name: 'Water line' }).waitFor();
    await page.waitForTimeout(300);
    const found = await new AxeBuilder({ page }).analyze();
    expect(found.violations.map((each) => `${each.id} ${each.nodes[0]?.target.join(' ')}`)).toEqual([]);
  });
