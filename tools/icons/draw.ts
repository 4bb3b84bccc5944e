/** Draws the icons of the packaged program from our own SVGs: `npm run icons`. A browser draws each size; the files are put together here. */
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { chromium, type Page } from 'playwright';
import { chromiumFlags } from '../../playwright.config.ts';
import { icnsOf, icoOf, type Picture } from './icon-files.ts';

const folder = fileURLToPath(new URL('../../electron/packaging/icons/', import.meta.url));
const sides_px = [16, 24, 32, 48, 64, 128, 256, 512, 1024] as const;
const LARGEST_ICO_PX = 256;

async function drawn(page: Page, svg: string, side_px: number): Promise<Picture> {
  await page.setViewportSize({ width: side_px, height: side_px });
  await page.setContent(`<style>html,body{margin:0}svg{display:block;width:100vw;height:100vh}</style>${svg}`);
  return { side_px, png: await page.screenshot({ omitBackground: true }) };
}

const executablePath = process.env['CHROMIUM'];
if (executablePath === undefined || executablePath === '') throw new Error('Icons are drawn by a Chromium, and there is none.');
const browser = await chromium.launch({ executablePath, args: [...chromiumFlags] });
const page = await browser.newPage();
const drawnFrom: Record<string, string> = {};
for (const name of ['program', 'farm-file']) {
  const svg = readFileSync(join(folder, `${name}.svg`), 'utf8');
  drawnFrom[`${name}.svg`] = createHash('sha256').update(svg).digest('hex');
  const pictures: Picture[] = [];
  for (const side_px of sides_px) pictures.push(await drawn(page, svg, side_px));
  writeFileSync(join(folder, `${name}.ico`), icoOf(pictures.filter(({ side_px }) => side_px <= LARGEST_ICO_PX)));
  writeFileSync(join(folder, `${name}.icns`), icnsOf(pictures));
  if (name !== 'program') continue;
  mkdirSync(join(folder, 'linux'), { recursive: true });
  for (const { side_px, png } of pictures) writeFileSync(join(folder, 'linux', `${side_px}x${side_px}.png`), png);
}
writeFileSync(join(folder, 'drawn-from.json'), `${JSON.stringify(drawnFrom, null, 2)}\n`);
await browser.close();
