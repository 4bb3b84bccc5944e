import {
  type BedAway,
  type DaysAway,
  type DaysAwayInput,
  daysAway,
  explainDaysAway,
  type SupplyAway,
} from '../../../planner/water/days-away.ts';
import type { Working } from '../../../planner/working.ts';
import type { JobVoice } from '../runners.ts';

type Data = {
  readonly codes: Readonly<Record<string, string>>;
  readonly lines: Readonly<Record<string, string>>;
  readonly input: DaysAwayInput;
};

export type AwayResult = Omit<DaysAway, 'beds' | 'supplies'> & {
  readonly supplies: readonly (SupplyAway & { readonly name: string; readonly first: string })[];
  readonly beds: readonly (BedAway & { readonly code: string })[];
  readonly working: Working;
};

/** Departures tried through all years of record. */
export function run({ codes, lines, input }: Data, voice: JobVoice): AwayResult {
  const found = daysAway(input, {
    progress: (done, of) => voice.progress({ share: of === 0 ? 1 : done / of, text: `${done} of ${of} departures` }),
    shouldStop: voice.shouldStop,
  });
  return {
    ...found,
    supplies: found.supplies.map((supply) => ({
      ...supply,
      name: supply.lineId === null ? 'By hand' : (lines[supply.lineId] ?? supply.lineId),
      first: supply.firstBedId === null ? '' : (codes[supply.firstBedId] ?? supply.firstBedId),
    })),
    beds: found.beds.map((bed) => ({ ...bed, code: codes[bed.bedId] ?? bed.bedId })),
    working: explainDaysAway(found, input.confidence),
  };
}
