import type { IsoDate } from '../../../../planner/calendar.ts';
import { calendarLine } from '../../../../planner/costs/calendar-text.ts';
import { csvField, csvFields } from '../../../../planner/costs/csv-field.ts';
import { runningCost } from '../../../../planner/costs/energy-cost.ts';
import { exemptionFigures, keepUntil, ORGANIC_RECORD_YEARS } from '../../../../planner/costs/records.ts';
import { byFirstIn, byMovingAverage, type StockMovement } from '../../../../planner/orders/stock-ledger.ts';
import { convert } from '../../../../planner/units/convert.ts';
import { forEach } from '../../for-each.ts';
import type { Registry } from '../../registry.ts';
import { minor, usd } from './case-money.ts';

type Event = { kind: 'buy' | 'use'; quantity_kg: number; total_usd?: number };

const movement = (event: Event): StockMovement =>
  event.kind === 'buy'
    ? { kind: 'in', amount: event.quantity_kg, value_minor: minor(event.total_usd ?? 0) }
    : { kind: 'out', amount: event.quantity_kg };

const used = (events: readonly Event[], values: readonly number[]): number | number[] => {
  const uses = values.filter((_, at) => events[at]?.kind === 'use').map(usd);
  return uses.length === 1 ? (uses[0] ?? Number.NaN) : uses;
};

export const ledger: Registry = {
  'costs.moving-average-cost': forEach(
    ({ events }: { events: readonly Event[] }) => {
      const found = byMovingAverage(events.map(movement));
      return {
        averageCost_usdPerKg: usd(found.unitCost_minor),
        use_usd: used(events, found.values_minor),
        leftQuantity_kg: found.left,
        leftValue_usd: usd(found.leftValue_minor),
      };
    },
    ['events'],
  ),
  'costs.fifo-cost': forEach(
    ({ events }: { events: readonly Event[] }) => {
      const found = byFirstIn(events.map(movement));
      return {
        use_usd: used(events, found.values_minor),
        leftQuantity_kg: found.left,
        leftValue_usd: usd(found.leftValue_minor),
      };
    },
    ['events'],
  ),
  'costs.pump-energy': forEach((of: { power_W: number; hours_perDay: number; days: number; price_usdPerKWh: number }) => {
    const found = runningCost({
      power_W: of.power_W,
      run_h_per_day: of.hours_perDay,
      days: of.days,
      price_minor_per_kWh: minor(of.price_usdPerKWh),
    });
    return { energy_kWh: convert(found.energy_Wh, 'Wh', 'kWh'), cost_usd: usd(found.cost_minor) };
  }),
  'costs.organic-retention': forEach(({ created_iso }: { created_iso: string }) => ({
    keepAtLeastUntil_iso: keepUntil(created_iso as IsoDate, ORGANIC_RECORD_YEARS),
  })),
  'costs.qualified-end-user-share': forEach(
    (of: { sales_usd: readonly { qualifiedEndUsers: number; others: number }[]; limit_usd: number }) => {
      const found = exemptionFigures(
        of.sales_usd.map((year) => ({ qualified_minor: minor(year.qualifiedEndUsers), others_minor: minor(year.others) })),
        minor(of.limit_usd),
      );
      return {
        meanQualified_usd: usd(found.meanQualified_minor),
        meanOthers_usd: usd(found.meanOthers_minor),
        meanAll_usd: usd(found.meanAll_minor),
        majorityToQualified: found.mostlyQualified,
        underLimit: found.underLimit,
      };
    },
    ['sales_usd'],
  ),
  'costs.csv-quotes': forEach(({ field }: { field: string }) => ({ encoded: csvField(field) })),
  'costs.csv-spaces': forEach(({ line }: { line: string }) => ({ fields: csvFields(line) })),
  'costs.ics-fold': forEach(({ name, text }: { name: string; text: string }) => ({ folded: calendarLine(name, text) })),
};
