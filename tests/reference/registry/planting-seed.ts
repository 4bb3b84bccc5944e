import { leastGermination_share } from '../../../planner/crops/germination-standard.ts';
import { areaForDemand_m2, plantsForArea } from '../../../planner/season/demand.ts';
import {
  bulkRate_g_per_m2,
  pureLiveSeed_share,
  seedMass_g,
  seedNeed,
  stationSuccess_share,
} from '../../../planner/season/seed-need.ts';
import { cellsOfTray, recommendedTrays, trayNeed } from '../../../planner/season/trays.ts';
import { convert } from '../../../planner/units/convert.ts';
import { percentOf, shareOf } from '../case-units.ts';
import { forEach } from '../for-each.ts';
import type { CaseValues, Registry } from '../registry.ts';
import { libraryCrop } from './crop-library.ts';

type Numbers = Readonly<Record<string, number>>;
const numbers = (answer: (inputs: Numbers) => CaseValues) => forEach<Numbers>(answer);
const given = (value: number | undefined): number => value ?? Number.NaN;

const need = (i: Numbers) =>
  seedNeed({
    plants: given(i['plants']),
    germination_share: shareOf(given(i['germination_pct'])),
    emergence_share: shareOf(i['field_emergence_pct'] ?? 100),
    seedsPerHole: i['seeds_per_station'] ?? 1,
    overage_share: shareOf(given(i['overage_pct'])),
  });

const seed = numbers((i) => {
  const { seeds, stations } = need(i);
  return { seeds, stations, grams: seedMass_g(seeds, given(i['seeds_per_gram'])) };
});

const perOunce = (seeds_per_gram: number): number => seeds_per_gram * convert(1, 'oz', 'g');

export const plantingSeed: Registry = {
  'planting.pl-seed-lettuce': seed,
  'planting.pl-seed-two-per-cell': seed,
  'planting.pl-seeds-per-ounce': ((i: { readonly seeds_per_gram: unknown }) => {
    const per = (value: unknown): unknown => {
      if (typeof value === 'number') return perOunce(value);
      if (Array.isArray(value)) return value.map(per);
      return Object.fromEntries(Object.entries(value as Numbers).map(([crop, each]) => [crop, perOunce(each)]));
    };
    return { seeds_per_oz: per(i.seeds_per_gram) };
  }) as Registry[string],
  'planting.pl-station-success': numbers((i) => ({
    success: stationSuccess_share(shareOf(given(i['germination_pct'])), 1, given(i['seeds_per_station'])),
  })),
  'planting.pl-pls': numbers((i) => {
    const pls = pureLiveSeed_share(shareOf(given(i['purity_pct'])), shareOf(given(i['germination_pct'])));
    return { pls_pct: percentOf(pls), bulk_g_per_m2: bulkRate_g_per_m2(given(i['rate_pls_g_per_m2']), pls) };
  }),
  'planting.pl-min-germination': forEach<{ readonly kind: string }>(({ kind }) => {
    const share = leastGermination_share(kind);
    return { min_germination_pct: share === null ? null : Math.round(percentOf(share)) };
  }),
  'planting.pl-tray-lattice': numbers((i) => ({ cells: cellsOfTray(given(i['cells_across'])) })),
  'planting.pl-tray-count': numbers((i) => {
    const { stations } = need(i);
    return { cells: stations, trays: trayNeed({ cells: stations, cellsPerTray: given(i['cells_per_tray']) }).trays };
  }),
  'planting.pl-tray-recommended': forEach<{ readonly crop: string }>(({ crop }) => ({
    cells: recommendedTrays(libraryCrop(crop).id),
  })),
  'planting.pl-plants-for-demand': numbers((i) => {
    const area_m2 = areaForDemand_m2({
      demand: given(i['demand_kg_per_week']) * given(i['weeks']),
      loss_share: shareOf(given(i['loss_pct'])),
      yield_per_m2: given(i['yield_kg_per_m2']),
    });
    return { area_m2, plants: plantsForArea(area_m2, convert(given(i['spacing_cm']), 'cm', 'm'), 'square') };
  }),
};
