import { useQueryValue } from '../../app/address.ts';
import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';

/** Which season and which year of the weather record the demand tabs are about; both live in the address. */
export function useDemandChoice() {
  const [season, setSeason] = useQueryValue('season');
  const [year, setYear] = useQueryValue('year');
  const asked = year === undefined ? null : Number(year);
  return {
    seasonId: season ?? null,
    year: asked !== null && Number.isInteger(asked) ? asked : null,
    setSeason,
    setYear,
  };
}

/** The farm's demand in that season and year. */
export function useDemand() {
  const { seasonId, year } = useDemandChoice();
  return useRead(api.waterDemand.overview, { seasonId, year });
}

type Ready<Reading> = Extract<Reading, { readonly state: 'ready' }> extends { readonly data: infer Data } ? Data : never;

export type Overview = Ready<ReturnType<typeof useDemand>>;
export type Demand = NonNullable<Overview['demand']>;
export type BedDemand = Demand['beds'][number];
export type GroupDemand = Demand['groups'][number];
