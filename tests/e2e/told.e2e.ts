import type { Page } from '@playwright/test';
import { placeNames } from '../../renderer/app/place-names.ts';
import { settleAt } from './every-state.ts';
import { expect, test } from './program.ts';

/** Keeps every sentence that the line of results tells from now on. */
const listen = (page: Page): Promise<void> =>
  page.evaluate(`{
    window.told = [];
    const line = document.querySelector('footer [role="status"]');
    new MutationObserver(() => line.textContent !== '' && window.told.push(line.textContent)).observe(line, { childList: true, characterData: true, subtree: true });
  }`);
const told = (page: Page): Promise<readonly string[]> => page.evaluate('window.told');

test('the end of each long computation is told once, with what came out of it', async ({ page, host }) => {
  test.setTimeout(300_000);
  const works: readonly (readonly [string, string, RegExp])[] = [
    ['/orders?tab=list', 'Find the cheapest list', /^The cheapest list costs \$[\d,.]+, from \d+ suppliers\.$/],
    ['/soil?tab=blend', 'Find the blend', /^A blend was found for \d+ beds\.$/],
    ['/water?tab=stress', 'Run all years', /^96 beds run through \d+ years\.$/],
    ['/water?tab=away', 'Try departures', /^The farm can be left for \d+ days?\.$/],
    ['/season?tab=proposal', 'Propose a plan', /^The proposal is kept\. Nothing in your plan was changed\.$/],
  ];
  for (const [path, button, sentence] of works) {
    await settleAt(page, `${host.origin}${path}`);
    await listen(page);
    await page.getByRole('button', { name: button, exact: true }).last().click();
    await expect.poll(async () => (await told(page)).at(-1) ?? '', { timeout: 120_000, message: path }).toMatch(sentence);
    // nothing is told twice
    expect(await told(page), path).toEqual([...new Set(await told(page))]);
  }
});

test('a save, a refusal, undo and redo are each told once, a refusal at once', async ({ page, host }) => {
  await settleAt(page, `${host.origin}/library?tab=suppliers`);
  await listen(page);
  await page.getByRole('button', { name: 'Add a supplier' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByLabel('Name').fill('Hillside Seed Co-operative (invented)');
  await dialog.getByRole('button', { name: 'Add', exact: true }).click();
  await expect.poll(() => told(page)).toEqual(['Added Hillside Seed Co-operative (invented).']);
  await page.keyboard.press('Control+z');
  await expect.poll(async () => (await told(page)).length).toBe(2);
  await page.keyboard.press('Control+Shift+z');
  await expect.poll(async () => (await told(page)).length).toBe(3);
  expect((await told(page)).slice(1)).toEqual([expect.stringMatching(/^Undone: /), expect.stringMatching(/^Redone: /)]);
  await settleAt(page, `${host.origin}/harvest`);
  await listen(page);
  await page.getByRole('button', { name: 'Log harvest' }).click();
  await expect(page.getByRole('alert').first()).toBeVisible();
});

test('each place has one main heading, its own title, the landmarks, and a way past the rail', async ({ page, host }) => {
  const titles = new Set<string>();
  for (const place of placeNames) {
    await settleAt(page, `${host.origin}/${place}`);
    await expect(page.getByRole('heading', { level: 1 }), place).toHaveCount(1);
    for (const landmark of ['banner', 'navigation', 'main', 'contentinfo'] as const)
      await expect(page.getByRole(landmark), `${place} ${landmark}`).toHaveCount(1);
    const nameless = await page
      .locator('button, a[href], summary')
      .evaluateAll((all) =>
        all.filter((each) => `${each.ariaLabel ?? ''}${each.textContent}`.trim() === '').map((each) => each.outerHTML),
      );
    expect(nameless, place).toEqual([]);
    titles.add(await page.title());
  }
  expect(titles.size).toBe(placeNames.length);
  await page.goto(`${host.origin}/beds`);
  await expect(page.getByRole('heading', { level: 1 })).toBeFocused();
  // the page itself has the focus at first; the link is for those who come back to the top
  const skip = page.getByRole('link', { name: 'To the page' });
  await expect(skip).not.toBeInViewport();
  await skip.focus();
  await expect(skip).toBeInViewport();
  await page.keyboard.press('Enter');
  await expect(page.getByRole('main')).toBeFocused();
});

test('with reduced motion nothing moves for longer than an instant', async ({ page, host }) => {
  await page.emulateMedia({ reducedMotion: 'reduce' });
  await settleAt(page, `${host.origin}/library?tab=materials`);
  const longest = (): Promise<number> =>
    page.evaluate(`Math.max(0, ...document.getAnimations().map((each) => Number(each.effect.getComputedTiming().duration)))`);
  await page
    .getByRole('button', { name: /^Open / })
    .first()
    .click();
  expect(await longest()).toBeLessThanOrEqual(1);
  await page.keyboard.press('Control+k');
  await expect(page.getByRole('dialog')).toBeVisible();
  expect(await longest()).toBeLessThanOrEqual(1);
});
