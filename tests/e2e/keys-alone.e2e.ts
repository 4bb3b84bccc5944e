import type { Locator, Page } from '@playwright/test';
import { printDate } from '../../planner/units/print-date.ts';
import { expect, test } from './program.ts';

const MOST_PRESSES = 160;

/** Goes on with one key until what is wanted has come about, as one without a mouse does. */
async function pressUntil(page: Page, key: string, wanted: () => Promise<boolean>): Promise<void> {
  for (let presses = 0; presses < MOST_PRESSES; presses += 1) {
    if (await wanted()) return;
    await page.evaluate('window.stoodAt = document.activeElement');
    await page.keyboard.press(key);
    // a row that is not drawn yet takes the focus a frame later; who holds a key down does not overtake it either
    if (key.startsWith('Arrow'))
      await expect.poll(() => page.evaluate('[window.stoodAt, document.body].includes(document.activeElement)')).toBe(false);
  }
  throw new Error(`After ${MOST_PRESSES} presses of ${key} the reader is not there.`);
}

const hasFocus = (control: Locator) => control.evaluate((element) => element === element.ownerDocument.activeElement);

/** Goes on with Tab until the control has the focus. */
async function tabTo(page: Page, control: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  await expect(control).toBeVisible();
  await pressUntil(page, key, () => hasFocus(control));
}

/** Tab to a button, and Enter. */
async function push(page: Page, control: Locator, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  await tabTo(page, control, key);
  await page.keyboard.press('Enter');
}

/** The control that was used may be gone; then the focus is where the reader can go on from, not lost. */
const expectFocusKept = (page: Page) => expect.poll(() => page.evaluate('document.activeElement?.tagName')).not.toBe('BODY');

const inFocus = (page: Page): Promise<string> =>
  page.evaluate(`document.activeElement?.getAttribute('aria-label') ?? document.activeElement?.textContent ?? ''`);

/** The code of the bed on whose line of the board the focus is. */
const boardLine = (page: Page): Promise<string> =>
  page.evaluate("document.activeElement?.closest('.board-line')?.querySelector('.board-name')?.textContent ?? ''");

/** Into a grid by Tab and down its rows until one has the word, then open it. */
async function openInGrid(page: Page, grid: Locator, word: string): Promise<void> {
  await expect(grid).toBeVisible();
  await pressUntil(page, 'Tab', () => page.evaluate("document.activeElement?.closest('tbody') !== null"));
  await pressUntil(page, 'ArrowDown', () =>
    page.evaluate(`(document.activeElement?.closest('tr')?.textContent ?? '').includes('${word}')`),
  );
  await page.keyboard.press('Alt+Enter');
}

const said = (page: Page) => page.getByRole('contentinfo');
const at = (page: Page, place: string) => page.getByRole('heading', { name: place, level: 1 });

test.beforeEach(async ({ page }) => {
  await page.addInitScript({
    content: `
      window.pressed = 0;
      window.printed = 0;
      window.addEventListener('pointerdown', () => (window.pressed += 1), true);
      window.print = () => (window.printed += 1);`,
  });
});

