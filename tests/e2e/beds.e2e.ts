import { readFile } from 'node:fs/promises';
import AxeBuilder from '@axe-core/playwright';
import type { Page } from '@playwright/test';
import { expect, test } from './program.ts';

const said = (page: Page) => page.getByRole('contentinfo');
const drawing = (page: Page) => page.getByRole('application', { name: /Site drawing/ });

test('forty beds are built at once from a design, found in the table, and taken back in one step', async ({ page, host }) => {
  await page.goto(`${host.origin}/beds`);
  await page.getByRole('button', { name: 'Build beds' }).click();
  const form = page.getByRole('form', { name: 'Build beds' });
  await form.getByLabel('Design').selectOption({ label: 'Framed bed 1.2 x 2.4 m' });
  await form.getByLabel('Block', { exact: true }).selectOption({ label: 'A new block…' });
  await form.getByLabel('Code of the new block').fill('A');
  await form.getByLabel('First code').fill('F-01');
  await form.getByRole('textbox', { name: 'Beds' }).fill('40');
  await form.getByLabel('In a row').fill('10');
  await form.getByLabel('Path between rows').fill('50 cm');
  await form.getByRole('button', { name: 'Build 40 beds' }).click();
  await expect(form.getByText('There is a block A already')).toBeVisible();
  await form.getByLabel('Code of the new block').fill('F');
  await form.getByRole('button', { name: 'Build 40 beds' }).click();
  await expect(said(page)).toContainText('Built 40 beds.');
  await expect(page.getByText('136 beds in 6 blocks.')).toBeVisible();
  await page.getByRole('searchbox').or(page.getByPlaceholder('Filter by typing')).first().fill('F-40');
  await expect(page.getByRole('gridcell', { name: 'F-40' })).toBeVisible();
  await page.getByRole('button', { name: 'Undo build 40 beds' }).click();
  await expect(page.getByText('96 beds in 5 blocks.')).toBeVisible();
});

test('on the drawing a bed is reached, moved and turned by keys, and the table follows', async ({ page, host }) => {
  await page.goto(`${host.origin}/beds`);
  await drawing(page).focus();
  await page.keyboard.press('n');
  await page.keyboard.press('n');
  await expect(said(page)).toContainText('Bed A-02');
  await expect(page.getByRole('row', { name: /A-02/ })).toHaveAttribute('aria-selected', 'true');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('ArrowUp');
  await page.keyboard.press('[');
  await expect(page.getByRole('button', { name: 'Undo move bed A-02' })).toBeVisible();
  await page.keyboard.press('Enter');
  const sheet = page.getByRole('complementary');
  await expect(sheet.getByRole('heading', { name: /A-02/ })).toBeVisible();
  await sheet.getByRole('tab', { name: 'Change' }).click();
  await expect(sheet.getByLabel('Turn, counter-clockwise')).toHaveValue('15');
  await page.getByRole('button', { name: 'Undo move bed' }).click();
  await expect(sheet.getByLabel('Turn, counter-clockwise')).toHaveValue('0');
});

test('a bed is dragged with the mouse as one step of undo; two rows chosen in the table are chosen on the drawing', async ({
  page,
  host,
}) => {
  await page.goto(`${host.origin}/beds`);
  await drawing(page).focus();
  await page.keyboard.press('n');
  for (let turn = 0; turn < 6; turn += 1) await page.keyboard.press('+');
  const box = await drawing(page).boundingBox();
  if (box === null) throw new Error('the drawing is not there');
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  await page.mouse.move(x, y);
  await page.mouse.down();
  await page.mouse.move(x + 30, y + 60, { steps: 4 });
  await page.mouse.move(x + 40, y + 90, { steps: 4 });
  await page.mouse.up();
  await page.getByRole('button', { name: 'Undo move bed' }).click();
  await expect(said(page)).toContainText('Undone: Move bed A-');
  await page.getByRole('row', { name: /A-03/ }).getByRole('checkbox').click();
  await expect(page.getByText(/2 chosen, .* apart/)).toBeVisible();
  await page.getByLabel('Align the chosen beds').selectOption('west');
  await expect(page.getByRole('button', { name: 'Undo align 2 beds' })).toBeVisible();
  await page.getByRole('button', { name: 'Undo align 2 beds' }).click();
});

test('the plants of a round bag are counted exactly and open their working', async ({ page, host }) => {
  await page.goto(`${host.origin}/beds?bed=bed-b-1`);
  const sheet = page.getByRole('complementary');
  await sheet.getByRole('tab', { name: 'Plants' }).click();
  await sheet.getByLabel('Spacing').fill('20 cm');
  // 80 cm across: our own brute-force count, ten with half a spacing of margin, nineteen with none
  await expect(sheet.getByRole('button', { name: /^Plants: 10 plants/ })).toBeVisible();
  await sheet.getByLabel('Margin to the edge').fill('0');
  await expect(sheet.getByRole('button', { name: /^Plants: 19 plants/ })).toBeVisible();
  await sheet.getByRole('button', { name: /^Plants: 19 plants/ }).click();
  await expect(page.getByText('Points counted one by one')).toBeVisible();
});

