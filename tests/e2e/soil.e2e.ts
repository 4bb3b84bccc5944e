import AxeBuilder from '@axe-core/playwright';
import type { Locator, Page } from '@playwright/test';
import { expect, test } from './program.ts';

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

async function findings(page: Page): Promise<readonly string[]> {
  const { violations } = await new AxeBuilder({ page }).withTags(rules).analyze();
  return violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.target.join(' ')} ${node.failureSummary ?? ''}`),
  );
}

test.describe('Soil', () => {
  test('every part of it passes the accessibility rules', async ({ page, host }) => {
    test.setTimeout(240_000);
    for (const tab of ['tests', 'ph', 'budget', 'blend', 'cards', 'compost', 'fill', 'records']) {
      await page.goto(`${host.origin}/soil?tab=${tab}`);
      await page.waitForLoadState('networkidle');
      expect(await findings(page), tab).toEqual([]);
    }
  });

  test('every form of it passes the accessibility rules', async ({ page, host }) => {
    test.setTimeout(240_000);
    const forms = [
      ['tests', 'Enter a test'],
      ['tests', 'Bring in CSV'],
      ['compost', 'Mix a heap'],
      ['compost', 'Plan a tea batch'],
      ['records', 'Enter an application'],
    ] as const;
    for (const [tab, name] of forms) {
      await page.goto(`${host.origin}/soil?tab=${tab}`);
      await page.getByRole('button', { name }).first().click();
      await expect(page.getByRole('dialog')).toBeVisible();
      await page.waitForLoadState('networkidle');
      expect(await findings(page), name).toEqual([]);
    }
  });

  test('a laboratory sheet is entered, read by class, and changes the lime of its bed', async ({ page, host }) => {
    await page.goto(`${host.origin}/soil`);
    await page.getByRole('button', { name: 'Enter a test' }).click();
    await page.getByLabel('Sample', { exact: true }).fill('North end');
    await page.getByLabel('pH', { exact: true }).fill('16');
    await page.getByLabel('P', { exact: true }).fill('12');
    await page.getByLabel('Buffer pH').fill('6.0');
    const dialog = page.getByRole('dialog');
    await dialog.getByText('Block A', { exact: true }).click();
    await dialog.getByRole('button', { name: 'Save' }).click();
    await expect(dialog.getByText('A soil pH lies between 2.5 and 10.5.')).toBeVisible();
    await page.getByLabel('pH', { exact: true }).fill('5.4');
    await dialog.getByRole('button', { name: 'Save' }).click();
    await expect(dialog.getByText(/Which buffer did the laboratory use/)).toBeVisible();
    await page.getByLabel('Buffer', { exact: true }).selectOption({ label: 'Sikora' });
    await dialog.getByRole('button', { name: 'Save' }).click();
    await expect(dialog).toBeHidden();
    await expect(page.getByRole('gridcell', { name: /North end/ })).toBeVisible();

    await page.getByRole('tab', { name: 'Lime and sulfur' }).click();
    const first = page.getByRole('row').filter({ hasText: 'A-01' });
    await expect(first.getByText('Lime', { exact: true })).toBeVisible();
    await first.getByRole('button', { name: /Show the working/ }).click();
    await expect(page.getByText(/EM 9585/)).toBeVisible();
  });

  test('a file with a wrong line is refused by line and column, and a right one is brought in', async ({ page, host }) => {
    await page.goto(`${host.origin}/soil`);
    await page.getByRole('button', { name: 'Bring in CSV' }).click();
    const paste = page.getByLabel('or paste it here');
    await paste.fill('date,sample,beds,pH,P ppm\n2026-10-01,East,A-01,6.2,40\n2026-10-01,West,Z-99,6.2,40\n');
    await expect(page.getByText('Line 3, beds: there is no bed or block Z-99.')).toBeVisible();
    await expect(page.getByRole('button', { name: /Bring in one test/ })).toBeDisabled();
    await paste.fill('date,sample,beds,pH,P ppm\n2026-10-01,East,A-01 A-02,6.2,40\n');
    await page.getByRole('button', { name: /Bring in one test/ }).click();
    await expect(page.getByRole('gridcell', { name: /East/ })).toBeVisible();
  });

  test('from the budget to a blend, its cards, and stock', async ({ page, host }) => {
    await page.goto(`${host.origin}/soil?tab=budget`);
    await expect(page.getByText(/supply stacked/).first()).toBeVisible();
    await page.getByRole('tab', { name: 'Blend' }).click();
    await page.getByRole('button', { name: 'Find the blend' }).click();
    const put = page.getByRole('button', { name: 'Put on dose cards' });
    await expect(put).toBeVisible({ timeout: 60_000 });
    await expect(page.getByText('Limits that bind, and their price')).toBeVisible();
    await put.click();
    await expect(page.getByRole('heading', { name: 'A-01' })).toBeVisible();
    await page.getByRole('article').first().getByRole('checkbox').first().check();
    await page.getByRole('button', { name: /Record \d+ as given/ }).click();
    const dialog = page.getByRole('dialog');
    await dialog.getByLabel('By', { exact: true }).fill('AN');
    await dialog.getByRole('button', { name: 'Record' }).click();
    await expect(dialog).toBeHidden();
    await page.getByRole('tab', { name: 'Records' }).click();
    await expect(
      page
        .getByRole('row')
        .filter({ hasText: 'Nov 25, 2026' })
        .or(page.getByRole('row').filter({ hasText: 'AN' }))
        .first(),
    ).toBeVisible();
    const answer = await page.request.get(`${host.origin}/export/applications`);
    expect(answer.status()).toBe(200);
    expect(await answer.text()).toContain('incorporated');
  });

  test('a heap is mixed to its goals and its temperature logged', async ({ page, host }) => {
    await page.goto(`${host.origin}/soil?tab=compost`);
    await page.getByRole('button', { name: 'Mix a heap' }).first().click();
    const dialog = page.getByRole('dialog');
    await dialog
      .getByLabel('Material 1', { exact: true })
      .selectOption({ label: await labelWith(dialog, 'Grass clippings, loose') });
    await dialog.getByLabel('Amount').fill('100 kg');
    await dialog.getByLabel('Amount').blur();
    await expect(dialog.getByText('too low').first()).toBeVisible();
    await dialog.getByLabel('Balance it with').selectOption({ label: await labelWith(dialog, 'Straw') });
    await dialog.getByLabel('and with').selectOption({ label: await labelWith(dialog, 'Leaves, shredded, loose') });
    await expect(dialog.getByText(/To C:N 30|cannot bring/)).toBeVisible();
    await dialog.getByLabel('Place').fill('bay 2');
    await dialog.getByRole('button', { name: 'Start the heap' }).click();
    await expect(dialog).toBeHidden();
    await page.getByRole('gridcell', { name: /bay 2/ }).click();
    await page.keyboard.press('Enter');
    await page.getByLabel('Temperature', { exact: true }).fill('140 F');
    await page.getByRole('button', { name: 'Log reading' }).click();
    await expect(page.getByText('1 of 15 wanted')).toBeVisible();
  });
});

async function labelWith(dialog: Locator, name: string): Promise<string> {
  const texts = await dialog.locator('option').allTextContents();
  const found = texts.find((text) => text.startsWith(name));
  if (found === undefined) throw new Error(`no feedstock ${name} among ${texts.slice(0, 40).join('; ')}`);
  return found;
}
