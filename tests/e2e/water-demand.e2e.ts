import { expect, test } from './program.ts';

test('a grower compares need and timer, opens a bed, tries departures and reads a weather file', async ({ page, host }) => {
  await page.goto(`${host.origin}/water`);
  await expect(page.getByRole('tab', { name: 'Demand' })).toHaveAttribute('aria-selected', 'true');
  await expect(page.getByRole('figure', { name: /Water to give in the weather of 2015/ })).toBeVisible();
  await page.getByRole('combobox', { name: 'In the weather of' }).selectOption('2014');
  await expect(page.getByRole('figure', { name: /Water to give in the weather of 2014/ })).toBeVisible();
  await page.getByLabel('Supply').selectOption({ label: 'Bag line (24 beds)' });
  await expect(page.getByRole('row', { name: /Timer/ })).toBeVisible();

  await page.getByRole('button', { name: /thirstiest week.*Show the working/ }).click();
  await expect(page.getByText('V = Σ over 7 days', { exact: false })).toBeVisible();
  await page.getByRole('button', { name: 'Close the sheet' }).click();

  await page.getByRole('button', { name: 'Open B-01' }).click();
  await expect(page.getByRole('heading', { name: 'Water of B-01' })).toBeVisible();
  await expect(page.getByRole('figure', { name: 'Water in the basin' })).toBeVisible();
  await page.getByRole('button', { name: 'Close the sheet' }).click();

  await page.getByRole('tab', { name: 'Stores and stress' }).click();
  await expect(page.getByText(/Bag line, longest interval/)).toBeVisible();
  await page.getByRole('button', { name: 'Run all years' }).click();
  await expect(page.getByRole('grid', { name: 'Stress by bed' })).toBeVisible({ timeout: 30_000 });

  await page.getByRole('tab', { name: 'Days away' }).click();
  await page.getByRole('button', { name: 'Try departures' }).click();
  await expect(page.getByText('Days away, whole farm')).toBeVisible({ timeout: 30_000 });

  await page.getByRole('tab', { name: 'Salts' }).click();
  await page.getByLabel('Conductivity').fill('900');
  await page.getByLabel('Date').fill('2026-11-20');
  await page.getByRole('button', { name: 'Keep the test' }).click();
  await expect(page.getByText(/Irrigation water has 0 to 20 dS\/m/)).toBeVisible();
  await page.getByLabel('Conductivity').fill('0.9');
  await page.getByRole('button', { name: 'Keep the test' }).click();
  await expect(page.getByText('slight to moderate')).toBeVisible();

  await page.getByRole('tab', { name: 'Weather' }).click();
  await page.getByRole('button', { name: 'Read a weather file' }).click();
  await page.getByLabel('File', { exact: true }).setInputFiles({
    name: 'garden.csv',
    mimeType: 'text/csv',
    buffer: Buffer.from('date,tmax_C,tmin_C,rain_mm\n2024-06-01,20,10,0\n2024-06-03,22,11,4\n'),
  });
  await expect(page.getByText('2, Jun 1, 2024 to Jun 3, 2024')).toBeVisible();
  await expect(page.getByText('1 thing to look at')).toBeVisible();
  await page.getByRole('button', { name: 'Keep 2 days' }).click();
  await expect(page.getByRole('row', { name: /garden/ })).toBeVisible();
});
