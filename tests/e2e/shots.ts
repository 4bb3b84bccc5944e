/** `npm run shots [-- FOLDER]`: a picture of every place, light and dark, from the sample farm. */
import { mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chromium } from '@playwright/test';
import { chromiumFlags } from '../../playwright.config.ts';
import { startHost } from './program.ts';

const places = ['week', 'beds', 'season', 'soil', 'water', 'orders', 'harvest', 'costs', 'library', 'farm'];
const folder = process.argv[2] ?? new URL('../../resources/screenshots', import.meta.url).pathname;
const width = Number(process.env['SHOT_WIDTH'] ?? 1280);
mkdirSync(folder, { recursive: true });
const data = mkdtempSync(join(tmpdir(), 'bedwright-shots-'));
const { child, host } = await startHost(data, process.env['SHOT_FARM'] === undefined ? [] : ['--farm', process.env['SHOT_FARM']]);
const browser = await chromium.launch({ executablePath: process.env['CHROMIUM'] || '/usr/bin/chromium', args: chromiumFlags });
try {
  for (const scheme of ['light', 'dark'] as const) {
    const page = await browser.newPage({ viewport: { width, height: 860 }, colorScheme: scheme });
    page.on('console', (message) => {
      if (message.type() === 'error') console.error(`${scheme}: ${message.text()}`);
    });
    await page.goto(host.address);
    await page.waitForURL((url) => url.pathname !== '/open');
    for (const place of places) {
      await page.goto(`${host.origin}/${place}`);
      await page.waitForLoadState('networkidle');
      await page.waitForTimeout(400);
      const path = join(folder, scheme === 'light' ? `${place}.png` : `${place}-dark.png`);
      await page.screenshot({ path });
      console.log(path);
    }
    await page.close();
  }
} finally {
  await browser.close();
  const ended = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  await ended;
  rmSync(data, { recursive: true, force: true });
}
