import { expect, test } from './program.ts';

test('a phone is let in by its code, ticks off a task and logs a harvest out of reach, and is shut out with one click', async ({
  page,
  host,
  browser,
}) => {
  test.setTimeout(90_000);
  const added = await page.evaluate<number>(
    `fetch('/trpc/week.add', { method: 'POST', headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ title: 'Mend the north fence', due: '2026-11-25', bedId: null, note: '' }) }).then((answer) => answer.status)`,
  );
  expect(added).toBe(200);
  await page.goto(`${host.origin}/farm?tab=phone`);
  // off until someone wants it: no door, no code
  await expect(page.getByRole('button', { name: 'Switch the field page on' })).toBeVisible();
  await expect(page.locator('.pair-code')).toHaveCount(0);
  await page.getByRole('button', { name: 'Switch the field page on' }).click();
  await expect(page.getByRole('heading', { name: 'The field page is on' })).toBeVisible();
  // the farm's own network, another origin than the program's, and no secure context as browsers count it
  const { origin } = new URL(((await page.locator('.file-path').first().textContent()) ?? '').trim());
  expect(origin).not.toContain('127.0.0.1');
  const code = ((await page.locator('.pair-code').textContent()) ?? '').replaceAll(/\D/g, '');
  expect(code).toMatch(/^\d{8}$/);

  const phone = await browser.newContext({ viewport: { width: 390, height: 780 } });
  const field = await phone.newPage();
  const errors: string[] = [];
  field.on('pageerror', (error) => errors.push(error.message));
  // the host's clock stands still in tests; the phone's with it
  await phone.clock.setFixedTime(new Date('2026-11-25T10:00:00'));
  await field.goto(`${origin}/`);
  await field.getByLabel('Code').fill('00000000');
  await field.getByRole('button', { name: 'Connect' }).click();
  await expect(field.getByRole('alert')).toContainText('This code is not right.');
  await field.getByLabel('Code').fill(code);
  await field.getByLabel('Who or what this is').fill('Phone of Kim');
  await field.getByRole('button', { name: 'Connect' }).click();
  await expect(field.getByRole('status')).toContainText('Connected to the computer.');
  await expect(page.getByText('Phone of Kim')).toBeVisible();
  // who looked over a shoulder comes too late: the code was for one
  const stranger = await browser.newContext({ viewport: { width: 390, height: 780 } });
  const late = await stranger.newPage();
  await late.goto(`${origin}/`);
  await late.getByLabel('Code').fill(code);
  await late.getByRole('button', { name: 'Connect' }).click();
  await expect(late.getByRole('alert')).toContainText('There is no code to enter now.');
  await stranger.close();

  await expect(field.getByText('Mend the north fence')).toBeVisible();
  await phone.setOffline(true);
  const task = field.getByRole('listitem').filter({ hasText: 'Mend the north fence' });
  await task.getByRole('button', { name: 'Done' }).click();
  await expect(field.getByText('Done: Mend the north fence')).toBeVisible();
  await expect(field.getByText('Waits to be sent.')).toBeVisible();
  await expect(field.getByRole('status')).toContainText('out of reach');
  await phone.setOffline(false);
  await field.goto(`${origin}/`);
  await expect(field.getByRole('status')).toContainText('Connected');
  await expect(field.getByText('Mend the north fence')).toHaveCount(0);

  await field.getByRole('button', { name: 'Harvest' }).click();
  await field.getByRole('button', { name: 'Log the harvest' }).click();
  await expect(field.getByRole('alert')).toContainText('Choose what was picked.');
  await phone.setOffline(true);
  await field.getByLabel('Picked').selectOption({ index: 1 });
  await field.getByLabel('How much').fill('2.5');
  await field.getByRole('button', { name: 'Log the harvest' }).click();
  await expect(field.getByText(/^2\.5 .* of /)).toBeVisible();
  await expect(field.getByRole('status')).toContainText('1 entry waits');
  await phone.setOffline(false);
  await field.evaluate('window.dispatchEvent(new Event("online"))');
  const odd = field.getByRole('button', { name: 'It is right, send it' });
  // out of its harvest window the computer asks whether it is meant
  await expect(async () => {
    if (await odd.isVisible()) await odd.click();
    await expect(field.getByRole('status')).toHaveText('Connected to the computer.', { timeout: 1000 });
  }).toPass();
  await page.goto(`${host.origin}/farm?tab=phone`);
  await expect(page.getByRole('button', { name: /^Undo log a harvest in the field.*2\.5/ })).toBeVisible();
  await expect(page.getByText('Phone of Kim')).toBeVisible();
  expect(errors).toEqual([]);

  await page.getByRole('button', { name: 'Switch it off' }).click();
  await expect(page.getByRole('button', { name: 'Switch the field page on' })).toBeVisible();
  await expect(field.goto(`${origin}/`)).rejects.toThrow();
  await phone.close();
});
