import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page, Request } from '@playwright/test';
import { SAMPLE_FILE } from '../../api/program/start-program.ts';
import type { PlaceName } from '../../renderer/app/place-names.ts';
import { expect, type Host } from './program.ts';

/** What opens over a page or beside it: the source file that draws it, where that is, and how a reader opens it. */
export type Opening = {
  readonly part: string;
  readonly at: string;
  readonly open: (page: Page, host: Host) => Promise<void>;
};

const press = (name: string | RegExp) => async (page: Page) => {
  await page
    .getByRole('button', { name, exact: typeof name === 'string' })
    .first()
    .click();
};
const pressInSheet = (name: string) => async (page: Page) => {
  await page.locator('.sheet').getByRole('button', { name, exact: true }).click();
};
/** The first row of a table is opened by its own button. */
const openRow = (table: string) => async (page: Page) => {
  await page
    .getByRole('grid', { name: table, exact: true })
    .getByRole('button', { name: /^Open / })
    .first()
    .click();
};
/** Marks the first row of a table. */
const mark = async (page: Page, table: string) => {
  await page.getByRole('grid', { name: table, exact: true }).getByRole('checkbox').nth(1).click();
};
const then =
  (...steps: readonly ((page: Page) => Promise<void>)[]) =>
  async (page: Page) => {
    for (const step of steps) await step(page);
  };
const place = 'renderer/places';

