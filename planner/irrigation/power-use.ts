import { requirePositive, requireRange } from '../errors.ts';
import { convert } from '../units/convert.ts';
import { computed, entry, type Working } from '../working.ts';

/** Energy of a steady load, E = P t. @throws InputError naming the field */
export function loadEnergy_Wh(power_W: number, hours_h: number): number {
  requireRange('power_W', power_W, 0, 1e6, 'W');
  requireRange('hours_h', hours_h, 0, 1e6, 'h');
  return power_W * hours_h;
}

/** Energy of a pump that runs some minutes, some times. @throws InputError naming the field */
export function runEnergy_Wh(power_W: number, run_min: number, runs: number): number {
  requireRange('run_min', run_min, 0, 1e6, 'min');
  requireRange('runs', runs, 0, 1e6, '');
  return loadEnergy_Wh(power_W, convert(run_min, 'min', 'h') * runs);
}

/** Energy of a pump through a season of equal days. @throws InputError naming the field */
export function seasonEnergy_Wh(power_W: number, run_min: number, runsPerDay: number, days: number): number {
  requireRange('days', days, 0, 100_000, 'd');
  return runEnergy_Wh(power_W, run_min, runsPerDay * days);
}

export type DailyPowerInput = {
  readonly pump_W: number;
  readonly run_min: number;
  /** Runs a day; below 1 for a line that runs every few days. */
  readonly runsPerDay: number;
  readonly controller_W: number;
  readonly inverterIdle_W: number;
  /** Hours a day the inverter idles: 24, or less where it switches itself off. */
  readonly inverterIdle_h: number;
  /** Share of the inverter's intake that reaches the pump; 1 where there is no inverter. */
  readonly inverterShare: number;
};

export type DailyPower = {
  readonly pump_Wh: number;
  readonly controller_Wh: number;
  readonly inverterLoss_Wh: number;
  readonly idle_Wh: number;
  readonly total_Wh: number;
  /** The largest part, which decides the battery. */
  readonly decides: 'pump' | 'controller' | 'inverter';
};

/**
 * Energy a line takes on a day: pump through its inverter, controller all day, inverter idle.
 *
 *   E = P t n / eff + Pc 24 + Pi ti
 *
 * The stand-by usually decides, not the pump: 25 W twice 6.5 min is 5.4 Wh, a 10 W idle inverter 240 Wh.
 * Source: definition; idle of 5 to 22 W and 85 to 90 % seen on power-station pages.
 * @throws InputError naming the field
 */
export function dailyPower(input: DailyPowerInput): DailyPower {
  requirePositive('inverterShare', input.inverterShare, '');
  requireRange('inverterShare', input.inverterShare, 0, 1, '');
  requireRange('inverterIdle_h', input.inverterIdle_h, 0, 24, 'h');
  const pump_Wh = runEnergy_Wh(input.pump_W, input.run_min, input.runsPerDay);
  const inverterLoss_Wh = pump_Wh / input.inverterShare - pump_Wh;
  const controller_Wh = loadEnergy_Wh(input.controller_W, 24);
  const idle_Wh = loadEnergy_Wh(input.inverterIdle_W, input.inverterIdle_h);
  const inverter_Wh = inverterLoss_Wh + idle_Wh;
  const most = Math.max(pump_Wh, controller_Wh, inverter_Wh);
  const decides = inverter_Wh === most ? 'inverter' : controller_Wh === most ? 'controller' : 'pump';
  return {
    pump_Wh,
    controller_Wh,
    inverterLoss_Wh,
    idle_Wh,
    total_Wh: pump_Wh + inverterLoss_Wh + controller_Wh + idle_Wh,
    decides: most === 0 ? 'pump' : decides,
  };
}

/** How {@link dailyPower} came to its total. */
export function explainDailyPower(input: DailyPowerInput): Working {
  const day = dailyPower(input);
  return {
    title: 'Energy the line takes on a watering day',
    formula: 'E = P t n / eff + Pc 24 h + Pi ti',
    symbols: [
      {
        symbol: 'P',
        name: 'pump',
        figure: { value: input.pump_W, unit: 'W' },
        origin: entry('rated watts; they hardly change with flow'),
      },
      { symbol: 't', name: 'run', figure: { value: input.run_min, unit: 'min' }, origin: computed('the run time') },
      { symbol: 'n', name: 'runs a day', figure: { value: input.runsPerDay, unit: '' }, origin: computed('the programme') },
      { symbol: 'eff', name: 'inverter', figure: { value: input.inverterShare, unit: 'share' }, origin: entry() },
      { symbol: 'Pc', name: 'controller, all day', figure: { value: input.controller_W, unit: 'W' }, origin: entry() },
      { symbol: 'Pi', name: 'inverter idling', figure: { value: input.inverterIdle_W, unit: 'W' }, origin: entry() },
      { symbol: 'ti', name: 'idle hours', figure: { value: input.inverterIdle_h, unit: 'h' }, origin: entry() },
    ],
    steps: [
      { text: 'pump', figures: 'P t n', result: { value: day.pump_Wh, unit: 'Wh' } },
      {
        text: 'lost in the inverter while pumping',
        figures: 'P t n / eff - P t n',
        result: { value: day.inverterLoss_Wh, unit: 'Wh' },
      },
      { text: 'controller', figures: 'Pc 24 h', result: { value: day.controller_Wh, unit: 'Wh' } },
      { text: 'inverter idling', figures: 'Pi ti', result: { value: day.idle_Wh, unit: 'Wh' } },
    ],
    result: { value: day.total_Wh, unit: 'Wh' },
    sources: ['Definition of energy; idle draw and efficiency as read on power-station pages (withheld)'],
    notes: day.decides === 'pump' ? [] : [`The ${day.decides} decides, not the pump.`],
  };
}
