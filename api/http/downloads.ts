import { siteDownload } from '../beds/site-download.ts';
import { harvestRecordsCsv, logRecordsCsv, saleRecordsCsv, traceBackCsv, traceForwardCsv } from '../costs/trace-files.ts';
import { shoppingCsv, shoppingPdf } from '../orders/list-files.ts';
import type { Ctx } from '../procedure.ts';
import { weekCalendar } from '../season/week-calendar.ts';
import { applicationRecords, compostRecords, soilTestRecords } from '../soil/records-export.ts';

export type Download = {
  readonly name: string;
  readonly type: string;
  readonly body: string | Uint8Array<ArrayBuffer>;
  /** Shown in the window rather than saved. */
  readonly inline?: boolean;
};

/** Makes a file from the farm; `query` is the address's, as text, to be checked by the maker. */
export type MakeDownload = (ctx: Ctx, query: Readonly<Record<string, string>>) => Download | Promise<Download>;

/** Every file that can be fetched at `/export/NAME`. */
export const downloads: Readonly<Record<string, MakeDownload>> = {
  applications: applicationRecords,
  compost: compostRecords,
  'harvest-records.csv': harvestRecordsCsv,
  'log-records.csv': logRecordsCsv,
  'sale-records.csv': saleRecordsCsv,
  'trace-back.csv': traceBackCsv,
  'trace-forward.csv': traceForwardCsv,
  'shopping-list.csv': shoppingCsv,
  'shopping-list.pdf': shoppingPdf,
  site: siteDownload,
  work: weekCalendar,
  'soil-tests': soilTestRecords,
};
