import { type ImportFacts, type ImportReading, readHarvestCsv } from '../../harvest/read-harvest-csv.ts';
import type { JobVoice } from '../runners.ts';

export type CheckData = { readonly text: string; readonly facts: ImportFacts; readonly taken: readonly string[] };
export type CheckedImport = {
  readonly lines: number;
  readonly good: number;
  readonly faultCount: number;
  readonly faults: ImportReading['faults'];
  readonly first: ImportReading['rows'];
};

const SHOWN_FAULTS = 500;
const SHOWN_ROWS = 100;

/** Reads a harvest file whole and tells what would be taken in; nothing is written. */
export function run(data: CheckData, voice: JobVoice): CheckedImport {
  voice.progress({ share: 0, text: 'Reading the file' });
  const reading = readHarvestCsv(data.text, data.facts, new Set(data.taken), (share) =>
    voice.progress({ share, text: 'Checking line by line' }),
  );
  return {
    lines: reading.lines,
    good: reading.rows.length,
    faultCount: reading.faults.length,
    faults: reading.faults.slice(0, SHOWN_FAULTS),
    first: reading.rows.slice(0, SHOWN_ROWS),
  };
}
