import { requireRange } from '../errors.ts';
import { computed, type Working } from '../working.ts';
import { addNutrients, mapNutrients, type Nutrient, type NutrientMasses, noNutrients } from './nutrients.ts';

/** What one planting asks of a bed. */
export type PlantingNeed = {
  readonly name: string;
  readonly basis: string;
  /** Part of the bed it stands on. */
  readonly area_m2: number;
  readonly need: NutrientMasses;
  /** `rate`: a recommendation, of which phosphate and potash are wanted once a season. `removal`: what leaves with the harvest. */
  readonly by: 'rate' | 'removal';
};

export type CreditKind = 'organic-matter' | 'earlier-dressings' | 'top-ups' | 'legumes' | 'this-season' | 'water';

export type NutrientCredit = {
  readonly kind: CreditKind;
  readonly name: string;
  readonly brings: NutrientMasses;
  readonly source: string;
};

export type BedBudget = {
  readonly need: NutrientMasses;
  readonly supply: NutrientMasses;
  /** Still to be fed; never below zero. */
  readonly toFeed: NutrientMasses;
  /** Supply beyond the need. */
  readonly surplus: NutrientMasses;
};

/**
 * A bed's nutrient budget for a season.
 *
 *   to feed = max(0, need - supply)      surplus = max(0, supply - need)      kg of each nutrient
 *
 *   need     nitrogen: that of every planting, added up
 *            phosphate, potash: by recommendation, no more than the highest rate over the whole bed (they are given once a
 *            season); by removal, added up
 *   supply   organic matter, later-year release of earlier dressings, legumes, what was given this season, water
 *
 * Source: form of UC Santa Cruz, Teaching Organic Farming and Gardening, unit 1.11; once a season: common practice.
 */
export function bedBudget(area_m2: number, plantings: readonly PlantingNeed[], credits: readonly NutrientCredit[]): BedBudget {
  requireRange('area_m2', area_m2, 0, 100_000, 'm²');
  const need = mapNutrients((name) => needOf(name, area_m2, plantings));
  const supply = credits.reduce((sum, credit) => addNutrients(sum, credit.brings), noNutrients);
  return {
    need,
    supply,
    toFeed: mapNutrients((name) => Math.max(0, need[name] - supply[name])),
    surplus: mapNutrients((name) => Math.max(0, supply[name] - need[name])),
  };
}

function needOf(name: Nutrient, area_m2: number, plantings: readonly PlantingNeed[]): number {
  const sum = (list: readonly PlantingNeed[]) => list.reduce((total, each) => total + each.need[name], 0);
  if (name === 'N') return sum(plantings);
  const byRate = plantings.filter((each) => each.by === 'rate');
  const highest = byRate.reduce((most, each) => Math.max(most, each.area_m2 > 0 ? each.need[name] / each.area_m2 : 0), 0);
  return Math.min(sum(byRate), highest * area_m2) + sum(plantings.filter((each) => each.by === 'removal'));
}

/** Flags a supply of more than twice the need, the usual one being phosphorus from compost year after year. */
export function surplusNutrients(budget: BedBudget): readonly Nutrient[] {
  return (['N', 'P2O5', 'K2O'] as const).filter(
    (name) => budget.surplus[name] > 0.002 && budget.supply[name] > 2 * budget.need[name],
  );
}

/** The working of what is still to be fed of one nutrient. */
export function explainToFeed(
  nutrient: Nutrient,
  area_m2: number,
  plantings: readonly PlantingNeed[],
  credits: readonly NutrientCredit[],
): Working {
  const budget = bedBudget(area_m2, plantings, credits);
  const kg = (value: number) => ({ value, unit: 'kg' });
  return {
    title: `${nutrient} still to be fed`,
    formula: 'to feed = max(0, need − supply)',
    symbols: [
      { symbol: 'A', name: 'area of the bed', figure: { value: area_m2, unit: 'm2' }, origin: computed('the bed') },
      ...plantings.map((each, at) => ({
        symbol: `need ${at + 1}`,
        name: each.name,
        figure: kg(each.need[nutrient]),
        origin: { kind: 'source' as const, text: each.basis },
      })),
      ...credits.map((each, at) => ({
        symbol: `supply ${at + 1}`,
        name: each.name,
        figure: kg(each.brings[nutrient]),
        origin: { kind: 'source' as const, text: each.source },
      })),
    ],
    steps: [
      {
        text:
          nutrient === 'N'
            ? 'Need of every planting, added up'
            : 'Need: by recommendation no more than the highest rate over the whole bed',
        figures: plantings.map((each) => each.name).join(' + '),
        result: kg(budget.need[nutrient]),
      },
      { text: 'Supply', figures: credits.map((each) => each.name).join(' + '), result: kg(budget.supply[nutrient]) },
    ],
    result: kg(budget.toFeed[nutrient]),
    sources: [...new Set([...plantings.map((each) => each.basis), ...credits.map((each) => each.source)])],
    notes: ['Your laboratory’s own recommendation goes before every table here.'],
  };
}
