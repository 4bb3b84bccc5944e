import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from './program.ts';

const built = new URL('../../dist/renderer/assets/', import.meta.url).pathname;

test('the page of all parts is not in the program that ships', async ({ page, host }) => {
  const scripts = readdirSync(built).filter((name) => name.endsWith('.js'));
  expect(scripts.length).toBeGreaterThan(0);
  for (const name of scripts) expect(readFileSync(join(built, name), 'utf8'), name).not.toContain('Every part in every state');
  await page.goto(`${host.origin}/week/parts`);
  await expect(page.getByRole('heading', { level: 1 })).toBeVisible();
  await expect(page.getByRole('heading', { name: 'Parts', level: 1 })).toHaveCount(0);
});
