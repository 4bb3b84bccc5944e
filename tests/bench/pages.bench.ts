import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type CDPSession, chromium, type Page } from '@playwright/test';
import { chromiumFlags } from '../../playwright.config.ts';
import { startHost } from '../e2e/program.ts';
import { BEDS, least, quantile } from './bench.ts';
import { type Figure, figureOf, lineOf } from './figure.ts';
import { FRAME_MS, siteDrawingFrames } from './site-drawing.ts';

const places = ['week', 'beds', 'season', 'soil', 'water', 'orders', 'harvest', 'costs', 'library', 'farm'];
const root = new URL('../../', import.meta.url).pathname;

function farmIn(data: string): string {
  const farm = join(data, 'bench.bedwright');
  execFileSync(process.execPath, [
    join(root, 'dist/main/farm.js'),
    '--out',
    farm,
    '--beds',
    String(BEDS),
    '--years',
    '2',
    '--seed',
    '7',
  ]);
  return farm;
}

const memoryOf = (pid: number): number =>
  Number(/VmRSS:\s+(\d+)/.exec(readFileSync(`/proc/${pid}/status`, 'utf8'))?.[1] ?? 0) / 1024;

/**
 * Watches a page from inside and notes when it was ready: the first frame after which its heading stands, nothing says that it is still
 * being read, no request is under way and no long task runs, all of it for a tenth of a second on end. Asking from outside would find
 * that only at the driver's own steps of up to half a second.
 */
const WATCH = `(() => {
  const QUIET_MS = 100;
  let underWay = 0;
  const ask = window.fetch;
  window.fetch = (...given) => { underWay += 1; return ask(...given).finally(() => { underWay -= 1; }); };
  let busyUntil = 0;
  new PerformanceObserver((list) => {
    for (const { startTime, duration } of list.getEntries()) busyUntil = Math.max(busyUntil, startTime + duration);
  }).observe({ type: 'longtask', buffered: true });
  let since = null;
  const look = (now) => {
    const isShown = document.querySelector('h1') !== null && document.querySelector('[aria-busy="true"], .waiting') === null;
    if (!isShown || underWay > 0) since = null;
    else if (since === null || busyUntil > since) since = now;
    else if (now - since > QUIET_MS) { window.readyAfter_ms = since; return; }
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
})()`;

/** What the page noted under a name; asked again until it is there, which costs the page next to nothing. */
async function noted(page: Page, name: string): Promise<number> {
  for (const until = performance.now() + 60_000; performance.now() < until; ) {
    const found = (await page.evaluate(`window.${name} ?? null`)) as number | null;
    if (found !== null) return found;
    await page.waitForTimeout(40);
  }
  throw new Error(`The page never noted ${name}.`);
}

/** From the start of the navigation until the place is all read and the main thread is free. */
async function readyAfter_ms(page: Page, address: string): Promise<number> {
  await page.goto(address, { waitUntil: 'commit' });
  return noted(page, 'readyAfter_ms');
}

