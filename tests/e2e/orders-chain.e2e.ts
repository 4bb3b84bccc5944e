import type { Locator } from '@playwright/test';
import { expect, test } from './program.ts';

test('from a need to the costs: ordered, partly received, some sent back, counted, put in the line', async ({ page, host }) => {
  // a need by hand: batteries for the line
  await page.goto(`${host.origin}/orders?season=season-2027`);
  const needs = page.getByRole('grid', { name: 'Needs' });
  await expect(needs).toBeVisible();
  await page.getByRole('button', { name: 'Add a need' }).click();
  const adding = page.getByRole('dialog', { name: 'Add a need' });
  const battery = adding.getByLabel('Material').locator('option', { hasText: 'Battery, lithium iron phosphate' });
  const part = (await battery.textContent()) ?? '';
  await adding.getByLabel('Material').selectOption({ label: part });
  await adding.getByLabel('Amount').fill('3');
  await adding.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(adding.getByText('A date is needed here.')).toBeVisible();
  await adding.getByLabel('Wanted by').fill('2027-03-01');
  await adding.getByLabel('For').fill('the line');
  await adding.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(adding).toBeHidden();

  // another amount with its reason
  await page.getByPlaceholder('Filter by typing').fill('the line');
  await needs
    .getByRole('row', { name: /Battery/ })
    .getByRole('gridcell')
    .nth(1)
    .dblclick();
  const sheet = page.getByRole('form', { name: 'Another amount' });
  await sheet.getByLabel('Amount').fill('4');
  await sheet.getByLabel('Why').fill('one to spare');
  await sheet.getByRole('button', { name: 'Take this amount' }).click();
  await expect(needs.getByRole('row', { name: /Battery.*one to spare \(computed 3\)/ })).toBeVisible();

  // the list, the order
  await page.getByRole('tab', { name: 'Shopping list' }).click();
  await page.getByRole('button', { name: 'Find the cheapest list' }).click();
  await page.getByRole('button', { name: 'Keep this list' }).click({ timeout: 60_000 });
  const line = page.getByRole('checkbox', { name: new RegExp(`Got ${part}`) });
  await expect(line).toBeVisible();
  await line.click();
  await expect(line).toBeChecked();
  // 4 at 320.00 are 1,280.00
  await expect(page.getByRole('row', { name: new RegExp(`Got ${part}.*\\$320\\.00 \\$1,280\\.00`) })).toBeVisible();
  await page.getByRole('button', { name: 'Order the 1 ticked' }).click();
  await expect(line).toBeHidden();

  // half of it comes, one goes back
  await page.getByRole('tab', { name: 'Purchases' }).click();
  const row = page.getByRole('row', { name: /Battery.*Ordered/ }).first();
  await row.getByRole('gridcell').nth(1).dblclick();
  const receive = page.getByRole('form', { name: 'Receive' });
  await receive.getByLabel(new RegExp(`^${part}, of 4`)).fill('2');
  // delivered free from 150.00; tax of 8 % on 1,280.00, of which this receipt bears its half
  await expect(receive.getByLabel('Delivery and tax of this receipt')).toHaveValue(/^102\.40?$/);
  await receive.getByLabel('Delivery and tax of this receipt').fill('51.20');
  await receive.getByRole('button', { name: 'Take into stock' }).click();
  await expect(receive.getByLabel(new RegExp(`^${part}, of 2`))).toBeVisible();
  const back = page.getByRole('form', { name: 'Send back' });
  await back.getByLabel('Packages').fill('1');
  await back.getByLabel('Why').fill('dented');
  await back.getByRole('button', { name: 'Send back' }).click();
  await expect(page.getByRole('status').filter({ hasText: 'Sent it back.' })).toBeVisible();

  await expect(page.getByRole('row', { name: /Battery.*Partly here/ })).toContainText(/421320\.001,280\.00/);

  // one is on hand, worth half of what both cost to have here: (2 x 320.00 + 51.20) / 2
  await page.goto(`${host.origin}/orders?tab=stock`);
  const stock = page.getByRole('row', { name: /Battery/ });
  await expect(stock.getByRole('gridcell').nth(3)).toHaveText('1');
  await expect(stock).toContainText('345.60');

  // the season's money: two of four are still to come
  await page.goto(`${host.origin}/orders?tab=budget&season=season-2027`);
  await expect(page.getByRole('row', { name: /hardware.* 640\.00/ }).first()).toBeVisible();

  // into the line: it costs what it cost, over its life
  await page.goto(`${host.origin}/water?tab=line`);
  const wear = page.getByRole('region', { name: 'Wear of the parts' });
  await wear.getByRole('button', { name: 'Enter a part' }).click();
  await wear.getByLabel('Part', { exact: true }).selectOption({ label: part });
  await wear.getByLabel('Life').fill('8');
  await wear.getByRole('button', { name: 'Enter it' }).click();
  await expect(wear.getByRole('row', { name: new RegExp(`${part}.*Nov 25, 2026`) })).toBeVisible();
  await page.goto(`${host.origin}/orders?tab=stock`);
  await expect(
    page
      .getByRole('row', { name: /Battery/ })
      .getByRole('gridcell')
      .nth(3),
  ).toHaveText('0');

  await page.goto(`${host.origin}/costs?season=season-2026`);
  await page.getByText(/^Parts of the water lines:/).click();
  const cost = page.getByRole('row', { name: new RegExp(`${part}.*Nov 25, 2026`) });
  // 345.60 over 8 years are 43.20 a year; 37 of the season's 365 days are left
  await expect(cost).toContainText(/\$345\.60\s*\$4\.38/);
  await cost.getByRole('button', { name: /Show the working/ }).click();
  await expect(page.getByText('days of the season in place, within its life')).toBeVisible();
});

