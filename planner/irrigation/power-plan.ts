import { convert } from '../units/convert.ts';
import {
  BATTERY_FACTS,
  type BatteryKind,
  batterySize_Ah,
  daysWithSelfDischarge,
  PANEL_LOSS_SHARE,
  panelSize_W,
  usableEnergy_Wh,
} from './battery.ts';
import { type DailyPower, type DailyPowerInput, dailyPower } from './power-use.ts';
import type { MonthLoad } from './programme-water.ts';

export type PowerSetting = {
  readonly kind: 'mains' | 'battery' | 'engine';
  readonly battery: BatteryKind | null;
  readonly capacity_Wh: number | null;
  readonly usableShare: number | null;
  readonly inverterShare: number | null;
  readonly selfDischarge_share_per_month: number | null;
  readonly controller_W: number;
  readonly idle_W: number;
  /** Hours without load after which the inverter switches itself off; null when it never does. */
  readonly idleOff_h: number | null;
  readonly panel_W: number | null;
  /** Share of the panel's energy that is lost on the way. */
  readonly panelLossShare: number | null;
  readonly peakSun_h: number | null;
};

export type PowerMonth = {
  readonly month: number;
  readonly input: DailyPowerInput;
  readonly day: DailyPower;
  /** Energy a panel would put in on a day of the month; null without panel or sun hours. */
  readonly panel_Wh: number | null;
};

export type PowerPlan = {
  readonly months: readonly PowerMonth[];
  /** The month that takes most a day. */
  readonly hardest: PowerMonth | null;
  readonly usable_Wh: number | null;
  /** Whole days the full battery carries in the hardest month without sun. */
  readonly days: number | null;
  /** Panel that would keep up with the hardest month. */
  readonly neededPanel_W: number | null;
  /** Battery for three days of the hardest month without sun, at 12 V. */
  readonly neededBattery_Ah: number | null;
  readonly season_kWh: number;
  readonly seasonCost_minor: number;
};

const DAYS_IN_MONTH = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31] as const;
const DARK_DAYS = 3;
const SYSTEM_V = 12;
const CABLE_SHARE = 0.97;

/**
 * Hours a day that an inverter idles: all day, or where it switches itself off after so long without load, that long after
 * each run.
 */
export function idleHours_h(runsPerDay: number, idleOff_h: number | null): number {
  return idleOff_h === null ? 24 : Math.min(24, runsPerDay * idleOff_h);
}

/**
 * Energy of a line through its months, what battery and panel it needs, and what it costs from the mains.
 * Source: `power-use.ts` and `battery.ts`.
 * @throws InputError naming the field
 */
export function powerPlan(input: {
  readonly power: PowerSetting;
  readonly pump_W: number;
  readonly months: readonly MonthLoad[];
  readonly electricity_minor_per_kWh: number;
}): PowerPlan {
  const { power } = input;
  const inverter = power.kind === 'battery' ? (power.inverterShare ?? 1) : 1;
  const keptShare = power.panelLossShare === null ? PANEL_LOSS_SHARE : 1 - power.panelLossShare;
  const months = input.months.map((load): PowerMonth => {
    const daily: DailyPowerInput = {
      pump_W: input.pump_W,
      run_min: load.runsPerDay > 0 ? load.pump_min_per_day / load.runsPerDay : 0,
      runsPerDay: load.runsPerDay,
      controller_W: power.controller_W,
      inverterIdle_W: power.idle_W,
      inverterIdle_h: idleHours_h(load.runsPerDay, power.idleOff_h),
      inverterShare: inverter,
    };
    return {
      month: load.month,
      input: daily,
      day: dailyPower(daily),
      panel_Wh: power.panel_W === null || power.peakSun_h === null ? null : power.panel_W * power.peakSun_h * keptShare,
    };
  });
  const hardest = months.reduce<PowerMonth | null>(
    (most, month) => (most === null || month.day.total_Wh > most.day.total_Wh ? month : most),
    null,
  );
  const facts = BATTERY_FACTS[power.battery ?? 'other-lithium'];
  const usable_Wh =
    power.kind === 'battery' && power.capacity_Wh !== null
      ? usableEnergy_Wh(power.capacity_Wh, power.usableShare ?? facts.usableShare)
      : null;
  const daily_Wh = hardest?.day.total_Wh ?? 0;
  const season_kWh = convert(
    months.reduce((sum, month) => sum + month.day.total_Wh * (DAYS_IN_MONTH[month.month - 1] ?? 30), 0),
    'Wh',
    'kWh',
  );
  return {
    months,
    hardest,
    usable_Wh,
    days:
      usable_Wh === null || daily_Wh <= 0
        ? null
        : daysWithSelfDischarge(usable_Wh, daily_Wh, power.selfDischarge_share_per_month ?? facts.selfDischarge_share_per_month),
    neededPanel_W: power.peakSun_h === null || daily_Wh <= 0 ? null : panelSize_W(daily_Wh, power.peakSun_h, keptShare),
    neededBattery_Ah:
      daily_Wh <= 0
        ? null
        : batterySize_Ah({
            daily_Wh,
            days: DARK_DAYS,
            volts_V: SYSTEM_V,
            depthOfDischarge: power.usableShare ?? facts.usableShare,
            inverterShare: 1,
            cableShare: CABLE_SHARE,
          }),
    season_kWh,
    seasonCost_minor: season_kWh * input.electricity_minor_per_kWh,
  };
}
