import type { Page } from '@playwright/test';
import { quantile } from './bench.ts';
import { type Figure, figureOf } from './figure.ts';

/** A frame at 60 a second. */
export const FRAME_MS = 1000 / 60;

type Point = readonly [x: number, y: number];
const STEPS = 120;

/** Times of the frames drawn while the mouse goes along a way with its button down. */
async function framesWhile(page: Page, way: (step: number) => Point): Promise<readonly number[]> {
  await page.mouse.move(...way(0));
  await page.mouse.down();
  await page.evaluate(`(() => {
    window.frameTimes = []; window.framesOn = true; let last = performance.now();
    const step = (now) => { window.frameTimes.push(now - last); last = now; if (window.framesOn) requestAnimationFrame(step); };
    requestAnimationFrame(step);
  })()`);
  for (let step = 1; step <= STEPS; step += 1) await page.mouse.move(...way(step));
  const times = (await page.evaluate('window.framesOn = false, window.frameTimes')) as number[];
  await page.mouse.up();
  // the first frames hold the choosing of the bed
  return times.slice(3).toSorted((a, b) => a - b);
}

const framesFigure = (what: string, frames: readonly number[]): Figure =>
  figureOf({ topic: 'site', what, figure: quantile(frames, 0.5), p95: quantile(frames, 0.95), floor: FRAME_MS });

/** Panning the site drawing, dragging one bed and dragging all of them: how long each frame took. */
export async function siteDrawingFrames(page: Page, origin: string): Promise<readonly Figure[]> {
  await page.goto(`${origin}/beds`);
  const drawing = page.getByRole('application', { name: /Site drawing/ });
  await drawing.waitFor();
  const box = await drawing.boundingBox();
  if (box === null) throw new Error('the site drawing is not there');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await drawing.focus();
  const panned = await framesWhile(page, (step) => [box.x + 60 + step, box.y + box.height - 60 - step / 2]);
  for (const key of ['0', 'n', '+', '+', '+', '+', '+', '+', '+', '+', '+', '+']) await page.keyboard.press(key);
  await page.waitForTimeout(600);
  const one = await framesWhile(page, (step) => [x + step, y - step / 2]);
  await page.waitForTimeout(1500);
  for (const key of ['0', 'Control+a']) await page.keyboard.press(key);
  await page.waitForTimeout(1500);
  const all = await framesWhile(page, (step) => [x + step, y - step / 2]);
  return [
    framesFigure('frames while panning the site drawing', panned),
    framesFigure('frames while dragging one bed', one),
    framesFigure('frames while dragging all beds', all),
  ];
}
