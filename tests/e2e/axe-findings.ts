import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';

const rules = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'];

/** The looks a reader can choose or whose system asks for them, beside the light one. Only colours differ between them. */
export const otherLooks = ['dark', 'light high', 'dark high', 'forced'] as const;
export type OtherLook = (typeof otherLooks)[number];

const told = (violations: Awaited<ReturnType<AxeBuilder['analyze']>>['violations']): readonly string[] =>
  violations.flatMap(({ id, nodes }) =>
    nodes.map((node) => `${id}: ${node.target.join(' ')} ${(node.failureSummary ?? '').replaceAll(/\s+/g, ' ')}`),
  );

/** What every rule finds on the page as it stands, or in one part of it, each finding as one readable line. */
export async function findings(page: Page, within?: string): Promise<readonly string[]> {
  const look = new AxeBuilder({ page }).withTags(rules);
  return told((await (within === undefined ? look : look.include(within)).analyze()).violations);
}

/** What one rule finds. */
export const findingsOf = async (page: Page, rule: string): Promise<readonly string[]> =>
  told((await new AxeBuilder({ page }).withRules([rule]).analyze()).violations);

/** What the rule of contrast finds in a look; the light look is worn again after it. */
export async function contrastIn(page: Page, look: OtherLook): Promise<readonly string[]> {
  await wear(page, look);
  const found = await findingsOf(page, 'color-contrast');
  await wear(page, 'light');
  return found.map((line) => `${look}: ${line}`);
}

/** Puts a look on the page as it stands. */
export async function wear(page: Page, look: OtherLook | 'light'): Promise<void> {
  await page.emulateMedia({ forcedColors: look === 'forced' ? 'active' : 'none' });
  const theme = look.startsWith('dark') ? 'dark' : 'light';
  const contrast = look.endsWith('high') ? 'high' : 'normal';
  await page.evaluate(`Object.assign(document.documentElement.dataset, { theme: '${theme}', contrast: '${contrast}' })`);
}
