import { type Fault, InputError } from '../../errors.ts';
import type { SeasonCrop, SeasonInstance } from './instance.ts';

/**
 * Refuses a season that cannot be computed on, naming each field: numbers that are none, weeks outside the season,
 * market steps whose price rises (a later step would have to be reached through a worse one first).
 *
 * @throws InputError with every fault found
 */
export function checkInstance(instance: SeasonInstance): void {
  const faults: Fault[] = [];
  const say = (path: string, code: string, message: string) => faults.push({ path, code, message: `${path}: ${message}` });
  const number = (path: string, value: number, least: number) => {
    if (Number.isNaN(value)) say(path, 'not-a-number', 'a number is needed here.');
    else if (value < least) say(path, 'too-small', `${value} is below ${least}.`);
  };
  const { weeks } = instance;
  if (!Number.isInteger(weeks) || weeks < 1 || weeks > 520) say('weeks', 'not-whole', 'the season needs 1 to 520 whole weeks.');
  number('wage_minor_per_h', instance.wage_minor_per_h, 0);
  number('overtimeMost_h', instance.overtimeMost_h, 0);
  number('overtimePremium_minor_per_h', instance.overtimePremium_minor_per_h, 0);
  const caps = (path: string, list: readonly number[]) => {
    if (list.length !== weeks) say(path, 'wrong-length', `a limit is needed for each of the ${weeks} weeks.`);
    list.forEach((cap, week) => {
      number(`${path}.${week}`, cap, 0);
    });
  };
  caps('labourCap_h', instance.labourCap_h);
  caps('benchCap_m2', instance.benchCap_m2);
  instance.waterCap_L.forEach((cap, zone) => {
    caps(`waterCap_L.${zone}`, cap);
  });
  instance.units.forEach((unit, at) => {
    if (!(unit.area_m2 > 0)) say(`units.${at}.area_m2`, 'not-positive', 'a piece of bed needs an area above zero.');
    if (instance.waterCap_L[unit.zone] === undefined) say(`units.${at}.zone`, 'no-such-zone', 'there is no such water line.');
    unit.fixed.forEach((span, k) => {
      const before = unit.fixed[k - 1];
      if (span.fromWeek < 0 || span.toWeek > weeks || span.fromWeek >= span.toWeek)
        say(`units.${at}.fixed.${k}`, 'out-of-season', 'the taken weeks must lie within the season.');
      if (before !== undefined && before.toWeek > span.fromWeek)
        say(`units.${at}.fixed.${k}`, 'overlap', 'taken weeks overlap or are out of order.');
    });
  });
  instance.crops.forEach((crop, at) => {
    checkCrop(instance, crop, `crops.${at}`, say, number);
  });
  if (faults.length > 0) throw new InputError(faults);
}

function checkCrop(
  instance: SeasonInstance,
  crop: SeasonCrop,
  path: string,
  say: (path: string, code: string, message: string) => void,
  number: (path: string, value: number, least: number) => void,
): void {
  if (instance.families[crop.family] === undefined) say(`${path}.family`, 'no-such-family', 'there is no such family.');
  number(`${path}.shelf_weeks`, crop.shelf_weeks, 0);
  number(`${path}.overhead_minor`, crop.overhead_minor, 0);
  number(`${path}.steadiness_minor`, crop.steadiness_minor, 0);
  crop.options.forEach((option, k) => {
    const at = `${path}.options.${k}`;
    const length = option.harvest_per_m2.length;
    if (length < 1 || option.startWeek < 0 || option.startWeek + length > instance.weeks)
      say(`${at}.startWeek`, 'out-of-season', 'the planting must begin and be cleared within the season.');
    if (option.labour_h_per_m2.length !== length || option.water_L_per_m2.length !== length)
      say(at, 'wrong-length', 'harvest, labour and water need one figure for each occupied week.');
    for (const list of [option.harvest_per_m2, option.labour_h_per_m2, option.water_L_per_m2, option.bench_m2_per_m2])
      for (const value of list) number(at, value, 0);
    number(`${at}.cost_minor_per_m2`, option.cost_minor_per_m2, Number.NEGATIVE_INFINITY);
  });
  let last = -1;
  crop.demand.forEach((week, k) => {
    const at = `${path}.demand.${k}`;
    if (!Number.isInteger(week.week) || week.week <= last || week.week >= instance.weeks)
      say(`${at}.week`, 'out-of-season', 'demand weeks must be whole, rising and within the season.');
    last = week.week;
    number(`${at}.contract`, week.contract, 0);
    number(`${at}.penalty_minor`, week.penalty_minor, 0);
    week.tiers.forEach((tier, step) => {
      number(`${at}.tiers.${step}.cap`, tier.cap, 0);
      const before = week.tiers[step - 1];
      if (before !== undefined && tier.price_minor > before.price_minor)
        say(`${at}.tiers.${step}.price_minor`, 'rising-price', 'market steps must not rise in price.');
    });
  });
}
