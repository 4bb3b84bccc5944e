import { over, type SymbolUnit, symbolUnit } from './symbol.ts';

/** The words that a grower may write for a unit, by the symbol they stand for; lower case, without full stops. */
const words: Readonly<Record<string, string>> = {
  m: 'm|metre|metres|meter|meters',
  cm: 'cm|centimetre|centimetres|centimeter|centimeters',
  mm: 'mm|millimetre|millimetres|millimeter|millimeters',
  km: 'km|kilometre|kilometres|kilometer|kilometers',
  in: 'in|inch|inches|"|″|”',
  ft: "ft|foot|feet|'|′|’",
  yd: 'yd|yds|yard|yards',
  mi: 'mi|mile|miles',
  m2: 'm2|sqm|sq m|square metre|square metres|square meter|square meters',
  cm2: 'cm2|sq cm',
  ha: 'ha|hectare|hectares',
  in2: 'in2|sq in|square inch|square inches',
  ft2: 'ft2|sqft|sq ft|square foot|square feet',
  yd2: 'yd2|sq yd|square yard|square yards',
  acre: 'acre|acres|ac',
  L: 'l|litre|litres|liter|liters',
  mL: 'ml|millilitre|millilitres|milliliter|milliliters',
  m3: 'm3|cu m|cubic metre|cubic metres|cubic meter|cubic meters',
  in3: 'in3|cu in|cubic inch|cubic inches',
  ft3: 'ft3|cu ft|cubic foot|cubic feet',
  yd3: 'yd3|cu yd|cu yds|cubic yard|cubic yards',
  us_gal: 'gal|gallon|gallons|us gal|us gallon|us gallons',
  us_qt: 'qt|quart|quarts',
  us_pt: 'pt|pint|pints',
  us_cup: 'cup|cups',
  us_fl_oz: 'fl oz|fluid ounce|fluid ounces',
  us_tbsp: 'tbsp|tablespoon|tablespoons',
  us_tsp: 'tsp|teaspoon|teaspoons',
  us_dry_qt: 'dry qt|dry quart|dry quarts',
  us_bu: 'bu|bushel|bushels',
  imp_gal: 'imp gal|imperial gallon|imperial gallons',
  kg: 'kg|kilo|kilos|kilogram|kilograms',
  g: 'g|gram|grams',
  mg: 'mg|milligram|milligrams',
  t: 't|tonne|tonnes',
  lb: 'lb|lbs|pound|pounds|#',
  oz: 'oz|ounce|ounces',
  us_ton: 'ton|tons|short ton|short tons',
  Pa: 'pa',
  kPa: 'kpa',
  bar: 'bar',
  psi: 'psi',
  Wh: 'wh',
  kWh: 'kwh',
  MJ: 'mj',
  W: 'w|watt|watts',
  kW: 'kw',
  s: 's|sec|second|seconds',
  min: 'min|minute|minutes',
  h: 'h|hr|hrs|hour|hours',
  d: 'd|day|days',
  week: 'wk|week|weeks',
  year: 'yr|yrs|year|years',
  count: 'pcs|piece|pieces|each|plant|plants',
  dozen: 'doz|dozen|dozens',
  pct: '%|pct|percent',
  C: 'c|°c|deg c',
  deg: '°|deg|degree|degrees',
  V: 'v|volt|volts',
  A: 'a|amp|amps',
  Ah: 'ah',
  dS: 'ds',
  meq: 'meq',
  ppm: 'ppm',
  us_gal_per_min: 'gpm',
  us_gal_per_h: 'gph',
  mi_per_h: 'mph',
  lb_per_ft2: 'psf',
  lb_per_ft3: 'pcf',
};

const fahrenheit: SymbolUnit = { dimension: 'temperature', factor: 5 / 9, offset: -160 / 9 };
const byWord = new Map<string, SymbolUnit>(['f', '°f', 'deg f'].map((word) => [word, fahrenheit]));
for (const [symbol, text] of Object.entries(words)) {
  const unit = symbolUnit(symbol);
  if (unit !== undefined) for (const word of text.split('|')) byWord.set(word, unit);
}

/** In a field of volumes an ounce is a fluid ounce and a yard of soil is a cubic yard, as growers say. */
const saidFor: Readonly<Record<string, Readonly<Record<string, string>>>> = {
  volume: {
    oz: 'us_fl_oz',
    ounce: 'us_fl_oz',
    ounces: 'us_fl_oz',
    yd: 'yd3',
    yds: 'yd3',
    yard: 'yd3',
    yards: 'yd3',
    foot: 'ft3',
  },
  temperatureStep: { f: 'F', '°f': 'F' },
};

function tidy(text: string): string {
  return text.toLowerCase().replace(/\./g, '').replace(/²|\^2/g, '2').replace(/³|\^3/g, '3').replace(/\s+/g, ' ').trim();
}

/** One unit's word, perhaps with a count before it as in `1000 ft2`. */
function singleUnit(text: string, dimension: string): SymbolUnit | undefined {
  const said = saidFor[dimension]?.[text];
  if (said === 'F') return { dimension: 'temperatureStep', factor: 5 / 9, offset: 0 };
  if (dimension === 'temperatureStep' && /^(°?c|deg c)$/.test(text)) return { dimension, factor: 1, offset: 0 };
  if (said !== undefined) return symbolUnit(said);
  const counted = /^(\d+) ?(\D.*)$/.exec(text);
  const unit = byWord.get(counted?.[2] ?? text);
  if (unit === undefined || counted === null) return unit;
  return { ...unit, factor: unit.factor * Number(counted[1]) };
}

/**
 * The unit that a written word stands for: `gal`, `sq ft`, `gal/day`, `lb per 1000 ft2`.
 * @param dimension what the field wants, to read words with two meanings
 */
export function writtenUnit(text: string, dimension: string): SymbolUnit | undefined {
  const [head = '', ...tails] = tidy(text).split(/ ?\/ ?| per /);
  const dimensions = dimension.split('/');
  let unit = singleUnit(head, dimensions[0] ?? '');
  for (const [at, tail] of tails.entries()) {
    const under = singleUnit(tail, dimensions[at + 1] ?? '');
    if (unit === undefined || under === undefined) return undefined;
    unit = over(unit, under);
  }
  return unit;
}
