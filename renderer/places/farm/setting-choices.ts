import { say } from '../../words/say.ts';

export const unitSystems = [
  { value: 'us', text: say('US customary: feet, gallons, pounds') },
  { value: 'metric', text: say('Metric: metres, litres, kilograms') },
] as const;

/** Places whose numbers are written with a decimal point, which the printer does throughout. */
export const languages: readonly { readonly value: string; readonly text: string }[] = [
  { value: 'en-US', text: say('United States: Mar 9, 2026') },
  { value: 'en-CA', text: say('Canada: Mar 9, 2026') },
  { value: 'en-GB', text: say('United Kingdom: 9 Mar 2026') },
  { value: 'en-IE', text: say('Ireland: 9 Mar 2026') },
  { value: 'en-AU', text: say('Australia: 9 Mar 2026') },
  { value: 'en-NZ', text: say('New Zealand: 9 Mar 2026') },
];

export const currencies: readonly { readonly value: string; readonly text: string }[] = [
  { value: 'USD', text: say('US dollar (USD)') },
  { value: 'CAD', text: say('Canadian dollar (CAD)') },
  { value: 'GBP', text: say('Pound sterling (GBP)') },
  { value: 'EUR', text: say('Euro (EUR)') },
  { value: 'AUD', text: say('Australian dollar (AUD)') },
  { value: 'NZD', text: say('New Zealand dollar (NZD)') },
  { value: 'CHF', text: say('Swiss franc (CHF)') },
  { value: 'MXN', text: say('Mexican peso (MXN)') },
];

export const partsMethods = [
  { value: 'straight-line', text: say('equal parts over the service life') },
  { value: 'capital-recovery', text: say('capital recovery with interest') },
] as const;

export const overheadKeys = [
  { value: 'bed-days', text: say('bed-days') },
  { value: 'area', text: say('area') },
  { value: 'plants', text: say('plants') },
  { value: 'hours', text: say('hours of work') },
  { value: 'income', text: say('income') },
] as const;

export const recordsRegimes = [
  { value: 'none', text: say('none by rule') },
  { value: 'organic', text: say('organic records') },
  { value: 'produce-safety', text: say('produce-safety records') },
  { value: 'both', text: say('both') },
] as const;
