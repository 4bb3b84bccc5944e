import { plantsInRow } from '../../../planner/beds/plants-in-row.ts';
import { daysBetweenColumns, emergenceAt } from '../../../planner/crops/emergence.ts';
import { familyGroup } from '../../../planner/crops/families.ts';
import { removalOf } from '../../../planner/crops/removal.ts';
import { relativeYield_share } from '../../../planner/crops/salt-tolerance.ts';
import { yieldAlongRow_kg_per_m, yieldOfPlants, yieldOfRows_kg_per_m2 } from '../../../planner/crops/yields.ts';
import { diseaseOfName, gapAfterDisease_years, mayReturn } from '../../../planner/season/rotation.ts';
import { celsiusOf, convert } from '../../../planner/units/convert.ts';
import { percentOf, shareOf } from '../case-units.ts';
import { forEach } from '../for-each.ts';
import type { CaseValues, Registry } from '../registry.ts';
import { libraryCrop } from './crop-library.ts';

type Numbers = Readonly<Record<string, number>>;
const numbers = (answer: (inputs: Numbers) => CaseValues) => forEach<Numbers>(answer);
const ofCrop = (answer: (crop: string) => CaseValues) => forEach<{ readonly crop: string }>(({ crop }) => answer(crop));
const given = (value: number | undefined): number => value ?? Number.NaN;
const grams = (value: number | undefined): number => convert(given(value), 'g', 'kg');

/** Lists in lists keep their form. */
const deep = (value: unknown, change: (each: number) => number): unknown =>
  Array.isArray(value) ? value.map((each) => deep(each, change)) : change(value as number);

const deepAnswer = (input: string, answer: string, change: (each: number) => number): Registry[string] =>
  ((i: Readonly<Record<string, unknown>>) => ({ [answer]: deep(i[input], change) })) as Registry[string];

const acre = (lb: number): number => convert(lb, 'lb_per_acre', 'kg_per_m2');
const along = (lb: number, feet: number): number => yieldAlongRow_kg_per_m(convert(lb, 'lb', 'kg'), convert(feet, 'ft', 'm'));
const TEN_FT = 10;
const HUNDRED_G = 100;
const HUNDRED_FT = 100;
const row = (lb: number, spacing_in: number): number => yieldOfRows_kg_per_m2(along(lb, TEN_FT), convert(spacing_in, 'in', 'm'));