test('straw out of stock onto a bed stands in that bed’s costs', async ({ page, host }) => {
  const amountIn = async (row: Locator, head: string): Promise<number> => {
    await expect(row).toBeVisible();
    const heads = await page.getByRole('columnheader').allInnerTexts();
    const column = heads.findIndex((each) => each.trim().startsWith(head));
    expect(column).toBeGreaterThan(0);
    return Number(((await row.getByRole('gridcell').nth(column).textContent()) ?? '').replaceAll(/[^\d.-]/g, ''));
  };
  const direct = async (): Promise<number> => {
    await page.goto(`${host.origin}/costs?season=season-2026`);
    await page.getByPlaceholder('Filter by typing').fill('A-01');
    return amountIn(page.getByRole('row', { name: /A-01/ }), 'Direct cost');
  };
  const worth = async (): Promise<number> => {
    await page.goto(`${host.origin}/orders?tab=stock`);
    return amountIn(page.getByRole('row', { name: /Straw, loose/ }), 'Value');
  };
  const before = { direct: await direct(), worth: await worth() };
  await page
    .getByRole('row', { name: /Straw, loose/ })
    .getByRole('gridcell')
    .nth(1)
    .dblclick();
  const use = page.getByRole('form', { name: 'Enter a use' });
  await use.getByLabel('Amount').fill('50 gal');
  await use.getByLabel('Bed').selectOption({ label: 'A-01' });
  await use.getByLabel('For').fill('mulch');
  await use.getByRole('button', { name: 'Take out' }).click();
  await expect(page.getByRole('row', { name: /Use.*mulch.*A-01/ })).toBeVisible();
  const left = await worth();
  expect(left).toBeLessThan(before.worth);
  expect((await direct()) - before.direct).toBeCloseTo(before.worth - left, 6);
});

test('a need that nobody sells is told at its place and in the list, until an offer is added', async ({ page, host }) => {
  await page.goto(`${host.origin}/orders?season=season-2027`);
  await page.getByRole('button', { name: 'Add a need' }).click();
  const adding = page.getByRole('dialog', { name: 'Add a need' });
  await adding.getByLabel('Material').selectOption({ label: 'Worm castings, one 1994 sample' });
  await adding.getByLabel('Amount').fill('10 gal');
  await adding.getByLabel('Wanted by').fill('2027-03-01');
  await adding.getByRole('button', { name: 'Add', exact: true }).click();
  const missing = page.getByRole('region', { name: 'Needs without a price' });
  await expect(missing.getByText(/Worm castings/)).toBeVisible();
  await page.getByRole('tab', { name: 'Budget' }).click();
  await expect(missing.getByText(/No price known for 1 need/)).toBeVisible();
  await page.getByRole('tab', { name: 'Shopping list' }).click();
  await missing.getByRole('button', { name: /Add an offer of Worm castings/ }).click();
  const offer = page.getByRole('dialog', { name: 'Add an offer' });
  await offer.getByLabel('Supplier').selectOption({ index: 1 });
  await offer.getByLabel('Package').fill('bag');
  await offer.getByLabel('Holds').fill('1 ft3');
  await offer.getByLabel('Price').fill('18');
  await offer.getByRole('button', { name: 'Add', exact: true }).click();
  await expect(missing).toBeHidden();
});
