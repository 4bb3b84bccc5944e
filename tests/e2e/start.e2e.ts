import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from '@playwright/test';

const launcher = new URL('../../tools/run.mjs', import.meta.url).pathname;

function launch(
  args: readonly string[],
  data: string,
): { readonly child: ChildProcess; readonly said: () => string; readonly code: Promise<number | null> } {
  const env = { ...process.env, BEDWRIGHT_HOME: data, BEDWRIGHT_NO_BROWSER: '1', DISPLAY: '', WAYLAND_DISPLAY: '' };
  const child = spawn(process.execPath, [launcher, ...args], { env, stdio: ['ignore', 'pipe', 'pipe'] });
  let text = '';
  child.stdout.on('data', (chunk: Buffer) => {
    text += chunk.toString();
  });
  child.stderr.on('data', (chunk: Buffer) => {
    text += chunk.toString();
  });
  return { child, said: () => text, code: new Promise((resolve) => child.once('exit', resolve)) };
}

let data: string;
test.beforeEach(() => {
  data = mkdtempSync(join(tmpdir(), 'bedwright-start-'));
});
test.afterEach(() => rmSync(data, { recursive: true, force: true }));

test('the start command says why there is no desktop window, prints the address, and ends when told', async ({ page }) => {
  const { child, said, code } = launch(['start'], data);
  await expect.poll(said, { timeout: 60_000 }).toMatch(/http:\/\/127\.0\.0\.1:\d+\/open\?key=/);
  expect(said()).toContain('no display');
  await page.goto(said().match(/http\S+/)?.[0] ?? '');
  await expect(page.getByRole('navigation').getByRole('link', { name: 'Beds' })).toBeVisible();
  child.kill('SIGTERM');
  expect(await code).toBe(0);
});

test('a wrong farm file and a port in use each get one plain sentence', async () => {
  const wrong = join(data, 'letter.bedwright');
  writeFileSync(wrong, 'Dear grower');
  const file = launch(['start', '--host', '--farm', wrong], data);
  expect(await file.code).toBe(1);
  expect(file.said()).toContain(`${wrong} is not a farm file`);
  expect(file.said()).not.toContain('    at ');
  const server = createServer().listen(0, '127.0.0.1');
  await new Promise((resolve) => server.once('listening', resolve));
  const { port } = server.address() as { port: number };
  const taken = launch(['start', '--host', '--port', String(port)], data);
  expect(await taken.code).toBe(1);
  expect(taken.said()).toContain(`Port ${port} is taken`);
  server.close();
});

test('the self-test says a line for each check, touches no farm, and ends with 0', async () => {
  const { said, code } = launch(['start', '--host', '--self-test'], data);
  expect(await code).toBe(0);
  const lines = said()
    .split('\n')
    .filter((line) => /^(?:NOT )?(?:fine|FINE): /.test(line));
  expect(lines).toHaveLength(9);
  expect(lines.filter((line) => !line.startsWith('fine: '))).toEqual([]);
  for (const part of [
    'the database engine',
    'a change is kept',
    'a backup',
    'a thread of its own (solved: 1100)',
    'opens again, whole',
  ])
    expect(said()).toContain(part);
  expect(said()).toContain('Self-test passed: 9 of 9.');
  expect(readdirSync(data)).toEqual([]);
});

test('the sample-farm command makes any size, and refuses nonsense and an existing file', async () => {
  const out = join(data, 'made.bedwright');
  const made = launch(['farm', '--out', out, '--beds', '30', '--years', '1', '--seed', '7'], data);
  expect(await made.code).toBe(0);
  expect(made.said()).toContain('30 beds');
  const again = launch(['farm', '--out', out], data);
  expect(await again.code).toBe(2);
  expect(again.said()).toContain('already a file');
  const nonsense = launch(['farm', '--out', join(data, 'b.bedwright'), '--beds', '-3'], data);
  expect(await nonsense.code).toBe(2);
  expect(nonsense.said()).toContain('beds');
});

test('the season report is one page that needs nothing else, with a CSV of each table', async ({ page }) => {
  const out = join(data, 'report');
  const made = launch(['report', '--out', out], data);
  expect(await made.code).toBe(0);
  const files = readdirSync(out);
  for (const name of ['season-report-2027.html', 'plan-by-bed.csv', 'shopping-list.csv', 'water-by-bed.csv', 'cost-per-bed.csv'])
    expect(files).toContain(name);
  expect(readFileSync(join(out, 'cost-per-bed.csv'), 'utf8').split('\r\n').length).toBeGreaterThan(96);
  await page.goto(`file://${join(out, 'season-report-2027.html')}`);
  for (const title of [
    'What goes where, and when',
    'What to buy or dig',
    'Whether the water suffices',
    'Which beds and crops paid',
  ]) {
    await expect(page.getByRole('heading', { name: title })).toBeVisible();
  }
  await expect(page.getByText('invented sample')).toBeVisible();
  expect(await page.locator('svg rect').count()).toBeGreaterThan(50);
  expect(await page.evaluate(`document.querySelectorAll('script, link, img').length`)).toBe(0);
});

test('a report of a season that is not there, or into a file, is refused in one sentence and writes nothing', async () => {
  const wrong = launch(['report', '--season', '1066', '--out', join(data, 'r')], data);
  expect(await wrong.code).toBe(2);
  expect(wrong.said()).toContain('There is no season "1066"');
  expect(existsSync(join(data, 'r'))).toBe(false);
  const file = join(data, 'plain');
  writeFileSync(file, 'x');
  const into = launch(['report', '--out', file], data);
  expect(await into.code).toBe(2);
  expect(into.said()).toContain('is a file, not a folder');
});
