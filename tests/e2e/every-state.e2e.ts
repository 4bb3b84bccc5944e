import { readdirSync, readFileSync } from 'node:fs';
import type { Page } from '@playwright/test';
import { placeNames } from '../../renderer/app/place-names.ts';
import { contrastIn, findings, findingsOf, otherLooks } from './axe-findings.ts';
import { everyTab, openings, settleAt, settled } from './every-state.ts';
import { misfits, windows } from './misfits.ts';
import { expect, test } from './program.ts';

/** Every look and every width of every state takes minutes, so they wait for `npm run every-state`. */
const everything = process.env['EVERY_LOOK'] === '1';
const usual = windows[2];
const overlay = '[role="dialog"], .sheet';

// how long it takes depends on the machine; what is asserted does not
test.describe.configure({ timeout: 900_000 });
// a trace of so many pages takes longer than looking at them
test.use({ contextOptions: { reducedMotion: 'reduce' }, trace: 'off', actionTimeout: 20_000 });

test.beforeEach(async ({ page }) => {
  await page.addInitScript({ content: `localStorage.setItem('bedwright.look', 'light normal')` });
});

/** All that is wrong with the state of the page as it stands; in the short run by the rules alone, in one part where one is named. */
async function wrongWith(page: Page, within?: string): Promise<readonly string[]> {
  if (!everything) return findings(page, within);
  const wrong = [...(await findings(page))];
  for (const look of otherLooks) wrong.push(...(await contrastIn(page, look)));
  for (const size of windows) {
    await page.setViewportSize(size);
    // what follows from a media query is drawn with the next frame
    await page.waitForFunction(`window.innerWidth === ${size.width}`);
    await page.evaluate('new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))');
    wrong.push(...(await misfits(page)).map((each) => `${size.width} px: ${each}`));
    if (size.width <= 640) wrong.push(...(await findingsOf(page, 'target-size')).map((each) => `${size.width} px: ${each}`));
  }
  await page.setViewportSize(usual);
  return wrong;
}

for (const place of placeNames) {
  test(`every tab of ${place} passes the accessibility rules`, async ({ page, host }) => {
    await everyTab(page, host.origin, place, async (title) => {
      expect.soft(await wrongWith(page), title).toEqual([]);
    });
  });

  test(`every dialog and sheet of ${place} passes them, Escape closes it, and the focus is not lost`, async ({ page, host }) => {
    for (const { part, at, open } of openings.filter((each) => each.at.startsWith(`/${place}`))) {
      await settleAt(page, `${host.origin}${at}`);
      await open(page, host);
      const opened = page.locator(overlay).last();
      await expect(opened, `${part} at ${at}`).toBeVisible();
      await settled(page);
      const isSheet = await opened.evaluate((each) => each.classList.contains('sheet'));
      expect.soft(await wrongWith(page, isSheet ? '.sheet' : '.veil'), `${part} at ${at}`).toEqual([]);
      const before = await page.locator(overlay).count();
      if (isSheet) await opened.getByRole('button', { name: 'Close the sheet' }).focus();
      await page.keyboard.press('Escape');
      await expect.soft(page.locator(overlay), `Escape closes ${part}`).toHaveCount(before - 1);
      await expect.soft.poll(() => page.evaluate('document.activeElement?.tagName'), `focus after ${part}`).not.toBe('BODY');
    }
  });
}

test('the list of dialogs and sheets names every source file that has one', () => {
  const root = new URL('../../', import.meta.url).pathname;
  const frames = ['renderer/app/dialog.tsx', 'renderer/imports/csv-import.tsx'];
  const withOne = readdirSync(`${root}renderer`, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.tsx') && !file.startsWith('parts/'))
    .filter((file) => /<(Dialog|Sheet|ModalOverlay|CsvImport)\b/.test(readFileSync(`${root}renderer/${file}`, 'utf8')))
    .map((file) => `renderer/${file}`)
    .filter((file) => !frames.includes(file));
  expect([...new Set(openings.map((each) => each.part))].sort()).toEqual(withOne.sort());
});
