import { type ChildProcess, spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
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
