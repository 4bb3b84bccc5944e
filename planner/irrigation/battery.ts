import { requirePositive, requireRange } from '../errors.ts';
import { celsiusOf } from '../units/convert.ts';
import { entry, source, type Working } from '../working.ts';

export type BatteryKind = 'lead-acid' | 'lithium-iron-phosphate' | 'other-lithium';

/**
 * Share of a battery's rating to plan with, and what it loses a month on the shelf.
 * Sources: lead-acid 0.5 and lithium iron phosphate 0.8, a battery comparison page; other lithium 0.8 common practice;
 * self-discharge lead-acid 5 % a month, a battery page; lithium 2 to 3 %, memory.
 */
export const BATTERY_FACTS = {
  'lead-acid': { usableShare: 0.5, selfDischarge_share_per_month: 0.05 },
  'lithium-iron-phosphate': { usableShare: 0.8, selfDischarge_share_per_month: 0.025 },
  'other-lithium': { usableShare: 0.8, selfDischarge_share_per_month: 0.025 },
} as const satisfies Record<BatteryKind, { usableShare: number; selfDischarge_share_per_month: number }>;

/** Charging limits of lithium batteries, 32 to 105 F. Source: US Fire Administration, citing NFPA. */
export const LITHIUM_CHARGING_C = { least_C: celsiusOf(32), most_C: celsiusOf(105) } as const;

/** Energy of a rating in amp-hours, E = V Ah u. @throws InputError naming the field */
export function ratedUsable_Wh(volts_V: number, charge_Ah: number, usableShare: number): number {
  requirePositive('volts_V', volts_V, 'V');
  requireRange('charge_Ah', charge_Ah, 0, 1e6, 'Ah');
  requireRange('usableShare', usableShare, 0, 1, '');
  return volts_V * charge_Ah * usableShare;
}

/**
 * Energy that reaches the pump, capacity x usable share x inverter's share (1 for a direct-current pump).
 * Source: a power-station calculator page: 1000 Wh, 10 % reserve, 85 %, is 765 Wh.
 * @throws InputError naming the field
 */
export function usableEnergy_Wh(capacity_Wh: number, usableShare: number, inverterShare = 1): number {
  requireRange('capacity_Wh', capacity_Wh, 0, 1e9, 'Wh');
  requireRange('usableShare', usableShare, 0, 1, '');
  requirePositive('inverterShare', inverterShare, '');
  requireRange('inverterShare', inverterShare, 0, 1, '');
  return capacity_Wh * usableShare * inverterShare;
}

/** Energy to plan with when a share is kept in reserve. @throws InputError naming the field */
export function energyAboveReserve_Wh(capacity_Wh: number, reserveShare: number, inverterShare: number): number {
  requireRange('reserveShare', reserveShare, 0, 1, '');
  return usableEnergy_Wh(capacity_Wh, 1 - reserveShare, inverterShare);
}

/** Hours a steady load runs. @throws InputError on no load */
export function hoursFor(usable_Wh: number, load_W: number): number {
  requireRange('usable_Wh', usable_Wh, 0, 1e9, 'Wh');
  requirePositive('load_W', load_W, 'W');
  return usable_Wh / load_W;
}

/**
 * What is left after months on the shelf, E (1 - r)^m.
 * @throws InputError naming the field
 */
export function afterSelfDischarge_Wh(start_Wh: number, selfDischarge_share_per_month: number, months: number): number {
  requireRange('start_Wh', start_Wh, 0, 1e9, 'Wh');
  requireRange('selfDischarge_share_per_month', selfDischarge_share_per_month, 0, 1, '');
  requireRange('months', months, 0, 1200, '');
  return start_Wh * (1 - selfDischarge_share_per_month) ** months;
}

/** Days a battery carries a daily load, without sun. @throws InputError when nothing is drawn */
export function daysFor(usable_Wh: number, daily_Wh: number): number {
  requireRange('usable_Wh', usable_Wh, 0, 1e9, 'Wh');
  requirePositive('daily_Wh', daily_Wh, 'Wh');
  return usable_Wh / daily_Wh;
}

/** Days in a month for self-discharge, 365.25/12. */
const DAYS_PER_MONTH = 30.4375;

/**
 * Whole days a battery carries a daily load while it also loses charge by itself; stepped day by day.
 * @throws InputError when nothing is drawn
 */
export function daysWithSelfDischarge(usable_Wh: number, daily_Wh: number, selfDischarge_share_per_month: number): number {
  requirePositive('daily_Wh', daily_Wh, 'Wh');
  const keep = (1 - selfDischarge_share_per_month) ** (1 / DAYS_PER_MONTH);
  let left_Wh = usable_Wh;
  let days = 0;
  while (left_Wh >= daily_Wh && days < 100_000) {
    left_Wh = (left_Wh - daily_Wh) * keep;
    days += 1;
  }
  return days;
}

export type BatterySizeInput = {
  readonly daily_Wh: number;
  readonly days: number;
  readonly volts_V: number;
  readonly depthOfDischarge: number;
  readonly inverterShare: number;
  readonly cableShare: number;
};

/**
 * Battery for some days without sun, Q = E A / (V T Kinv Kcable).
 * Source: a non-profit solar education page.
 * @throws InputError naming the field
 */
export function batterySize_Ah(input: BatterySizeInput): number {
  requireRange('daily_Wh', input.daily_Wh, 0, 1e9, 'Wh');
  requireRange('days', input.days, 0, 365, 'd');
  for (const key of ['volts_V', 'depthOfDischarge', 'inverterShare', 'cableShare'] as const) requirePositive(key, input[key], '');
  return (input.daily_Wh * input.days) / (input.volts_V * input.depthOfDischarge * input.inverterShare * input.cableShare);
}

/** System losses of a small panel, 0.7. Source: a non-profit solar education page (an average). */
export const PANEL_LOSS_SHARE = 0.7;

/**
 * Panel for a daily energy, W = E / (G K). Take G of the month of use, not the year's mean.
 *
 *   G   peak-sun hours of the day   h   0.5 to 8
 *   K   losses                      -   0.7
 *
 * Source: a non-profit solar education page.
 * @throws InputError naming the field
 */
export function panelSize_W(daily_Wh: number, peakSun_h: number, lossShare = PANEL_LOSS_SHARE): number {
  requireRange('daily_Wh', daily_Wh, 0, 1e9, 'Wh');
  requirePositive('peakSun_h', peakSun_h, 'h');
  requirePositive('lossShare', lossShare, '');
  return daily_Wh / (peakSun_h * lossShare);
}

/** How {@link usableEnergy_Wh} came to its energy. */
export function explainUsableEnergy(capacity_Wh: number, usableShare: number, inverterShare = 1): Working {
  return {
    title: 'Energy that reaches the pump',
    formula: 'E = C u eff',
    symbols: [
      { symbol: 'C', name: 'rated capacity', figure: { value: capacity_Wh, unit: 'Wh' }, origin: entry() },
      {
        symbol: 'u',
        name: 'usable share',
        figure: { value: usableShare, unit: 'share' },
        origin: source('battery comparison page; lead-acid 0.5, lithium iron phosphate 0.8'),
      },
      {
        symbol: 'eff',
        name: 'inverter',
        figure: { value: inverterShare, unit: 'share' },
        origin: entry('1 for a direct-current pump'),
      },
    ],
    steps: [],
    result: { value: usableEnergy_Wh(capacity_Wh, usableShare, inverterShare), unit: 'Wh' },
    sources: ['Power-station calculator page, worked example (withheld)'],
    notes: [],
  };
}
