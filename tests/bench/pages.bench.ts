/** `npm run bench:pages [-- BEDS]`: start-up, memory, each place's first paint and readiness in Chromium, and frames while a table scrolls. */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium, type Page } from '@playwright/test';
import { chromiumFlags } from '../../playwright.config.ts';
import { startHost } from '../e2e/program.ts';
import { siteDrawingFrames } from './site-drawing.ts';

const beds = Number(process.argv[2] ?? 1000);
const places = ['week', 'beds', 'season', 'soil', 'water', 'orders', 'harvest', 'costs', 'library', 'farm'];
const root = new URL('../../', import.meta.url).pathname;
const data = mkdtempSync(join(tmpdir(), 'bedwright-pages-'));
const farm = join(data, 'bench.bedwright');
execFileSync(process.execPath, [
  join(root, 'dist/main/farm.js'),
  '--out',
  farm,
  '--beds',
  String(beds),
  '--years',
  '2',
  '--seed',
  '7',
]);

const memoryOf = (pid: number): number =>
  Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1024;

/** Ready: the place's heading stands and nothing says that it is still being read. */
async function readyAfter_ms(page: Page, address: string): Promise<number> {
  const from = performance.now();
  await page.goto(address, { waitUntil: 'commit' });
  await page.locator('h1').first().waitFor();
  await page.waitForFunction(`document.querySelector('[aria-busy="true"], .waiting') === null`);
  return performance.now() - from;
}

async function scrollFrames(page: Page): Promise<readonly number[]> {
  const source = `new Promise((done) => {
    const box = [...document.querySelectorAll('*')].find((each) => each.querySelector(':scope table[role=grid]') && each.scrollHeight > each.clientHeight + 400 && getComputedStyle(each).overflowY !== 'visible');
    if (!box) return done([]);
    const frames = []; let last = performance.now(); let n = 0;
    const step = () => { const now = performance.now(); frames.push(now - last); last = now; box.scrollTop += 180; n += 1; if (n < 120) requestAnimationFrame(step); else done(frames); };
    requestAnimationFrame(step);
  })`;
  return (await page.evaluate(source)) as number[];
}

const started = performance.now();
const { child, host } = await startHost(data, ['--farm', farm]);
const listening = performance.now() - started;
const browser = await chromium.launch({ executablePath: process.env['CHROMIUM'] || '/usr/bin/chromium', args: chromiumFlags });
try {
  const page = await browser.newPage({ viewport: { width: 1280, height: 860 } });
  await page.goto(host.address);
  await page.waitForURL((url) => url.pathname !== '/open');
  await page.locator('h1').first().waitFor();
  console.log(
    `farm of ${beds} beds: listening after ${listening.toFixed(0)} ms, first page after ${(performance.now() - started).toFixed(0)} ms (browser start included), host memory ${memoryOf(child.pid ?? 0).toFixed(0)} MB`,
  );
  const floor = Math.min(await readyAfter_ms(page, `${host.origin}/farm`), await readyAfter_ms(page, `${host.origin}/farm`));
  console.log(`floor: the settings page, ready after ${floor.toFixed(0)} ms`);
  for (const place of places) {
    const times = [];
    for (let round = 0; round < 3; round += 1) times.push(await readyAfter_ms(page, `${host.origin}/${place}`));
    const paint = await page.evaluate(() => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0);
    const frames = (await scrollFrames(page)).toSorted((a, b) => a - b);
    const scroll =
      frames.length === 0
        ? ''
        : `  scroll frames median ${(frames[Math.floor(frames.length / 2)] ?? 0).toFixed(1)} ms, p95 ${(frames[Math.floor(frames.length * 0.95)] ?? 0).toFixed(1)} ms`;
    const best = Math.min(...times);
    console.log(
      `${place.padEnd(9)} first paint ${paint.toFixed(0).padStart(5)} ms  ready ${best.toFixed(0).padStart(5)} ms  ratio to floor ${(best / floor).toFixed(1)}${best > 500 ? '  MISSED 500 ms' : ''}${scroll}`,
    );
  }
  for (const text of await siteDrawingFrames(page, host.origin)) console.log(text);
  console.log(`host memory after all: ${memoryOf(child.pid ?? 0).toFixed(0)} MB`);
} finally {
  await browser.close();
  const ended = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  await ended;
  rmSync(data, { recursive: true, force: true });
}
