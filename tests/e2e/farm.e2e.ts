import { randomUUID } from 'node:crypto';
import { existsSync, mkdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from './program.ts';

test('a grower makes a farm, its block, a design and ten beds in two short forms, and takes the beds back', async ({
  page,
  host,
}) => {
  const name = `Gravel Pit Field ${randomUUID().slice(0, 6)}`;
  await page.goto(`${host.origin}/week`);
  await page.getByRole('button', { name: 'Make your own farm' }).click();
  const form = page.getByRole('form', { name: 'New farm' });
  await form.getByRole('button', { name: 'Make the farm' }).click();
  await expect(form.getByText('Something is needed here.').first()).toBeVisible();
  await form.getByLabel('Name of the farm').fill(name);
  await form.getByLabel('Latitude').evaluate((field) => {
    const carried = new DataTransfer();
    carried.setData('text', '47.6, -122.3');
    field.dispatchEvent(new ClipboardEvent('paste', { clipboardData: carried, bubbles: true, cancelable: true }));
  });
  await expect(form.getByLabel('Longitude')).toHaveValue('−122.3');
  await form.getByLabel('Height above the sea').fill('35 m');
  await form.getByRole('button', { name: 'Make the farm' }).click();
  await expect(page.getByRole('heading', { name: 'The first beds' })).toBeVisible();
  await expect(page.getByRole('banner')).toContainText(name);
  expect(existsSync(join(host.data, `${name}.bedwright`))).toBe(true);
  const beds = page.getByRole('form', { name: 'The first beds' });
  await beds.getByLabel('Block').fill('');
  await beds.getByRole('button', { name: 'Build the beds' }).click();
  await expect(beds.getByText('A new block needs a code, for instance F.')).toBeVisible();
  await beds.getByLabel('Block').fill('A');
  await beds.getByLabel('Depth').fill('35 cm');
  await beds.getByRole('button', { name: 'Build the beds' }).click();
  await expect(page.getByRole('heading', { name: 'Beds', level: 1 })).toBeVisible();
  await expect(page.getByText('10 beds in one block.')).toBeVisible();
  await expect(page.getByRole('contentinfo')).toContainText('Built 10 beds.');
  await page.getByRole('button', { name: /^Undo add design .* and build 10 beds/ }).click();
  await expect(page.getByRole('contentinfo')).toContainText(/Undone: Add design .* and build 10 beds from/);
  await page.getByRole('button', { name: /^Redo add design .* and build 10 beds/ }).click();
  await expect(page.getByRole('contentinfo')).toContainText(/Redone: Add design .* and build 10 beds from/);
});

test('settings are saved as one step that can be undone, and a wrong value is told at its field', async ({ page, host }) => {
  await page.goto(`${host.origin}/farm`);
  const latitude = page.getByLabel('Latitude');
  await latitude.fill('123');
  await page.getByRole('button', { name: 'Save settings' }).click();
  await expect(page.getByText('A latitude lies between -90 and 90 degrees.')).toBeVisible();
  await expect(page.getByRole('contentinfo')).toContainText('one entry needs a look');
  await expect(latitude).toHaveAttribute('aria-invalid', 'true');
  await latitude.fill('48.1');
  await page.getByLabel('Wage for an hour').fill('$21.50');
  await page.getByRole('button', { name: 'Save settings' }).click();
  await expect(page.getByRole('contentinfo')).toContainText('Saved the farm’s settings.');
  await page.reload();
  await expect(page.getByLabel('Latitude')).toHaveValue('48.1');
  await expect(page.getByLabel('Wage for an hour')).toHaveValue('21.50');
  await page.getByRole('button', { name: 'Undo change the farm’s settings' }).click();
  await expect(page.getByLabel('Latitude')).toHaveValue('47.6');
});

test('the units of the farm change every field and column, and nothing that is kept', async ({ page, host }) => {
  await page.goto(`${host.origin}/farm`);
  await expect(page.getByLabel('Bucket')).toHaveValue('5');
  await page.getByRole('combobox', { name: 'Units' }).selectOption('metric');
  await page.getByRole('button', { name: 'Save settings' }).click();
  await expect(page.getByLabel('Bucket')).toHaveValue('18.92706');
  await page.goto(`${host.origin}/library?tab=materials`);
  await expect(page.getByRole('columnheader', { name: /^Dry/ })).toContainText('kg/m³');
  await page.getByRole('button', { name: 'Undo change the farm’s settings' }).click();
  await expect(page.getByRole('columnheader', { name: /^Dry/ })).toContainText('lb/ft³');
});

test('a backup is made, looked into and gone back to', async ({ page, host }) => {
  await page.goto(`${host.origin}/farm?tab=backups`);
  await page.getByRole('button', { name: 'Back up now' }).first().click();
  await expect(page.getByRole('contentinfo')).toContainText('Made a backup.');
  await page.goto(`${host.origin}/farm`);
  await page.getByLabel('Address and contact').fill('Shed by the road');
  await page.getByRole('button', { name: 'Save settings' }).click();
  await expect(page.getByRole('contentinfo')).toContainText('Saved');
  await page.getByRole('tab', { name: 'Backups' }).click();
  await page.getByRole('gridcell', { name: 'by hand' }).first().click();
  const dialog = page.getByRole('dialog');
  await expect(dialog.getByRole('row', { name: 'beds', exact: false }).first()).toBeVisible();
  await expect(dialog.getByRole('heading', { name: 'Changes made since: 1' })).toBeVisible();
  await expect(dialog.getByText('Change the farm’s settings')).toBeVisible();
  await dialog.getByRole('button', { name: 'Go back to this backup' }).click();
  await expect(page.getByRole('contentinfo')).toContainText('The farm is as it was in this backup.');
  await page.getByRole('tab', { name: 'Settings' }).click();
  await expect(page.getByLabel('Address and contact')).toHaveValue('');
});

test('a copy is saved under a new name and refused over a file that is there', async ({ page, host }) => {
  await page.goto(`${host.origin}/farm?tab=files`);
  const target = join(host.data, `copy ${randomUUID().slice(0, 6)}.bedwright`);
  await page.getByRole('textbox', { name: 'Save a copy as' }).fill(target);
  await page.getByRole('button', { name: 'Save a copy', exact: true }).click();
  await expect(page.getByRole('contentinfo')).toContainText('Saved a copy');
  expect(existsSync(target)).toBe(true);
  await page.getByRole('textbox', { name: 'Save a copy as' }).fill(target);
  await page.getByRole('button', { name: 'Save a copy', exact: true }).click();
  await expect(page.getByText('There is already a file at')).toBeVisible();
});

test('two windows show two farms, each by its own address', async ({ page, host, context }) => {
  await page.goto(`${host.origin}/farm?tab=files`);
  const copy = join(host.data, `second ${randomUUID().slice(0, 6)}.bedwright`);
  await page.getByRole('textbox', { name: 'Save a copy as' }).fill(copy);
  await page.getByRole('button', { name: 'Save a copy', exact: true }).click();
  await expect(page.getByRole('contentinfo')).toContainText('Saved a copy');
  await page.getByRole('textbox', { name: 'A farm file' }).fill(copy);
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.waitForURL(/farm=/);
  const second = new URL(page.url()).searchParams.get('farm') ?? '';
  await page.goto(`${host.origin}/farm?farm=${second}`);
  await page.getByLabel('Name', { exact: true }).fill('Second field');
  await page.getByRole('button', { name: 'Save settings' }).click();
  await expect(page.getByRole('banner')).toContainText('Second field');
  const other = await context.newPage();
  await other.goto(`${host.origin}/farm`);
  await expect(other.getByRole('banner')).not.toContainText('Second field');
});

test('a farm of the list opens in a second window beside the first, and a second window may begin without a farm', async ({
  page,
  host,
  context,
}) => {
  const name = `North ${randomUUID().slice(0, 6)}`;
  await page.goto(`${host.origin}/farm?tab=files`);
  await page.getByRole('textbox', { name: 'Save a copy as' }).fill(name);
  await page.getByRole('button', { name: 'Save a copy', exact: true }).click();
  await expect(page.getByRole('contentinfo')).toContainText(`${name}.bedwright`);
  await page.getByRole('textbox', { name: 'A farm file' }).fill(name);
  const opening = context.waitForEvent('page');
  await page.getByRole('button', { name: 'Open in a second window' }).last().click();
  const second = await opening;
  await expect(second.getByRole('heading', { name: 'This week', level: 1 })).toBeVisible();
  expect(new URL(second.url()).searchParams.get('farm')).not.toBeNull();
  await second.goto(second.url().replace('/week', '/farm'));
  await second.getByLabel('Name', { exact: true }).fill('North of the lane');
  await second.getByRole('button', { name: 'Save settings' }).click();
  await expect(second.getByRole('banner')).toContainText('North of the lane');
  await expect(second).toHaveTitle('Farm · North of the lane · Bedwright');
  await page.reload();
  await expect(page.getByRole('banner')).not.toContainText('North of the lane');
  const list = page.getByRole('region', { name: 'Open a farm' });
  await expect(list.getByText('in this window')).toHaveCount(1);
  await expect(list.getByRole('button', { name: `In a second window: ${name}` })).toBeVisible();

  const another = context.waitForEvent('page');
  await page.keyboard.press('Control+k');
  await page.getByRole('combobox').fill('another farm');
  await page.keyboard.press('Enter');
  const third = await another;
  await expect(third.getByRole('heading', { name: 'Welcome' })).toBeVisible();
  await third.getByRole('button', { name: `Open here: ${name}` }).click();
  await expect(third.getByRole('banner')).toContainText('North of the lane');
});

test('the file is moved into a folder that was chosen, and the list of recent farms is emptied', async ({ page, host }) => {
  mkdirSync(join(host.data, 'Stick'), { recursive: true });
  await page.goto(`${host.origin}/farm?tab=files`);
  await page.getByRole('button', { name: 'Choose: Move it to' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Farms of this program' }).click();
  await dialog.getByRole('button', { name: 'Stick' }).click();
  await dialog.getByRole('button', { name: 'Take this folder' }).click();
  await expect(page.getByRole('textbox', { name: 'Move it to' })).toHaveValue(join(host.data, 'Stick'));
  await page.getByRole('button', { name: 'Move the file' }).click();
  const moved = join(host.data, 'Stick', 'Saltgrass Lane (invented sample).bedwright');
  await expect(page.getByRole('contentinfo')).toContainText(moved);
  expect(existsSync(moved)).toBe(true);
  await page.getByRole('textbox', { name: 'Save a copy as' }).fill(join(host.data, 'Stick', 'Copy'));
  await page.getByRole('button', { name: 'Save a copy', exact: true }).click();
  await expect(page.getByRole('contentinfo')).toContainText('Saved a copy');
  await page.getByRole('textbox', { name: 'A farm file' }).fill(join(host.data, 'Stick', 'Copy'));
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.waitForURL(/farm=/);
  await page.goto(`${host.origin}/farm?tab=files&farm=${new URL(page.url()).searchParams.get('farm')}`);
  await page.getByRole('button', { name: 'Empty this list' }).click();
  await expect(page.getByRole('contentinfo')).toContainText('The list of recent farms is empty; the files stay.');
  await expect(page.getByRole('listitem').filter({ hasText: '.bedwright' })).toHaveCount(0);
});

test('a file is chosen in a view of folders: a place for a copy, then the copy to open; nothing is written over', async ({
  page,
  host,
}) => {
  const name = `chosen ${randomUUID().slice(0, 6)}`;
  mkdirSync(join(host.data, 'Other disk'), { recursive: true });
  await page.goto(`${host.origin}/farm?tab=files`);
  await page.getByRole('button', { name: 'Choose: Save a copy as' }).click();
  const dialog = page.getByRole('dialog');
  await dialog.getByRole('button', { name: 'Farms of this program' }).click();
  await dialog.getByLabel('File name').fill('Saltgrass Lane (invented sample)');
  await expect(dialog.getByText('There is already a farm of this name here.')).toBeVisible();
  await expect(dialog.getByRole('button', { name: 'Take this place' })).toBeDisabled();
  await dialog.getByLabel('File name').fill(name);
  await dialog.getByRole('button', { name: 'Other disk' }).click();
  await expect(dialog.getByText('There is no folder and no farm file here.')).toBeVisible();
  await dialog.getByRole('button', { name: 'Take this place' }).click();
  const path = join(host.data, 'Other disk', `${name}.bedwright`);
  await expect(page.getByRole('textbox', { name: 'Save a copy as' })).toHaveValue(path);
  await page.getByRole('button', { name: 'Save a copy', exact: true }).click();
  await expect(page.getByRole('contentinfo')).toContainText('Saved a copy');
  expect(existsSync(path)).toBe(true);

  await page.getByRole('button', { name: 'Choose: A farm file' }).click();
  await dialog.getByRole('button', { name: 'Farms of this program' }).click();
  await dialog.getByRole('button', { name: 'Other disk' }).click();
  await dialog.getByRole('button', { name }).click();
  await expect(page.getByRole('textbox', { name: 'A farm file' })).toHaveValue(path);
  await page.getByRole('button', { name: 'Open', exact: true }).click();
  await page.waitForURL(/farm=/);
  await page.goto(`${host.origin}/farm?tab=files&farm=${new URL(page.url()).searchParams.get('farm')}`);
  await expect(page.getByRole('region', { name: "This farm's file" })).toContainText(name);
});

test('a farm file dropped on the window is taken in as a copy and opened; another file is not', async ({ page, host }) => {
  await page.goto(`${host.origin}/farm?tab=files`);
  const copy = join(host.data, `dropped ${randomUUID().slice(0, 6)}.bedwright`);
  await page.getByRole('textbox', { name: 'Save a copy as' }).fill(copy);
  await page.getByRole('button', { name: 'Save a copy', exact: true }).click();
  await expect(page.getByRole('contentinfo')).toContainText('Saved a copy');
  const bytes = readFileSync(copy).toString('base64');
  const drop = (name: string, content: string) =>
    page.evaluate<void>(`{
      const file = new File([Uint8Array.from(atob('${content}'), (each) => each.charCodeAt(0))], '${name}');
      const carried = new DataTransfer();
      carried.items.add(file);
      const where = document.querySelector('main');
      where.dispatchEvent(new DragEvent('dragover', { dataTransfer: carried, bubbles: true, cancelable: true }));
      where.dispatchEvent(new DragEvent('drop', { dataTransfer: carried, bubbles: true, cancelable: true }));
    }`);
  await drop('letter.txt', 'RGVhcg==');
  await expect(page.getByRole('contentinfo')).toContainText('its name ends in .bedwright');
  await drop('Far field.bedwright', 'RGVhcg==');
  await expect(page.getByRole('contentinfo')).toContainText('Far field.bedwright is not a farm file');
  await drop('Far field.bedwright', bytes);
  const dialog = page.getByRole('dialog', { name: 'Farm taken in' });
  await expect(dialog).toContainText('Far field.bedwright');
  await dialog.getByRole('button', { name: 'Open it here' }).click();
  await page.waitForURL(/farm=/);
  await expect(page.getByRole('banner')).toContainText('Saltgrass Lane');
  expect(existsSync(join(host.data, 'Far field.bedwright'))).toBe(true);
});

test('columns that were put away stay away for this farm, on another computer too', async ({ page, host, browser }) => {
  await page.goto(`${host.origin}/beds`);
  const head = page.getByRole('columnheader', { name: /^Design/ });
  await expect(head).toBeVisible();
  await page.getByRole('button', { name: 'Choose columns' }).click();
  const kept = page.waitForResponse((response) => response.url().includes('farm.remember'));
  await page.getByRole('dialog').getByRole('checkbox', { name: 'Design' }).click();
  await kept;
  await page.getByRole('dialog').getByRole('button', { name: 'Done' }).click();
  await expect(head).toHaveCount(0);
  expect(await page.evaluate(() => Object.keys(localStorage).filter((key) => key.includes('table')))).toEqual([]);
  const elsewhere = await browser.newContext();
  const second = await elsewhere.newPage();
  await second.goto(host.address);
  await second.waitForURL((url) => url.pathname !== '/open');
  await second.goto(`${host.origin}/beds`);
  await expect(second.getByRole('columnheader', { name: /^Length/ })).toBeVisible();
  await expect(second.getByRole('columnheader', { name: /^Design/ })).toHaveCount(0);
  await elsewhere.close();
});