test('a bag wider than its basin is told at the field, with what would fit', async ({ page, host }) => {
  await page.goto(`${host.origin}/beds?view=designs&design=design-bag`);
  const form = page.getByRole('form', { name: /Change Fabric bag/ });
  await form.getByLabel('Basin diameter').fill('70 cm');
  await form.getByRole('button', { name: 'Save the design' }).click();
  await expect(form.getByText(/A bag up to 2 ft 3.5 in fits/)).toBeVisible();
  await expect(form.getByLabel('Basin diameter')).toHaveAttribute('aria-invalid', 'true');
});

test('an old mound is taken down, its soil goes to stock, and it can be taken into use again', async ({ page, host }) => {
  await page.goto(`${host.origin}/beds?bed=bed-e-1`);
  await page.getByRole('button', { name: 'Take down…' }).click();
  const form = page.getByRole('form', { name: 'Take down' });
  await form.getByLabel('Why').fill('sunk in');
  await form.getByRole('button', { name: 'Take down' }).click();
  await expect(said(page)).toContainText('its fill is in stock');
  await page.getByRole('tab', { name: 'Retired' }).click();
  await page.getByRole('button', { name: 'Take into use again' }).click();
  await expect(said(page)).toContainText('E-01 is in use again.');
});

test('the site goes out as GeoJSON and beds come in from it; a bad feature is told by its number', async ({ page, host }) => {
  await page.goto(`${host.origin}/beds`);
  const wait = page.waitForEvent('download');
  await page.getByRole('link', { name: 'Site as GeoJSON' }).click();
  const text = await readFile(await (await wait).path(), 'utf8');
  const site = JSON.parse(text) as { features: { properties: { code?: string } }[] };
  expect(site.features).toHaveLength(97);
  await page.getByRole('button', { name: 'Bring in GeoJSON' }).click();
  const file = page.getByLabel('GeoJSON file');
  await file.setInputFiles({ name: 'site.geojson', mimeType: 'application/geo+json', buffer: Buffer.from(text) });
  await expect(page.getByText('Feature 2 has the code A-01, which another bed has.')).toBeVisible();
  const renamed = {
    ...site,
    features: site.features
      .slice(0, 4)
      .map((each) => (each.properties.code === undefined ? each : { ...each, properties: { code: `X${each.properties.code}` } })),
  };
  await file.setInputFiles({
    name: 'site.geojson',
    mimeType: 'application/geo+json',
    buffer: Buffer.from(JSON.stringify(renamed)),
  });
  await page.getByRole('button', { name: 'Bring in 3 beds' }).click();
  await expect(page.getByText('99 beds in 5 blocks.')).toBeVisible();
  await page.getByRole('button', { name: 'Undo import beds from a geojson' }).click();
  await expect(page.getByText('96 beds in 5 blocks.')).toBeVisible();
});

test('a drop measured in the sheet becomes a top-up, and a card says how many buckets', async ({ page, host }) => {
  await page.goto(`${host.origin}/beds?bed=bed-a-1`);
  const sheet = page.getByRole('complementary');
  await sheet.getByRole('tab', { name: 'Fill', exact: true }).click();
  await sheet.getByLabel('Below the wanted surface').fill('4 cm');
  await sheet.getByRole('button', { name: 'Keep the drop' }).click();
  await expect(sheet.getByText('Top-up, measured drop 1.57 in')).toBeVisible();
  await page.goto(`${host.origin}/beds?view=cards`);
  await expect(page.getByRole('article').filter({ hasText: 'A-01' })).toContainText('Compost, yard trimmings');
  await page.getByRole('button', { name: /^Undo measure the fill of/ }).click();
});

test('every view of the place passes the accessibility rules', async ({ page, host }) => {
  test.setTimeout(300_000);
  for (const query of [
    '',
    '?bed=bed-c-1',
    '?view=designs&design=design-trough',
    '?view=needs',
    '?view=cards',
    '?view=farm',
    '?view=retired',
  ]) {
    await page.goto(`${host.origin}/beds${query}`);
    await page.waitForLoadState('networkidle');
    const { violations } = await new AxeBuilder({ page })
      .withTags(['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'])
      .analyze();
    expect(
      violations.map((each) => `${each.id}: ${each.nodes[0]?.target}`),
      query,
    ).toEqual([]);
  }
});
