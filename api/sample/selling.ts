import type { demand, outlet, price } from '../../db/schema/plantings.ts';
import { addDays, dateOfYearDay } from '../../planner/calendar.ts';
import { cropChoices } from './crop-choices.ts';

type OutletRow = typeof outlet.$inferInsert;

/** Where the invented farm sells. */
export const outlets: readonly OutletRow[] = [
  { id: 'outlet-boxes', name: 'Weekly boxes', kind: 'box', qualifiedEndUser: true },
  { id: 'outlet-stall', name: 'Saturday stall', kind: 'stall', qualifiedEndUser: true },
  { id: 'outlet-kitchen', name: 'Harbour kitchen (invented)', kind: 'restaurant', qualifiedEndUser: true },
  { id: 'outlet-own', name: 'Own table', kind: 'own-use' },
];

const crops = [...new Map(cropChoices.map((choice) => [choice.cropId, choice])).values()];
const outletFactor: Readonly<Record<string, number>> = { 'outlet-boxes': 0.95, 'outlet-stall': 1.05, 'outlet-kitchen': 0.9 };

/** Invented prices of every crop at every outlet. */
export function samplePrices(fromDate: string): (typeof price.$inferInsert)[] {
  return Object.entries(outletFactor).flatMap(([outletId, factor]) =>
    crops.map((choice) => ({
      id: `price-${outletId}-${choice.cropId}`,
      outletId,
      cropId: choice.cropId,
      unit: choice.unit,
      price_minor: Math.round(choice.price_minor * factor),
      fromDate,
    })),
  );
}

/** What boxes and stall want each week of the coming season, grown with the farm. Invented. */
export function sampleDemand(seasonId: string, year: number, beds: number): (typeof demand.$inferInsert)[] {
  const size = beds / 96;
  return crops
    .filter((choice) => choice.maturity_days > 0)
    .flatMap((choice) => {
      const from = dateOfYearDay(year, choice.inBedDay + choice.maturity_days + 7);
      const perWeek =
        choice.unit === 'stem' ? 120 : choice.unit === 'bunch' ? 40 : Math.max(1, Math.round(9000 / choice.price_minor));
      const base = {
        seasonId,
        cropId: choice.cropId,
        unit: choice.unit,
        fromDate: from,
        toDate: addDays(from, Math.max(21, choice.window_days)),
      };
      return [
        {
          ...base,
          id: `demand-boxes-${choice.cropId}`,
          outletId: 'outlet-boxes',
          kind: 'standing' as const,
          amountPerWeek: Math.max(1, Math.round(perWeek * size)),
          price_minor: Math.round(choice.price_minor * 0.95),
          penalty_minor: Math.round(choice.price_minor * 0.4),
        },
        {
          ...base,
          id: `demand-stall-${choice.cropId}`,
          outletId: 'outlet-stall',
          kind: 'market' as const,
          amountPerWeek: Math.max(1, Math.round(perWeek * 0.8 * size)),
          price_minor: Math.round(choice.price_minor * 0.9),
          penalty_minor: 0,
        },
      ];
    });
}
