import { useQueryValue } from '../../app/address.ts';
import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';

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

export const monthNames = [
  say('Jan'),
  say('Feb'),
  say('Mar'),
  say('Apr'),
  say('May'),
  say('Jun'),
  say('Jul'),
  say('Aug'),
  say('Sep'),
  say('Oct'),
  say('Nov'),
  say('Dec'),
] as const;

export const monthChoices = [
  say('January'),
  say('February'),
  say('March'),
  say('April'),
  say('May'),
  say('June'),
  say('July'),
  say('August'),
  say('September'),
  say('October'),
  say('November'),
  say('December'),
].map((name, at) => ({ value: String(at + 1), text: name }));
