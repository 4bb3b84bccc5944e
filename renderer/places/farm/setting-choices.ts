import { marksOf } from '../../../planner/units/number-marks.ts';
import { printDate } from '../../../planner/units/print-date.ts';
import { grouped } from '../../../planner/units/significant.ts';
import { languageSpoken } from '../../words/language.ts';
import { say } from '../../words/say.ts';

export const unitSystems = [
  { value: 'us', text: say('US customary: feet, gallons, pounds') },
  { value: 'metric', text: say('Metric: metres, litres, kilograms') },
] as const;

const locales = [
  'en-US',
  'en-CA',
  'en-GB',
  'en-IE',
  'en-AU',
  'en-NZ',
  'en-IN',
  'en-ZA',
  'de-DE',
  'de-AT',
  'de-CH',
  'fr-FR',
  'fr-CA',
  'fr-BE',
  'nl-NL',
  'es-ES',
  'es-MX',
  'es-AR',
  'pt-PT',
  'pt-BR',
  'it-IT',
  'da-DK',
  'nb-NO',
  'sv-SE',
  'fi-FI',
  'pl-PL',
  'cs-CZ',
  'hu-HU',
  'ro-RO',
  'el-GR',
  'tr-TR',
  'ja-JP',
];

/** Where numbers and dates are written how, each shown by an example; apart from the language of the program. */
export const localeChoices = (): readonly { readonly value: string; readonly text: string }[] => {
  const { code } = languageSpoken();
  const regions = new Intl.DisplayNames(code, { type: 'region' });
  const languages = new Intl.DisplayNames(code, { type: 'language' });
  return locales.map((locale) => {
    const { language, region = '' } = new Intl.Locale(locale);
    const place = language === 'en' ? regions.of(region) : `${regions.of(region)} (${languages.of(language)})`;
    return { value: locale, text: `${place}: ${grouped(1234.5, 1, marksOf(locale))}, ${printDate('2026-03-09', locale)}` };
  });
};

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
