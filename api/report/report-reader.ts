import type { FarmRow } from '../../db/repositories/farm.ts';
import { type Reader, type ReaderSettings, readerOf } from '../../planner/units/reader.ts';
import { type Speaker, speakerOf } from '../words/speaker.ts';

/** For whom a file is written: figures and dates as the farm has them, words in a language. */
export type ReportReader = Reader & Speaker;

export const settingsOf = ({ unitSystem, currency, language }: FarmRow): ReaderSettings => ({
  system: unitSystem,
  currency,
  locale: language,
});

/** @param resources the folder of the data that ships. @param language BCP 47; what there is no file of is English */
export const reportReader = (settings: ReaderSettings, resources: string, language: string): ReportReader => ({
  ...readerOf(settings),
  ...speakerOf(resources, language, settings.locale),
});