/** From a key pressed on a ready page until the frame after it is done. */
async function keyAnswered_ms(page: Page): Promise<number> {
  await page.evaluate(`window.addEventListener('keydown', ({ timeStamp }) => {
    requestAnimationFrame(() => setTimeout(() => { window.keyAnswered_ms = performance.now() - timeStamp; }));
  }, { once: true })`);
  await page.keyboard.press('Shift');
  return noted(page, 'keyAnswered_ms');
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

type Host = Awaited<ReturnType<typeof startHost>>;

async function endOf({ child }: Host): Promise<void> {
  const ended = new Promise((resolve) => child.once('exit', resolve));
  child.kill('SIGTERM');
  await ended;
}

/** Time a process had on a core so far; the system counts it in hundredths of a second. */
function onCoreOf_ms(pid: number): number {
  const fields = readFileSync(`/proc/${pid}/stat`, 'utf8').split(') ').at(-1)?.split(' ') ?? [];
  return (Number(fields[11]) + Number(fields[12])) * 10;
}

/** The floor of memory: the same Node, doing nothing. */
const bareNode_MB = (): number =>
  Number(execFileSync(process.execPath, ['-p', 'process.memoryUsage().rss'], { encoding: 'utf8' })) / 1024 ** 2;

/** The floor of start-up: the same Node, doing nothing. */
function bareNode_ms(): number {
  const from = performance.now();
  execFileSync(process.execPath, ['-e', '0']);
  return performance.now() - from;
}

/** From starting the program on the farm until it listens. */
async function startUp(data: string, farm: string, rounds: number): Promise<Figure> {
  const [times, cores]: [number[], number[]] = [[], []];
  for (let round = 0; round < rounds; round += 1) {
    const from = performance.now();
    const host = await startHost(data, ['--farm', farm]);
    times.push(performance.now() - from);
    cores.push(onCoreOf_ms(host.child.pid ?? 0));
    await endOf(host);
  }
  const bare = quantile(Array.from({ length: rounds }, bareNode_ms), 0.5);
  return figureOf({
    topic: 'start',
    what: `start-up with ${BEDS} beds, until the program listens`,
    figure: quantile(times, 0.5),
    p95: quantile(times, 0.95),
    onCore_ms: quantile(cores, 0.5),
    floor: bare,
    wanted: 1500,
    judged: least(quantile(times, 0.5), quantile(cores, 0.5)),
  });
}

type Measured = { readonly page: Page; readonly host: Host; readonly system: CDPSession };

/** Time that the program, the page and the browser's own processes had on the cores so far: their work, whatever else runs. */
async function allOnCores_ms({ host, system }: Measured): Promise<number> {
  const { processInfo } = await system.send('SystemInfo.getProcessInfo');
  const browser_s = processInfo.reduce((sum, { cpuTime }) => sum + cpuTime, 0);
  return onCoreOf_ms(host.child.pid ?? 0) + browser_s * 1000;
}

async function placeFigures(measured: Measured, place: string, floor: number, rounds: number): Promise<readonly Figure[]> {
  const { page, host } = measured;
  const [times, cores, keys]: [number[], number[], number[]] = [[], [], []];
  for (let round = 0; round < rounds; round += 1) {
    const before = await allOnCores_ms(measured);
    times.push(await readyAfter_ms(page, `${host.host.origin}/${place}`));
    cores.push((await allOnCores_ms(measured)) - before);
    keys.push(await keyAnswered_ms(page));
  }
  const paint = await page.evaluate(() => performance.getEntriesByName('first-contentful-paint')[0]?.startTime ?? 0);
  const frames = await scrollFrames(page);
  return [
    figureOf({ topic: 'pages', what: `${place}: first paint`, figure: paint, floor }),
    figureOf({
      topic: 'pages',
      what: `${place}: all read and interactive`,
      figure: quantile(times, 0.5),
      p95: quantile(times, 0.95),
      onCore_ms: quantile(cores, 0.5),
      floor,
      wanted: 500,
      judged: least(quantile(times, 0.5), quantile(cores, 0.5)),
    }),
    figureOf({
      topic: 'pages',
      what: `${place}: a key answered when it is ready`,
      figure: quantile(keys, 0.5),
      p95: quantile(keys, 0.95),
      floor: FRAME_MS,
    }),
    ...(frames.length === 0
      ? []
      : [
          figureOf({
            topic: 'pages',
            what: `${place}: frames while its table scrolls`,
            figure: quantile(frames, 0.5),
            p95: quantile(frames, 0.95),
            floor: FRAME_MS,
          }),
        ]),
  ];
}

const memoryFigure = (what: string, pid: number): Figure =>
  figureOf({ topic: 'start', what, unit: 'MB', figure: memoryOf(pid), floor: bareNode_MB(), wanted: 300 });

export async function figures(quick: boolean): Promise<readonly Figure[]> {
  const data = mkdtempSync(join(tmpdir(), 'bedwright-pages-'));
  const found: Figure[] = [];
  const tell = (...list: readonly Figure[]) => {
    for (const each of list) console.log(`  ${lineOf(each)}`);
    found.push(...list);
  };
  try {
    const farm = farmIn(data);
    tell(await startUp(data, farm, quick ? 2 : 5));
    const host = await startHost(data, ['--farm', farm]);
    const browser = await chromium.launch({
      executablePath: process.env['CHROMIUM'] || '/usr/bin/chromium',
      args: chromiumFlags,
    });
    try {
      const page = await browser.newPage({ viewport: { width: 1280, height: 860 } });
      await page.addInitScript(WATCH);
      await page.goto(host.host.address);
      await page.waitForURL((url) => url.pathname !== '/open');
      await page.locator('h1').first().waitFor();
      const pid = host.child.pid ?? 0;
      tell(memoryFigure('memory of the program after its first page', pid));
      const floors = [];
      for (let round = 0; round < 3; round += 1) floors.push(await readyAfter_ms(page, `${host.host.origin}/farm`));
      const measured = { page, host, system: await browser.newBrowserCDPSession() };
      for (const place of places) tell(...(await placeFigures(measured, place, Math.min(...floors), quick ? 2 : 5)));
      tell(...(await siteDrawingFrames(page, host.host.origin)));
      tell(memoryFigure('memory of the program after all its pages', pid));
    } finally {
      await browser.close();
      await endOf(host);
    }
  } finally {
    rmSync(data, { recursive: true, force: true });
  }
  return found;
}
