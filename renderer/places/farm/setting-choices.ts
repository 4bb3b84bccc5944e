export const unitSystems = [
  { value: 'us', text: 'US customary: feet, gallons, pounds' },
  { value: 'metric', text: 'Metric: metres, litres, kilograms' },
] as const;

/** Places whose numbers are written with a decimal point, which the printer does throughout. */
export const languages: readonly { readonly value: string; readonly text: string }[] = [
  { value: 'en-US', text: 'United States: Mar 9, 2026' },
  { value: 'en-CA', text: 'Canada: Mar 9, 2026' },
  { value: 'en-GB', text: 'United Kingdom: 9 Mar 2026' },
  { value: 'en-IE', text: 'Ireland: 9 Mar 2026' },
  { value: 'en-AU', text: 'Australia: 9 Mar 2026' },
  { value: 'en-NZ', text: 'New Zealand: 9 Mar 2026' },
];

export const currencies: readonly { readonly value: string; readonly text: string }[] = [
  { value: 'USD', text: 'US dollar (USD)' },
  { value: 'CAD', text: 'Canadian dollar (CAD)' },
  { value: 'GBP', text: 'Pound sterling (GBP)' },
  { value: 'EUR', text: 'Euro (EUR)' },
  { value: 'AUD', text: 'Australian dollar (AUD)' },
  { value: 'NZD', text: 'New Zealand dollar (NZD)' },
  { value: 'CHF', text: 'Swiss franc (CHF)' },
  { value: 'MXN', text: 'Mexican peso (MXN)' },
];

export const partsMethods = [
  { value: 'straight-line', text: 'equal parts over the service life' },
  { value: 'capital-recovery', text: 'capital recovery with interest' },
] as const;

export const overheadKeys = [
  { value: 'bed-days', text: 'bed-days' },
  { value: 'area', text: 'area' },
  { value: 'plants', text: 'plants' },
  { value: 'hours', text: 'hours of work' },
  { value: 'income', text: 'income' },
] as const;

export const recordsRegimes = [
  { value: 'none', text: 'none by rule' },
  { value: 'organic', text: 'organic records' },
  { value: 'produce-safety', text: 'produce-safety records' },
  { value: 'both', text: 'both' },
] as const;