/** Every dialog and every side sheet of the program. `every-state.test.ts` compares this list with the sources. */
export const openings: readonly Opening[] = [
  { part: 'renderer/app/find-and-go.tsx', at: '/week', open: (page) => page.keyboard.press('Control+k') },
  { part: 'renderer/app/help-sheet.tsx', at: '/soil', open: (page) => page.keyboard.press('F1') },
  { part: 'renderer/working/working-sheet.tsx', at: '/beds?bed=bed-c-1', open: press(/Show the working/) },
  { part: 'renderer/table/column-chooser.tsx', at: '/library?tab=materials', open: press('Choose columns') },
  {
    part: 'renderer/table/edit-many.tsx',
    at: '/library?tab=materials',
    open: then((page) => mark(page, 'Materials'), press('Edit 1')),
  },
  { part: `${place}/week/add-task.tsx`, at: '/week', open: press('Add task') },
  { part: `${place}/beds/build-dialog.tsx`, at: '/beds', open: press('Build beds') },
  { part: `${place}/beds/import-dialog.tsx`, at: '/beds', open: press('Bring in GeoJSON') },
  { part: `${place}/beds/bed-sheet.tsx`, at: '/beds', open: press('Open A-01') },
  { part: `${place}/beds/end-dialog.tsx`, at: '/beds?bed=bed-c-1', open: pressInSheet('Retire…') },
  { part: `${place}/beds/take-down-dialog.tsx`, at: '/beds?bed=bed-c-1', open: pressInSheet('Take down…') },
  { part: `${place}/beds/design-sheet.tsx`, at: '/beds?view=designs', open: press('New design') },
  { part: `${place}/season/board-rules.tsx`, at: '/season', open: press('Rules') },
  { part: `${place}/season/season-choice.tsx`, at: '/season', open: press('Next season') },
  { part: `${place}/season/season-choice.tsx`, at: '/season', open: press('A season with nothing in it') },
  { part: `${place}/season/add-planting.tsx`, at: '/season', open: press('Add planting') },
  { part: `${place}/season/gap-sheet.tsx`, at: '/season', open: press('A-01') },
  { part: `${place}/season/planting-sheet.tsx`, at: '/season', open: press(/^Leek, in the bed [^,]+, 2027/) },
  { part: `${place}/season/add-demand.tsx`, at: '/season?tab=demand', open: press('Add demand') },
  { part: `${place}/soil/test-form.tsx`, at: '/soil', open: press('Enter a test') },
  { part: `${place}/soil/test-import.tsx`, at: '/soil', open: press('Bring in CSV') },
  { part: `${place}/soil/test-sheet.tsx`, at: '/soil', open: openRow('Soil tests') },
  { part: `${place}/soil/budget-sheet.tsx`, at: '/soil?tab=budget', open: press('Open A-01') },
  {
    part: `${place}/soil/done-dialog.tsx`,
    at: '/soil?tab=ph',
    open: then(
      press(/^Put on \d+ dose cards/),
      (page) => page.getByRole('tab', { name: 'Dose cards' }).click(),
      (page) => page.getByRole('article').first().getByRole('checkbox').first().check(),
      press(/^Record \d+ as given/),
    ),
  },
  { part: `${place}/soil/heap-dialog.tsx`, at: '/soil?tab=compost', open: press('Mix a heap') },
  { part: `${place}/soil/heap-sheet.tsx`, at: '/soil?tab=compost', open: openRow('Compost heaps') },
  { part: `${place}/soil/tea-dialog.tsx`, at: '/soil?tab=compost', open: press('Plan a tea batch') },
  { part: `${place}/soil/tea-sheet.tsx`, at: '/soil?tab=compost', open: openRow('Compost tea') },
  { part: `${place}/soil/application-dialog.tsx`, at: '/soil?tab=records', open: press('Enter an application') },
  { part: `${place}/water/bed-water-sheet.tsx`, at: '/water?tab=demand', open: press('Open A-01') },
  { part: `${place}/water/water-choices-dialog.tsx`, at: '/water?tab=stress', open: press('Exposure, walls, confidence…') },
  { part: `${place}/water/weather-import.tsx`, at: '/water?tab=weather', open: press('Read a weather file') },
  {
    part: `${place}/water/line-place-tools.tsx`,
    at: '/water?tab=line&place=node-tee-B-01',
    open: press('Branch off here'),
  },
  { part: `${place}/water/line-wizard.tsx`, at: '/water?tab=line', open: press('Draw a line') },
  { part: `${place}/water/pump-dialog.tsx`, at: '/water?tab=line', open: press('Change the pump') },
  { part: `${place}/water/supply-dialog.tsx`, at: '/water?tab=reservoir', open: press('Change the supply') },
  { part: `${place}/water/power-dialog.tsx`, at: '/water?tab=power', open: press('Change the power') },
  { part: `${place}/orders/need-sheet.tsx`, at: '/orders?tab=needs', open: press(/^Open /) },
  { part: `${place}/orders/add-need.tsx`, at: '/orders?tab=needs', open: press('Add a need') },
  { part: `${place}/orders/bed-plans.tsx`, at: '/orders?tab=needs', open: press('Beds to build') },
  { part: `${place}/orders/stand-ins.tsx`, at: '/orders?tab=needs', open: press('Stand-ins') },
  { part: `${place}/library/offer-import.tsx`, at: '/orders?tab=list', open: press('Import prices') },
  { part: `${place}/orders/purchase-sheet.tsx`, at: '/orders?tab=purchases', open: press(/^Open /) },
  { part: `${place}/orders/count-dialog.tsx`, at: '/orders?tab=stock', open: press('Count') },
  { part: `${place}/orders/stock-sheet.tsx`, at: '/orders?tab=stock', open: press(/^Open /) },
  { part: `${place}/orders/lots-list.tsx`, at: '/orders?tab=stock', open: press('Add a lot') },
  { part: `${place}/orders/budget-tab.tsx`, at: '/orders?tab=budget', open: press('Add a category') },
  { part: `${place}/harvest/import-dialog.tsx`, at: '/harvest', open: press('Bring in CSV') },
  {
    part: `${place}/harvest/sale-dialog.tsx`,
    at: '/harvest?tab=sales',
    open: then((page) => mark(page, 'Lots on hand'), press('Sell this lot')),
  },
  { part: `${place}/harvest/yields-tab.tsx`, at: '/harvest?tab=yields', open: press(/^Open /) },
  { part: `${place}/costs/stand-sheet.tsx`, at: '/costs?tab=earned&by=crop', open: press(/^Open /) },
  { part: `${place}/costs/overheads-tab.tsx`, at: '/costs?tab=overheads', open: press('Add a cost') },
  { part: `${place}/costs/add-record.tsx`, at: '/costs?tab=records', open: press('Add a record') },
  { part: `${place}/library/crop-sheet.tsx`, at: '/library?tab=crops', open: press(/^Open /) },
  { part: `${place}/library/add-crop.tsx`, at: '/library?tab=crops', open: press('Add crop') },
  { part: `${place}/library/material-sheet.tsx`, at: '/library?tab=materials', open: press(/^Open /) },
  { part: `${place}/library/add-material.tsx`, at: '/library?tab=materials', open: press('Add a material') },
  { part: `${place}/library/suppliers-tab.tsx`, at: '/library?tab=suppliers', open: press('Add a supplier') },
  { part: `${place}/library/offer-sheet.tsx`, at: '/library?tab=offers', open: press(/^Open /) },
  { part: `${place}/library/add-offer.tsx`, at: '/library?tab=offers', open: press('Add an offer') },
  { part: `${place}/farm/folder-dialog.tsx`, at: '/farm?tab=files', open: press('Choose: Save a copy as') },
  {
    part: `${place}/farm/backups-tab.tsx`,
    at: '/farm?tab=backups',
    open: then(press('Back up now'), press(/^Open /)),
  },
  { part: `${place}/farm/program-tab.tsx`, at: '/farm?tab=program', open: press('Show the licences') },
  { part: `${place}/farm/drop-farm.tsx`, at: '/farm?tab=files', open: dropAFarm },
];

