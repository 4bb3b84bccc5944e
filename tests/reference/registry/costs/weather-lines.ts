import { noaaCell, noaaLine, noaaReading } from '../../../../planner/climate/noaa-reading.ts';
import { csvFields } from '../../../../planner/costs/csv-field.ts';
import { forEach } from '../../for-each.ts';
import type { Registry } from '../../registry.ts';

/** A line of the daily archive, its value under the name of its unit. */
const line = forEach(({ line: text }: { line: string }) => {
  const found = noaaLine(csvFields(text));
  return {
    station: found.station,
    date: found.date,
    element: found.element,
    [`value_${found.unit}`]: found.value,
    qualityFlag: found.qualityFlag,
    accepted: found.accepted,
    trace: found.trace,
    observed_hhmm: found.observed_hhmm,
  };
});

type AccessRow = Readonly<Record<'PRCP' | 'TMAX' | 'TMIN' | 'PRCP_ATTRIBUTES' | 'TMAX_ATTRIBUTES' | 'TMIN_ATTRIBUTES', string>>;

export const weatherLines: Registry = {
  'costs.ghcn-tmax': line,
  'costs.ghcn-trace': line,
  'costs.ghcn-qflag': line,
  'costs.ghcn-access-row': forEach((row: AccessRow) => {
    const rain = noaaCell('PRCP', row.PRCP, row.PRCP_ATTRIBUTES);
    return {
      rain_mm: rain.value,
      rainQuality: rain.qualityFlag,
      rainSource: rain.sourceFlag,
      rainTime_hhmm: rain.observed_hhmm,
      tmax_C: noaaCell('TMAX', row.TMAX, row.TMAX_ATTRIBUTES).value,
      tmin_C: noaaCell('TMIN', row.TMIN, row.TMIN_ATTRIBUTES).value,
    };
  }),
  'costs.also-ghcn-missing': forEach(
    (raw: { element: string; value: number | string; mflag?: string; qflag?: string; sflag?: string }) => {
      const found = noaaReading({
        element: raw.element,
        value: raw.value,
        measurementFlag: raw.mflag ?? '',
        qualityFlag: raw.qflag ?? '',
        sourceFlag: raw.sflag ?? '',
      });
      return { accepted: found.accepted, [`value_${found.unit}`]: found.value };
    },
  ),
};
