import { type BedInYears, type BedStress, stressYears } from '../../../planner/water/stress-years.ts';
import type { WeatherRun } from '../../../planner/water/weather-run.ts';
import type { JobVoice } from '../runners.ts';

type Data = { readonly beds: readonly (BedInYears & { readonly code: string })[]; readonly years: readonly WeatherRun[] };

export type StressResult = {
  readonly years: readonly number[];
  readonly beds: readonly (BedStress & { readonly code: string })[];
  readonly stopped: boolean;
};

/** Every year of record through the plan of every bed. */
export function run({ beds, years }: Data, voice: JobVoice): StressResult {
  const found = stressYears(beds, years, {
    progress: (done, of) =>
      voice.progress({ share: of === 0 ? 1 : done / of, text: `${done} of ${of} beds through ${years.length} years` }),
    shouldStop: voice.shouldStop,
  });
  const codes = new Map(beds.map((bed) => [bed.store.bedId, bed.code]));
  return { ...found, beds: found.beds.map((bed) => ({ ...bed, code: codes.get(bed.bedId) ?? bed.bedId })) };
}