/** A farm file dropped on the window, as the browser tells the page of it. */
async function dropAFarm(page: Page, host: Host): Promise<void> {
  const bytes = readFileSync(join(host.data, SAMPLE_FILE)).toString('base64');
  await page.evaluate(`{
    const carried = new DataTransfer();
    carried.items.add(new File([Uint8Array.from(atob('${bytes}'), (each) => each.charCodeAt(0))], 'Far field.bedwright'));
    window.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
  }`);
}

/** Goes to a page of the program and waits until what it shows has been read. */
export async function settleAt(page: Page, address: string): Promise<void> {
  requestsOf(page);
  await page.goto(address);
  await expect(page.getByRole('heading', { level: 1 }).first()).toBeVisible();
  await settled(page);
}

/** Requests that are under way, by page. */
const underWay = new WeakMap<Page, Set<Request>>();

function requestsOf(page: Page): ReadonlySet<Request> {
  const known = underWay.get(page);
  if (known !== undefined) return known;
  const open = new Set<Request>();
  underWay.set(page, open);
  page.on('request', (request) => open.add(request));
  page.on('requestfinished', (request) => open.delete(request));
  page.on('requestfailed', (request) => open.delete(request));
  return open;
}

/** Nothing is being read any more, and no part still says that it is on its way: twice, since one answer leads to the next question. */
export async function settled(page: Page): Promise<void> {
  const open = requestsOf(page);
  for (let quiet = 0; quiet < 2; ) {
    await page.evaluate('new Promise((drawn) => requestAnimationFrame(() => requestAnimationFrame(drawn)))');
    const rests = open.size === 0 && (await page.locator('.waiting').count()) === 0;
    quiet = rests ? quiet + 1 : 0;
  }
}

/** Visits every tab of a place, and the tabs within it, as the program itself lists them. */
export async function everyTab(
  page: Page,
  origin: string,
  name: PlaceName,
  visit: (title: string) => Promise<void>,
): Promise<void> {
  await settleAt(page, `${origin}/${name}`);
  const lists = page.getByRole('tablist');
  if ((await lists.count()) === 0) return visit(name);
  const tabs = lists.first().getByRole('tab');
  for (let at = 0; at < (await tabs.count()); at += 1) {
    await tabs.nth(at).click();
    await settled(page);
    const title = `${name}: ${await tabs.nth(at).textContent()}`;
    await visit(title);
    if ((await lists.count()) < 2) continue;
    const inner = lists.nth(1).getByRole('tab');
    for (let within = 1; within < (await inner.count()); within += 1) {
      await inner.nth(within).click();
      await settled(page);
      await visit(`${title}, ${await inner.nth(within).textContent()}`);
    }
  }
}
