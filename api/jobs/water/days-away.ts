import { type BedAway, type DaysAway, type DaysAwayInput, daysAway, explainDaysAway } from '../../../planner/water/days-away.ts';
import type { Working } from '../../../planner/working.ts';
import type { JobVoice } from '../runners.ts';

type Data = { readonly codes: Readonly<Record<string, string>>; readonly input: DaysAwayInput };

export type AwayResult = Omit<DaysAway, 'beds'> & {
  readonly beds: readonly (BedAway & { readonly code: string })[];
  readonly working: Working;
};

/** Departures tried through all years of record. */
export function run({ codes, input }: Data, voice: JobVoice): AwayResult {
  const found = daysAway(input, {
    progress: (done, of) => voice.progress({ share: of === 0 ? 1 : done / of, text: `${done} of ${of} departures` }),
    shouldStop: voice.shouldStop,
  });
  return {
    ...found,
    beds: found.beds.map((bed) => ({ ...bed, code: codes[bed.bedId] ?? bed.bedId })),
    working: explainDaysAway(found, input.confidence),
  };
}
