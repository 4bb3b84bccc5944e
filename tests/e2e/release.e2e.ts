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

for (const name of ['index', 'field']) {
  test(`the layers of style stand in their order in ${name}.html, however the bundler parts the files`, () => {
    const head = readFileSync(join(built, '..', `${name}.html`), 'utf8');
    const sheets = [...head.matchAll(/<link[^>]*href="\/assets\/([^"]+\.css)"/g)].map(([, file]) => file ?? '');
    const styles = sheets.map((file) => readFileSync(join(built, file), 'utf8')).join('');
    const layers = [...styles.matchAll(/@layer ([a-z, ]+)[;{]/g)].flatMap(([, list]) => (list ?? '').split(/, ?/));
    expect([...new Set(layers)].filter((layer) => layer !== 'print')).toEqual(['tokens', 'base', 'parts']);
  });
}