test('a season by keys alone: bed, planting, task, harvest, list, costs, undo, redo, print; nothing is ever clicked', async ({
  page,
  host,
}) => {
  test.setTimeout(300_000);
  page.setDefaultTimeout(20_000);
  await page.goto(`${host.origin}/week`);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();

  await test.step('a task of the week is added and done', async () => {
    await push(page, page.getByRole('button', { name: 'Add task', exact: true }));
    const task = page.getByRole('form', { name: 'Task' });
    await tabTo(page, task.getByLabel('What is to be done'));
    await page.keyboard.type('Sharpen the hoes');
    await page.keyboard.press('Enter');
    await expect(said(page)).toContainText('Added the task.');
    const box = page.getByRole('button', { name: 'Done: Sharpen the hoes', exact: true });
    await push(page, box);
    await expect(box).toHaveCount(0);
    await expect(page.locator('.task[data-state="done"]')).toContainText('Sharpen the hoes');
    await expectFocusKept(page);
  });

  await test.step('a bed is built', async () => {
    await page.keyboard.press('Alt+2');
    await expect(at(page, 'Beds')).toBeVisible();
    await push(page, page.getByRole('button', { name: 'Build beds' }));
    const build = page.getByRole('form', { name: 'Build beds' });
    await tabTo(page, build.getByLabel('First code'));
    await page.keyboard.type('K-01');
    await tabTo(page, build.getByLabel('Beds', { exact: true }));
    await page.keyboard.press('Control+A');
    await page.keyboard.type('1');
    await page.keyboard.press('Enter');
    await expect(said(page)).toContainText(/Built/);
  });

  await test.step('a planting is put into it on the board, and moved by a week', async () => {
    await page.keyboard.press('Alt+3');
    await expect(at(page, 'Season')).toBeVisible();
    await push(page, page.getByRole('button', { name: 'Add planting', exact: true }));
    const planting = page.getByRole('form', { name: 'Planting' });
    await tabTo(page, planting.getByLabel('Crop', { exact: true }));
    await page.keyboard.type('Spin');
    await tabTo(page, planting.getByLabel('Code begins with'));
    await page.keyboard.type('K-01');
    await tabTo(page, planting.getByRole('checkbox', { name: 'K-01', exact: true }));
    await page.keyboard.press('Space');
    await push(page, planting.getByRole('button', { name: 'Add', exact: true }));
    await expect(said(page)).toContainText('Added Spinach.');

    await expect(page.getByRole('dialog')).toHaveCount(0);
    await pressUntil(page, 'Tab', () => page.evaluate("document.activeElement?.matches('.strip-button') === true"));
    await pressUntil(page, 'ArrowDown', async () => (await boardLine(page)) === 'K-01');
    const before = /^Spinach, in the bed (.+?), harvest/.exec(await inFocus(page))?.[1] ?? '';
    expect(before).toMatch(/ 2027$/);
    await page.keyboard.press('Space');
    await page.keyboard.press('Shift+ArrowRight');
    await page.keyboard.press('Enter');
    await expect(said(page)).toContainText(/^Moved /);
    const week_ms = 7 * 86_400_000;
    const after = printDate(new Date(Date.parse(`${before} UTC`) + week_ms).toISOString().slice(0, 10), 'en-US');
    await expect.poll(() => inFocus(page)).toContain(`Spinach, in the bed ${after}`);
    expect(await boardLine(page)).toBe('K-01');
    await page.keyboard.press('Control+z');
    await expect(said(page)).toContainText(/^Undone: Move /);
    await expect.poll(() => inFocus(page)).toContain(`Spinach, in the bed ${before}`);
    await page.keyboard.press('Control+Shift+z');
    await expect(said(page)).toContainText(/^Redone: Move /);
  });

  await test.step('a harvest is logged', async () => {
    await page.keyboard.press('Alt+7');
    await expect(at(page, 'Harvest')).toBeVisible();
    const day = page.getByLabel('Day', { exact: true });
    await tabTo(page, day);
    await page.keyboard.type('10202026');
    await expect(day).toHaveValue('2026-10-20');
    await tabTo(page, page.getByRole('combobox', { name: 'Bed or crop' }));
    await page.keyboard.type('d-24 spin');
    await expect(page.getByRole('option', { name: /D-24 Spinach/ })).toBeVisible();
    await page.keyboard.press('Enter');
    await page.keyboard.type('1.25 kg');
    await page.keyboard.press('Enter');
    await expect(said(page)).toContainText('Logged 1.25 kg');
  });

  await test.step('a line of the shopping list is ticked off', async () => {
    await page.keyboard.press('Alt+6');
    await expect(at(page, 'Orders')).toBeVisible();
    await tabTo(page, page.getByRole('tab', { name: 'Needs' }));
    await pressUntil(page, 'ArrowRight', async () => (await inFocus(page)) === 'Shopping list');
    const find = page.getByRole('main').getByRole('button', { name: 'Find the cheapest list', exact: true });
    await push(page, find);
    const keep = page.getByRole('button', { name: 'Keep this list', exact: true });
    await expect(keep).toBeVisible({ timeout: 120_000 });
    await push(page, keep);
    const got = page.getByRole('checkbox', { name: /^Got / }).first();
    await tabTo(page, got);
    await page.keyboard.press('Space');
    await expect(got).toBeChecked();
    await expect(got).toBeFocused();
  });

  await test.step('what the crop costs is looked at', async () => {
    await page.keyboard.press('Alt+8');
    await expect(at(page, 'Costs')).toBeVisible();
    await tabTo(page, page.getByRole('combobox', { name: 'By', exact: true }));
    await page.keyboard.type('Crop');
    await openInGrid(page, page.getByRole('grid', { name: 'What crops earned', exact: true }), 'Spinach');
    const sheet = page.getByRole('complementary');
    await expect(sheet.getByRole('heading', { name: /Spinach/ })).toBeVisible();
    await tabTo(page, sheet.getByRole('button', { name: 'Close the sheet' }));
    await page.keyboard.press('Escape');
    await expect(sheet).toHaveCount(0);
    await expect.poll(() => page.evaluate("document.activeElement?.matches('[role=grid] td')")).toBe(true);
  });

  await test.step('one box finds the bed, and the help opens and closes', async () => {
    await page.keyboard.press('Control+k');
    await page.keyboard.type('K-01');
    await expect(page.getByRole('option', { name: /^Bed K-01/ })).toBeVisible();
    await page.keyboard.press('Enter');
    await expect(page.getByRole('complementary').getByRole('heading', { name: /K-01/ })).toBeVisible();
    await page.keyboard.press('F1');
    await expect(page.getByRole('heading', { name: 'Help: Beds' })).toBeVisible();
    await page.keyboard.press('F1');
    await expect(page.getByRole('heading', { name: 'Help: Beds' })).toHaveCount(0);
    await expectFocusKept(page);
  });

  await test.step('every step is taken back, and done again', async () => {
    const steps = [
      /^Undone: Tick off /,
      /^Undone: (?!Tick off )/,
      /^Undone: Log a harvest/,
      /^Undone: Move /,
      /^Undone: (?!Move ).*Spinach/,
    ];
    for (const step of steps) {
      await page.keyboard.press('Control+z');
      await expect(said(page)).toContainText(step);
    }
    await page.keyboard.press('Control+Shift+z');
    await expect(said(page)).toContainText(/^Redone: .*Spinach/);
  });

  await test.step('the week is printed', async () => {
    await page.keyboard.press('Alt+1');
    await expect(at(page, 'This week')).toBeVisible();
    await push(page, page.getByRole('button', { name: 'Print this page', exact: true }), 'Shift+Tab');
    expect(await page.evaluate('window.printed')).toBe(1);
    await page.emulateMedia({ media: 'print' });
    await expect(page.getByText('Sharpen the hoes').first()).toBeVisible();
    await expect(page.getByRole('navigation')).toBeHidden();
    await page.emulateMedia({ media: 'screen' });
  });

  expect(await page.evaluate('window.pressed')).toBe(0);
});
