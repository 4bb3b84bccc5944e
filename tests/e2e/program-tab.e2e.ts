import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import AxeBuilder from '@axe-core/playwright';
import { expect, startHost, test } from './program.ts';

test('the program says what it is, that it asks nothing of any network, and its licences', async ({ page, host }) => {
  await page.goto(`${host.origin}/farm?tab=program`);
  const about = page.getByRole('region', { name: 'About this program' });
  await expect(about).toContainText(/Version\s*\d+\.\d+\.\d+/);
  await expect(about).toContainText('does not look for updates and asks nothing of any network');
  await about.getByRole('button', { name: 'Show the licences' }).click();
  await expect(page.getByRole('dialog').getByRole('row', { name: /^better-sqlite3 / })).toContainText('MIT');
  await page.keyboard.press('Escape');
  await expect(page.getByRole('region', { name: 'What broke' })).toContainText('There is no report.');
});

test('after a break the next start says so quietly; the report is read, copied and deleted, and said no more', async ({
  page,
  host,
  context,
}) => {
  // another run of the program, ended from outside, leaves its mark behind
  const GONE = 2 ** 22 + 1;
  writeFileSync(join(host.data, `running-${GONE}`), '');
  const folder = join(host.data, 'more');
  mkdirSync(folder);
  const { child } = await startHost(host.data, ['--farm', join(folder, 'none.bedwright')]).catch(() => ({ child: undefined }));
  expect(child).toBeUndefined();
  expect(readdirSync(join(host.data, 'fault-reports'))).toHaveLength(1);

  await page.goto(`${host.origin}/week`);
  const foot = page.getByRole('contentinfo');
  await expect(foot).toContainText('The program broke off when it ran last. What was entered is kept.');
  await foot.getByRole('link', { name: 'See the report' }).click();
  await expect(foot).not.toContainText('broke off');
  const broke = page.getByRole('region', { name: 'What broke' });
  await expect(broke).toContainText('The program ended without closing');
  await broke.getByText('What is in the report').click();
  await expect(broke.locator('pre')).toContainText('ended, unfinished');
  expect((await new AxeBuilder({ page }).include('main').analyze()).violations).toEqual([]);
  await context.grantPermissions(['clipboard-read', 'clipboard-write'], { origin: host.origin });
  await broke.getByRole('button', { name: /^Copy as text/ }).click();
  await expect(foot).toContainText('Copied the report.');
  expect(await page.evaluate('navigator.clipboard.readText()')).toContain('ended, unfinished');
  const saving = page.waitForEvent('download');
  await broke.getByRole('button', { name: /^Save as a file: report/ }).click();
  const saved = await saving;
  expect(saved.suggestedFilename()).toMatch(/^Bedwright report [\dT-]+\.txt$/);
  expect(readFileSync(await saved.path(), 'utf8')).toContain('ended, unfinished');
  await broke.getByRole('button', { name: /^Delete: report/ }).click();
  await expect(broke).toContainText('There is no report.');
  expect(readdirSync(join(host.data, 'fault-reports'))).toEqual([]);
  await page.reload();
  await expect(page.getByRole('heading', { name: 'What broke' })).toBeVisible();
  await expect(foot).not.toContainText('broke off');
});

test('the self-test runs on demand, says a line for each check, and leaves the farm as it is', async ({ page, host }) => {
  await page.goto(`${host.origin}/farm?tab=program`);
  const section = page.getByRole('region', { name: 'Self-test' });
  await section.getByRole('button', { name: 'Run the self-test', exact: true }).click();
  await expect(section).toContainText('9 checks, all fine.', { timeout: 30_000 });
  await expect(section.getByRole('listitem')).toHaveCount(9);
  await expect(section.getByRole('listitem').first()).toContainText('the database engine works in memory');
  expect((await new AxeBuilder({ page }).include('main').analyze()).violations).toEqual([]);
  await expect(page.getByRole('button', { name: /^Undo self-test/ })).toHaveCount(0);
});

test('a window left open overnight reads everything again on the new day', async ({ page, host }) => {
  await page.clock.install({ time: new Date('2026-11-25T23:58:30') });
  await page.goto(`${host.origin}/week`);
  await expect(page.getByRole('heading', { name: 'This week', level: 1 })).toBeVisible();
  await page.waitForLoadState('networkidle');
  const asked: string[] = [];
  page.on('request', (request) => asked.push(request.url()));
  await page.clock.runFor(61_000);
  await page.waitForLoadState('networkidle');
  expect(asked.filter((url) => url.includes('week.'))).toEqual([]);
  const again = page.waitForRequest((request) => request.url().includes('week.'));
  await page.clock.runFor(61_000);
  await again;
});
