import type { Locator, Page } from '@playwright/test';
import { expect, test } from './program.ts';

const MOST_TABS = 120;

/** Goes on with Tab until the control has the focus, as one without a mouse does. */
async function tabTo(page: Page, control: Locator): Promise<void> {
  for (let presses = 0; presses < MOST_TABS; presses += 1) {
    if (await control.evaluate((element) => element === element.ownerDocument.activeElement)) return;
    await page.keyboard.press('Tab');
  }
  throw new Error(`After ${MOST_TABS} presses of Tab the control was not reached.`);
}

const said = (page: Page) => page.getByRole('contentinfo');

test('a season’s steps by keys alone: a bed, the planting form, a task, costs, finding, help, and back again', async ({
  page,
  host,
}) => {
  test.setTimeout(120_000);
  await page.goto(`${host.origin}/week`);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();

  // a bed
  await page.keyboard.press('Alt+2');
  await expect(page.getByRole('heading', { name: 'Beds', level: 1 })).toBeVisible();
  await tabTo(page, page.getByRole('button', { name: 'Build beds' }));
  await page.keyboard.press('Enter');
  const build = page.getByRole('form', { name: 'Build beds' });
  await expect(build).toBeVisible();
  await tabTo(page, build.getByLabel('First code'));
  await page.keyboard.type('K-01');
  await tabTo(page, build.getByLabel('Beds', { exact: true }));
  await page.keyboard.press('Control+A');
  await page.keyboard.type('1');
  await page.keyboard.press('Enter');
  await expect(said(page)).toContainText(/Built/);

  // a planting
  await page.keyboard.press('Alt+3');
  await expect(page.getByRole('heading', { name: 'Season', level: 1 })).toBeVisible();
  await tabTo(page, page.getByRole('button', { name: 'Add planting' }));
  await page.keyboard.press('Enter');
  const planting = page.getByRole('form', { name: 'Planting' });
  await tabTo(page, planting.getByLabel('Crop', { exact: true }));
  await page.keyboard.type('Spin');
  await expect(planting.getByLabel('Crop', { exact: true })).toHaveValue(/./);
  await page.keyboard.press('Escape');
  await expect(planting).toHaveCount(0);

  // a task
  await page.keyboard.press('Alt+1');
  await tabTo(page, page.getByRole('button', { name: 'Add task' }));
  await page.keyboard.press('Enter');
  const task = page.getByRole('form', { name: 'Task' });
  await tabTo(page, task.getByLabel('What is to be done'));
  await page.keyboard.type('Sharpen the hoes');
  await page.keyboard.press('Enter');
  await expect(said(page)).toContainText('Added the task.');
  await expect(page.getByText('Sharpen the hoes').first()).toBeVisible();

  // costs, and one box to go on from
  await page.keyboard.press('Alt+8');
  await expect(page.getByRole('heading', { name: 'Costs', level: 1 })).toBeVisible();
  await page.keyboard.press('Control+k');
  await page.keyboard.type('A-01');
  await expect(page.getByRole('option', { name: /^Bed A-01/ })).toBeVisible();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('complementary').getByRole('heading', { name: /A-01/ })).toBeVisible();
  await page.keyboard.press('F1');
  await expect(page.getByRole('heading', { name: 'Help: Beds' })).toBeVisible();
  await page.keyboard.press('F1');

  // back again, both steps
  await page.keyboard.press('Control+z');
  await expect(said(page)).toContainText('Undone: Add the task Sharpen the hoes.');
  await page.keyboard.press('Control+z');
  await expect(said(page)).toContainText(/Undone: Build bed/);
  await page.keyboard.press('Control+Shift+z');
  await expect(said(page)).toContainText(/Redone: Build bed/);
  await page.keyboard.press('Control+z');
  await expect(said(page)).toContainText(/Undone: Build bed/);
});
