/** How the invented farm grows a crop: place in the year, size of its prices. Yields come from the crop library where it has them. */
export type CropChoice = {
  readonly cropId: string;
  readonly slot: 'spring' | 'long' | 'summer' | 'autumn';
  readonly method: 'direct' | 'transplant' | 'set';
  /** Day of the year on which it goes into the bed, and how far that may vary. */
  readonly inBedDay: number;
  readonly spread_days: number;
  readonly maturity_days: number;
  readonly window_days: number;
  readonly unit: string;
  readonly price_minor: number;
  /** Where the library has no typical yield: invented, per m2. */
  readonly yieldPerM2: number | null;
  readonly weight_kg: number | null;
  readonly trellis?: boolean;
};

const c = (
  cropId: string,
  slot: CropChoice['slot'],
  method: CropChoice['method'],
  [inBedDay, spread_days, maturity_days, window_days]: readonly [number, number, number, number],
  unit: string,
  price_minor: number,
  yieldPerM2: number | null = null,
  weight_kg: number | null = null,
): CropChoice => ({
  cropId,
  slot,
  method,
  inBedDay,
  spread_days,
  maturity_days,
  window_days,
  unit,
  price_minor,
  yieldPerM2,
  weight_kg,
});

/** The thirty crops of the invented farm. Prices are invented. */
export const cropChoices: readonly CropChoice[] = [
  c('lettuce-leaf', 'spring', 'transplant', [92, 12, 42, 18], 'kg', 1450),
  c('spinach', 'spring', 'direct', [78, 10, 45, 18], 'kg', 1500),
  c('arugula', 'spring', 'direct', [85, 10, 38, 14], 'kg', 1900, 1.2),
  c('radish', 'spring', 'direct', [84, 14, 30, 12], 'bunch', 275, null, 0.28),
  c('pea-garden', 'spring', 'direct', [74, 8, 66, 18], 'kg', 1100),
  c('pak-choi', 'spring', 'transplant', [95, 10, 40, 12], 'kg', 900, 2.6),
  c('turnip', 'spring', 'direct', [86, 10, 45, 14], 'kg', 620),
  c('cilantro', 'spring', 'direct', [92, 12, 45, 14], 'bunch', 225, 9, 0.06),
  c('kohlrabi', 'spring', 'transplant', [90, 10, 48, 14], 'kg', 560),
  c('carrot', 'long', 'direct', [100, 14, 75, 35], 'kg', 520),
  c('beet', 'long', 'direct', [100, 14, 62, 35], 'kg', 520),
  c('onion-bulb', 'long', 'transplant', [88, 8, 105, 20], 'kg', 450),
  c('leek', 'long', 'transplant', [115, 10, 110, 40], 'kg', 700),
  c('potato', 'long', 'set', [95, 8, 100, 25], 'kg', 420),
  c('kale', 'long', 'transplant', [100, 14, 55, 90], 'kg', 900),
  c('swiss-chard', 'long', 'transplant', [108, 14, 52, 90], 'kg', 850),
  c('cabbage', 'long', 'transplant', [92, 10, 72, 25], 'kg', 330),
  c('broccoli', 'long', 'transplant', [92, 10, 62, 28], 'kg', 750),
  c('parsley', 'long', 'transplant', [105, 10, 70, 90], 'kg', 2600),
  c('tomato', 'summer', 'transplant', [148, 8, 70, 60], 'kg', 720),
  c('tomato-cherry', 'summer', 'transplant', [148, 8, 62, 68], 'kg', 1150, 4.4),
  c('pepper-sweet', 'summer', 'transplant', [155, 6, 72, 55], 'kg', 980),
  c('cucumber', 'summer', 'transplant', [154, 8, 52, 50], 'kg', 520),
  c('summer-squash', 'summer', 'transplant', [152, 8, 48, 60], 'kg', 430),
  c('bean-bush', 'summer', 'direct', [155, 14, 54, 24], 'kg', 1050),
  c('basil', 'summer', 'transplant', [156, 8, 45, 60], 'kg', 3200),
  c('zinnia', 'summer', 'direct', [150, 12, 68, 60], 'stem', 55),
  c('sunflower-cut', 'summer', 'direct', [152, 14, 60, 16], 'stem', 90),
  c('snapdragon', 'summer', 'transplant', [140, 10, 75, 50], 'stem', 70, 45),
  c('spinach', 'autumn', 'direct', [232, 8, 48, 24], 'kg', 1500),
  c('lettuce-leaf', 'autumn', 'transplant', [226, 10, 46, 20], 'kg', 1450),
  c('radish', 'autumn', 'direct', [238, 10, 34, 14], 'bunch', 275, null, 0.28),
  c('mustard-greens', 'autumn', 'direct', [230, 8, 42, 24], 'kg', 900),
];