export const plantingCrops: Registry = {
  'planting.pl-emergence-table': ((i: { readonly crop: string | readonly string[]; readonly soil_temperature_F: unknown }) => {
    const days = (crop: string) =>
      deep(i.soil_temperature_F, (each) => {
        const found = emergenceAt(crop, celsiusOf(each));
        return (found.state === 'comes-up' ? found.days : null) as number;
      });
    return { days: Array.isArray(i.crop) ? i.crop.map(days) : days(i.crop as string) };
  }) as Registry[string],
  'planting.pl-emergence-interpolate': numbers((i) => ({
    days: daysBetweenColumns(given(i['low_days']), given(i['high_days']), given(i['fraction'])),
  })),
  'planting.pl-rotation-gap': forEach<{
    readonly year: number;
    readonly last_year_of_family: number | null;
    readonly gap_years: number;
  }>(({ year, last_year_of_family, gap_years }) => ({ allowed: mayReturn(year, last_year_of_family, gap_years) })),
  'planting.pl-rotation-disease': forEach<{ readonly disease: string }>(({ disease }) => {
    const found = diseaseOfName(disease);
    if (found === undefined) throw new Error(`no rest is known for ${disease}`);
    return {
      years_without_min: found.least_years,
      years_without_max: found.most_years,
      gap_years_min: gapAfterDisease_years(found),
    };
  }),
  'planting.pl-families': ofCrop((crop) => ({ group: familyGroup(libraryCrop(crop).family) })),
  'planting.pl-yield-lb-acre': deepAnswer('lb_per_acre', 'kg_per_m2', acre),
  'planting.pl-yield-row': numbers((i) => ({ kg_per_m2: row(given(i['lb_per_10ft']), given(i['row_spacing_in'])) })),
  'planting.also-yield': ((i: Readonly<Record<'lb_per_10ft' | 'lb_per_acre' | 'row_spacing_in', unknown>>) => ({
    acre_kg_per_m2: deep(i.lb_per_acre, acre),
    row_kg_per_m2: Array.isArray(i.lb_per_10ft)
      ? i.lb_per_10ft.map((lb: number, at) =>
          row(lb, Array.isArray(i.row_spacing_in) ? i.row_spacing_in[at] : (i.row_spacing_in as number)),
        )
      : row(i.lb_per_10ft as number, i.row_spacing_in as number),
  })) as Registry[string],
  'planting.pl-yield-100ft': numbers((i) => ({ kg_per_m: along(given(i['lb_per_100ft']), HUNDRED_FT) })),
  'planting.pl-yield-mixed': numbers((i) => ({ kg_per_m2: convert(given(i['lb_per_ft2']), 'lb_per_ft2', 'kg_per_m2') })),
  'planting.pl-yield-zinnia': ((i: {
    readonly stems_per_plant: number | readonly number[];
    readonly row_length_ft: number;
    readonly in_row_ft: number;
  }) => {
    const plants = plantsInRow({
      length_m: convert(i.row_length_ft, 'ft', 'm'),
      spacing_m: convert(i.in_row_ft, 'ft', 'm'),
    });
    const list = Array.isArray(i.stems_per_plant) ? (i.stems_per_plant as readonly number[]) : [i.stems_per_plant as number];
    const rows = list.map((each) => yieldOfPlants(plants, each));
    return {
      stems_per_row: Array.isArray(i.stems_per_plant) ? rows : rows[0],
      total: rows.reduce((sum, each) => sum + each, 0),
    };
  }) as Registry[string],
  'planting.pl-hardiness-class': ofCrop((crop) => ({ frost_tolerance: libraryCrop(crop).words('frost_tolerance') })),
  'planting.pl-lib-germ-temp': ofCrop((crop) => {
    const found = libraryCrop(crop);
    return { min_opt_max_C: [found.number('germ_min_C'), found.number('germ_opt_C'), found.number('germ_max_C')] };
  }),
  'planting.pl-lib-maturity': ofCrop((crop) => {
    const found = libraryCrop(crop);
    return {
      days_min: found.number('maturity_min_days'),
      days_max: found.number('maturity_max_days'),
      from_transplant: found.words('days_counted_from') === 'transplant',
    };
  }),
  'planting.pl-lib-weeks': ofCrop((crop) => {
    const found = libraryCrop(crop);
    return { weeks_min: found.number('weeks_indoors_min'), weeks_max: found.number('weeks_indoors_max') };
  }),
  'planting.pl-lib-intensive': ofCrop((crop) => {
    const spacing_m = libraryCrop(crop).number('intensive_m');
    return { intensive_spacing_cm: spacing_m === null ? null : convert(spacing_m, 'm', 'cm') };
  }),
  'planting.pl-lib-removal': numbers((i) => {
    const per100g = grams(HUNDRED_G);
    const removal = removalOf({
      protein_kg_per_kg: grams(i['protein_g_per_100g']) / per100g,
      phosphorus_kg_per_kg: convert(given(i['p_mg_per_100g']), 'mg', 'kg') / per100g,
      potassium_kg_per_kg: convert(given(i['k_mg_per_100g']), 'mg', 'kg') / per100g,
    });
    return {
      n_g_per_kg: convert(removal.n_kg_per_kg, 'kg', 'g'),
      p2o5_g_per_kg: convert(removal.p2o5_kg_per_kg, 'kg', 'g'),
      k2o_g_per_kg: convert(removal.k2o_kg_per_kg, 'kg', 'g'),
    };
  }),
  'planting.pl-lib-salinity': numbers((i) => ({
    relative_yield_pct: percentOf(
      relativeYield_share({
        ece_dS_per_m: given(i['ece_dS_per_m']),
        threshold_dS_per_m: given(i['threshold_dS_per_m']),
        slope_share_per_dS_per_m: shareOf(given(i['slope_pct_per_dS_per_m'])),
      }),
    ),
  })),
  'planting.pl-lib-soil-depth': deepAnswer('depth_in', 'depth_cm', (each) => convert(each, 'in', 'cm')),
};
