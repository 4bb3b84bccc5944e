import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  batterySize_Ah,
  daysFor,
  daysWithSelfDischarge,
  explainUsableEnergy,
  panelSize_W,
  usableEnergy_Wh,
} from '../../../../planner/irrigation/battery.ts';
import { idleHours_h, type PowerSetting, powerPlan } from '../../../../planner/irrigation/power-plan.ts';
import { dailyPower, explainDailyPower, loadEnergy_Wh, runEnergy_Wh } from '../../../../planner/irrigation/power-use.ts';

const day = {
  pump_W: 25,
  run_min: 6.5,
  runsPerDay: 2,
  controller_W: 1,
  inverterIdle_W: 10,
  inverterIdle_h: 24,
  inverterShare: 0.85,
};
const power: PowerSetting = {
  kind: 'battery',
  battery: 'lithium-iron-phosphate',
  capacity_Wh: 500,
  usableShare: 0.8,
  inverterShare: 1,
  selfDischarge_share_per_month: 0.03,
  controller_W: 1,
  idle_W: 0,
  idleOff_h: null,
  panel_W: 20,
  panelLossShare: 0.3,
  peakSun_h: 5,
};
const july = [{ month: 7, runsPerDay: 0.5, pump_min_per_day: 7, water_L_per_day: 150 }];

describe('energy of a day', () => {
  test('is the sum of its parts, and says that stand-by decides', () => {
    const got = dailyPower(day);
    expect(got.pump_Wh + got.inverterLoss_Wh + got.controller_Wh + got.idle_Wh).toBeCloseTo(got.total_Wh, 9);
    expect(got.decides).toBe('inverter');
    expect(dailyPower({ ...day, inverterIdle_W: 0, inverterShare: 1 }).decides).toBe('controller');
    expect(dailyPower({ ...day, inverterIdle_W: 0, inverterShare: 1, controller_W: 0 }).decides).toBe('pump');
    expect(explainDailyPower(day).result.value).toBe(got.total_Wh);
  });
  test('two halves of a run take what the whole takes', () => {
    fc.assert(
      fc.property(fc.double({ min: 0.1, max: 600, noNaN: true }), (minutes) => {
        expect(2 * runEnergy_Wh(25, minutes / 2, 1)).toBeCloseTo(runEnergy_Wh(25, minutes, 1), 9);
      }),
    );
  });
  test('an inverter that sleeps idles only after a run', () => {
    expect(idleHours_h(0.5, null)).toBe(24);
    expect(idleHours_h(0.5, 12)).toBe(6);
    expect(idleHours_h(5, 12)).toBe(24);
  });
  test('each refusal names its field', () => {
    expect(() => dailyPower({ ...day, inverterShare: 0 })).toThrowError(/inverterShare/);
    expect(() => dailyPower({ ...day, inverterIdle_h: 25 })).toThrowError(/inverterIdle_h/);
    expect(() => loadEnergy_Wh(-1, 1)).toThrowError(/power_W/);
  });
});

describe('battery and panel', () => {
  test('self-discharge never lengthens the days, and without it they are the whole days of the plain division', () => {
    fc.assert(
      fc.property(
        fc.double({ min: 50, max: 5000, noNaN: true }),
        fc.double({ min: 1, max: 100, noNaN: true }),
        (usable, daily) => {
          const plain = daysWithSelfDischarge(usable, daily, 0);
          expect(Math.abs(plain - Math.floor(daysFor(usable, daily)))).toBeLessThanOrEqual(1);
          expect(daysWithSelfDischarge(usable, daily, 0.05)).toBeLessThanOrEqual(plain);
        },
      ),
    );
  });
  test('twice the energy wants twice the panel and battery', () => {
    expect(panelSize_W(200, 4)).toBeCloseTo(2 * panelSize_W(100, 4), 9);
    const battery = { daily_Wh: 100, days: 3, volts_V: 12, depthOfDischarge: 0.8, inverterShare: 0.85, cableShare: 0.97 };
    expect(batterySize_Ah({ ...battery, daily_Wh: 200 })).toBeCloseTo(2 * batterySize_Ah(battery), 9);
    expect(() => panelSize_W(100, 0)).toThrowError(/peakSun_h/);
    expect(() => batterySize_Ah({ ...battery, volts_V: 0 })).toThrowError(/volts_V/);
  });
  test('the working of the usable energy ends in it', () => {
    expect(explainUsableEnergy(1000, 0.9, 0.85).result.value).toBe(usableEnergy_Wh(1000, 0.9, 0.85));
  });
});

describe('power of a line through its months', () => {
  test('battery days, the panel that keeps up, and what decides', () => {
    const plan = powerPlan({ power, pump_W: 25, months: july, electricity_minor_per_kWh: 0 });
    expect(plan.hardest?.day.total_Wh).toBeCloseTo(24 + (25 * 7) / 60, 9);
    expect(plan.hardest?.day.decides).toBe('controller');
    expect(plan.usable_Wh).toBe(400);
    expect(plan.days).toBe(14);
    expect(plan.neededPanel_W).toBeCloseTo((plan.hardest?.day.total_Wh ?? 0) / (5 * 0.7), 9);
    expect(plan.months[0]?.panel_Wh).toBeCloseTo(70, 9);
  });
  test('from the mains: energy of the season at the farm’s price, no battery', () => {
    const plan = powerPlan({
      power: { ...power, kind: 'mains', battery: null },
      pump_W: 25,
      months: july,
      electricity_minor_per_kWh: 20,
    });
    expect(plan.usable_Wh).toBeNull();
    expect(plan.seasonCost_minor).toBeCloseTo(plan.season_kWh * 20, 9);
    expect(plan.season_kWh).toBeCloseTo(((24 + (25 * 7) / 60) * 31) / 1000, 9);
  });
  test('without a programme nothing is claimed', () => {
    const plan = powerPlan({ power, pump_W: 25, months: [], electricity_minor_per_kWh: 0 });
    expect(plan.hardest).toBeNull();
    expect(plan.days).toBeNull();
    expect(plan.neededPanel_W).toBeNull();
  });
});
