import { readFileSync } from 'node:fs';
import { printDate } from '../../planner/units/print-date.ts';
import { expect, test } from './program.ts';

test('a planting is lifted by key, moved a week, put down, and taken back', async ({ page, host }) => {
  await page.goto(`${host.origin}/season`);
  const board = page.getByRole('application', { name: /Beds down, weeks across/ });
  const strip = board.getByRole('button', { name: /in the bed [^,]+, 2027/ }).first();
  await strip.focus();
  const before = (await strip.getAttribute('aria-label')) ?? '';
  const inBed = /in the bed (.+?), harvest/.exec(before)?.[1] ?? '';
  await page.keyboard.press('Space');
  await page.keyboard.press('Shift+ArrowRight');
  await expect(page.getByRole('status').filter({ hasText: '+7 d' })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByText(/^Moved /)).toBeVisible();
  const next = printDate(new Date(Date.parse(`${inBed} UTC`) + 7 * 86_400_000).toISOString().slice(0, 10), 'en-US');
  await expect(board.getByRole('button', { name: `in the bed ${next}` }).first()).toBeVisible();
  await page.getByRole('button', { name: /Undo move the planting of/i }).click();
  await expect(board.getByRole('button', { name: before.slice(0, 40) }).first()).toBeVisible();
});

test('a planting is dragged to another day and the board says what stands against it', async ({ page, host }) => {
  await page.goto(`${host.origin}/season`);
  const strip = page
    .getByRole('application')
    .getByRole('button', { name: /in the bed [^,]+, 2027/ })
    .first();
  const box = await strip.boundingBox();
  if (box === null) throw new Error('the strip is not drawn');
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 + 30, box.y + box.height / 2 + 40, { steps: 6 });
  await expect(page.getByRole('status').filter({ hasText: 'in the bed' })).toBeVisible();
  await page.mouse.up();
  await expect(page.getByText(/^Moved /)).toBeVisible();
  await page.getByRole('button', { name: /Undo move the planting of/i }).click();
});

test('a gap offers what fits, and planting one of them puts it on the board', async ({ page, host }) => {
  await page.goto(`${host.origin}/season`);
  const strip = page
    .getByRole('application')
    .getByRole('button', { name: /in the bed [^,]+, 2027/ })
    .first();
  await strip.focus();
  await page.keyboard.press('g');
  const sheet = page.getByRole('complementary', { name: /^Bed / });
  await expect(sheet).toBeVisible();
  await sheet.getByRole('button', { name: 'Plant' }).first().click();
  const dialog = page.getByRole('dialog', { name: 'Add a planting or a succession' });
  await expect(dialog.getByText('Bed free')).toBeVisible();
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(page.getByText(/^Added /)).toBeVisible();
});

test('a succession shows each sowing before it is made', async ({ page, host }) => {
  await page.goto(`${host.origin}/season`);
  await page.getByRole('button', { name: 'Add planting', exact: true }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Crop', { exact: true }).selectOption({ label: 'Radish' });
  await dialog.getByLabel(/A succession/).check();
  await dialog.getByLabel('Days between sowings').fill('14');
  await dialog.getByLabel('None after').fill('2027-06-15');
  await expect(dialog.getByRole('columnheader', { name: 'First harvest' })).toBeVisible();
  expect(await dialog.getByRole('row').count()).toBeGreaterThan(5);
});

test('what happened goes beside the plan and cannot lie in the future', async ({ page, host }) => {
  await page.goto(`${host.origin}/season`);
  await page
    .getByRole('application')
    .getByRole('button', { name: /in the bed [^,]+, 2027/ })
    .first()
    .focus();
  await page.keyboard.press('Enter');
  const sheet = page.getByRole('complementary');
  await sheet.getByLabel('Into the bed, real').fill('2030-01-01');
  await sheet.getByRole('button', { name: 'Save dates' }).click();
  await expect(sheet.getByText('What happened cannot lie in the future.')).toBeVisible();
});

test('the week lists the work, takes a task of one’s own, and skips it', async ({ page, host }) => {
  await page.goto(`${host.origin}/week?week=2027-05-03`);
  await expect(page.getByText(/^Week 18/)).toBeVisible();
  await expect(page.getByText(/(Harvest|Sow|Set out) [A-Z]/).first()).toBeVisible();
  await page.getByRole('button', { name: 'Add task', exact: true }).click();
  const dialog = page.getByRole('dialog', { name: 'Add a task' });
  await dialog.getByLabel('What is to be done').fill('Grease the pump');
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(page.getByRole('button', { name: 'Skip: Grease the pump' })).toBeVisible();
  await page.getByRole('button', { name: 'Skip: Grease the pump' }).click();
  await expect(page.getByRole('button', { name: 'Open again' }).first()).toBeVisible();
});

test('the calendar file opens as one: events of whole days with their own names', async ({ page, host }) => {
  const answer = await page.request.get(`${host.origin}/export/work?from=2027-04-05&weeks=2`);
  const text = await answer.text();
  expect(text.startsWith('BEGIN:VCALENDAR\r\n')).toBe(true);
  expect(text.match(/BEGIN:VEVENT/g)?.length).toBe(text.match(/DTSTART;VALUE=DATE:2027/g)?.length);
  expect(new Set(text.match(/^UID:.*$/gm)).size).toBe(text.match(/BEGIN:VEVENT/g)?.length);
});

test('a figure of a crop shows its source, and the grower’s own goes before it', async ({ page, host }) => {
  await page.goto(`${host.origin}/library?tab=crops&crop=carrot`);
  const sheet = page.getByRole('complementary', { name: 'Carrot' });
  const row = sheet.getByRole('row', { name: /days to maturity of an early variety/ });
  await expect(row).toContainText('North Dakota State University');
  await row.getByRole('button').first().click();
  await sheet.getByLabel('Own figure', { exact: true }).fill('71');
  await sheet.getByLabel('Where from').fill('three seasons here');
  await sheet.getByRole('button', { name: 'Save' }).click();
  await expect(row).toContainText('Your own: three seasons here');
  await expect(row).toContainText('library: 60');
});

test('demand is charted against the harvest', async ({ page, host }) => {
  await page.goto(`${host.origin}/season?tab=demand`);
  await expect(page.getByText(/expected harvest against demand/)).toBeVisible();
  await expect(page.getByRole('grid', { name: 'Demand' })).toBeVisible();
});

test('the season’s report is made, saved, and opens as a page of its own', async ({ page, host }) => {
  await page.goto(`${host.origin}/season?tab=report`);
  await page.getByRole('button', { name: 'Make the report' }).click();
  const save = page.getByRole('button', { name: 'Save the report' });
  await expect(save).toBeVisible({ timeout: 60_000 });
  const [download] = await Promise.all([page.waitForEvent('download'), save.click()]);
  expect(download.suggestedFilename()).toBe('season-report-2027.html');
  const alone = await page.context().newPage();
  await alone.setContent(readFileSync(await download.path(), 'utf8'));
  await expect(alone.getByRole('heading', { name: 'What to buy or dig' })).toBeVisible();
  await alone.close();
  const [csv] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'plan-by-bed.csv' }).click()]);
  expect(csv.suggestedFilename()).toBe('plan-by-bed.csv');
});
