/** A printed figure, or a printed range. */
export type Printed = number | readonly [number, number];

export type CropRow = {
  readonly crop: string;
  readonly kcIni: Printed;
  readonly kcMid: Printed;
  readonly kcEnd: Printed;
  readonly height_m: Printed;
  readonly kcb: readonly [initial: number, middle: number, end: number];
  /** The smaller for planning water, the larger for deep soil. */
  readonly roots_m: readonly [number, number];
  readonly p: number;
  readonly saltThreshold_dS_per_m: Printed | null;
  readonly saltSlope_pct_per_dS_per_m: Printed | null;
};

const row = (
  crop: string,
  [kcIni, kcMid, kcEnd]: readonly [Printed, Printed, Printed],
  height_m: Printed,
  kcb: CropRow['kcb'],
  roots_m: CropRow['roots_m'],
  p: number,
  saltThreshold_dS_per_m: Printed | null,
  saltSlope_pct_per_dS_per_m: Printed | null,
): CropRow => ({
  crop,
  kcIni,
  kcMid,
  kcEnd,
  height_m,
  kcb,
  roots_m,
  p,
  saltThreshold_dS_per_m,
  saltSlope_pct_per_dS_per_m,
});

/**
 * Coefficients for a least humidity of 45 % and 2 m/s, heights, roots, share of the store taken without stress at 5 mm/day,
 * and salt tolerance.
 * In a row: name, Kc ini, mid and end, height, Kcb, roots, p, salt threshold and slope.
 * Source: FAO Irrigation and Drainage Paper 56 (1998), Tables 12, 17, 22 and 23.
 */
export const cropRows: readonly CropRow[] = [
  row('broccoli', [0.7, 1.05, 0.95], 0.3, [0.15, 0.95, 0.85], [0.4, 0.6], 0.45, 2.8, 9.2),
  row('brussels sprout', [0.7, 1.05, 0.95], 0.4, [0.15, 0.95, 0.85], [0.4, 0.6], 0.45, 1.8, 9.7),
  row('cabbage', [0.7, 1.05, 0.95], 0.4, [0.15, 0.95, 0.85], [0.5, 0.8], 0.45, [1, 1.8], [9.8, 14]),
  row('carrot', [0.7, 1.05, 0.95], 0.3, [0.15, 0.95, 0.85], [0.5, 1], 0.35, 1, 14),
  row('cauliflower', [0.7, 1.05, 0.95], 0.4, [0.15, 0.95, 0.85], [0.4, 0.7], 0.45, 1.8, 6.2),
  row('celery', [0.7, 1.05, 1], 0.6, [0.15, 0.95, 0.9], [0.3, 0.5], 0.2, [1.8, 2.5], [6.2, 13]),
  row('garlic', [0.7, 1, 0.7], 0.3, [0.15, 0.9, 0.6], [0.3, 0.5], 0.3, null, null),
  row('lettuce', [0.7, 1, 0.95], 0.3, [0.15, 0.9, 0.9], [0.3, 0.5], 0.3, [1.3, 1.7], 12),
  row('onion, dry', [0.7, 1.05, 0.75], 0.4, [0.15, 0.95, 0.65], [0.3, 0.6], 0.3, 1.2, 16),
  row('onion, green', [0.7, 1, 1], 0.3, [0.15, 0.9, 0.9], [0.3, 0.6], 0.3, 1.2, 16),
  row('spinach', [0.7, 1, 0.95], 0.3, [0.15, 0.9, 0.85], [0.3, 0.5], 0.2, [2, 3.2], [7.7, 16]),
  row('radish', [0.7, 0.9, 0.85], 0.3, [0.15, 0.85, 0.75], [0.3, 0.5], 0.3, [1.2, 2], [7.6, 13]),
  row('eggplant', [0.6, 1.05, 0.9], 0.8, [0.15, 1, 0.8], [0.7, 1.2], 0.45, null, null),
  row('sweet pepper', [0.6, 1.05, 0.9], 0.7, [0.15, 1, 0.8], [0.5, 1], 0.3, [1.5, 1.7], [12, 14]),
  row('tomato', [0.6, 1.15, [0.7, 0.9]], 0.6, [0.15, 1.1, 0.7], [0.7, 1.5], 0.4, [0.9, 2.5], 9),
  row('cantaloupe', [0.5, 0.85, 0.6], 0.3, [0.15, 0.75, 0.5], [0.9, 1.5], 0.45, null, null),
  row('cucumber, fresh', [0.6, 1, 0.75], 0.3, [0.15, 0.95, 0.7], [0.7, 1.2], 0.5, [1.1, 2.5], [7, 13]),
  row('cucumber, machine harvest', [0.5, 1, 0.9], 0.3, [0.15, 0.95, 0.8], [0.7, 1.2], 0.5, [1.1, 2.5], [7, 13]),
  row('pumpkin, winter squash', [0.5, 1, 0.8], 0.4, [0.15, 0.95, 0.7], [1, 1.5], 0.35, 1.2, 13),
  row('squash, zucchini', [0.5, 0.95, 0.75], 0.3, [0.15, 0.9, 0.7], [0.6, 1], 0.5, 4.7, 10),
  row('sweet melon', [0.5, 1.05, 0.75], 0.4, [0.15, 1, 0.7], [0.8, 1.5], 0.4, null, null),
  row('watermelon', [0.4, 1, 0.75], 0.4, [0.15, 0.95, 0.7], [0.8, 1.5], 0.4, null, null),
  row('beet, table', [0.5, 1.05, 0.95], 0.4, [0.15, 0.95, 0.85], [0.6, 1], 0.5, 4, 9),
  row('parsnip', [0.5, 1.05, 0.95], 0.4, [0.15, 0.95, 0.85], [0.5, 1], 0.4, null, null),
  row('potato', [0.5, 1.15, 0.75], 0.6, [0.15, 1.1, 0.65], [0.4, 0.6], 0.35, 1.7, 12),
  row('sweet potato', [0.5, 1.15, 0.65], 0.4, [0.15, 1.1, 0.55], [1, 1.5], 0.65, [1.5, 2.5], 10),
  row('turnip, rutabaga', [0.5, 1.1, 0.95], 0.6, [0.15, 1, 0.85], [0.5, 1], 0.5, 0.9, 9),
  row('bean, green', [0.5, 1.05, 0.9], 0.4, [0.15, 1, 0.8], [0.5, 0.7], 0.45, 1, 19),
  row('bean, dry', [0.4, 1.15, 0.35], 0.4, [0.15, 1.1, 0.25], [0.6, 0.9], 0.45, 1, 19),
  row('fava bean, fresh', [0.5, 1.15, 1.1], 0.8, [0.15, 1.1, 1.05], [0.5, 0.7], 0.45, [1.5, 1.6], 9.6),
  row('cowpea, fresh', [0.4, 1.05, 0.6], 0.4, [0.15, 1, 0.55], [0.6, 1], 0.45, 4.9, 12),
  row('pea, fresh', [0.5, 1.15, 1.1], 0.5, [0.15, 1.1, 1.05], [0.6, 1], 0.35, 1.5, 14),
  row('sweet corn, fresh', [0.3, 1.15, 1.05], 1.5, [0.15, 1.1, 1], [0.8, 1.2], 0.5, 1.7, 12),
  row('artichoke', [0.5, 1, 0.95], 0.7, [0.15, 0.95, 0.9], [0.6, 0.9], 0.45, null, null),
  row('asparagus', [0.5, 0.95, 0.3], [0.2, 0.8], [0.15, 0.9, 0.2], [1.2, 1.8], 0.45, 4.1, 2),
  row('mint', [0.6, 1.15, 1.1], [0.6, 0.8], [0.4, 1.1, 1.05], [0.4, 0.8], 0.4, null, null),
  row('strawberry', [0.4, 0.85, 0.75], 0.2, [0.3, 0.8, 0.7], [0.2, 0.3], 0.2, [1, 1.5], [11, 33]),
  row('berry bushes', [0.3, 1.05, 0.5], 1.5, [0.2, 1, 0.4], [0.6, 1.2], 0.5, 1.5, 22),
  row('grape, table', [0.3, 0.85, 0.45], 2, [0.15, 0.8, 0.4], [1, 2], 0.35, 1.5, 9.6),
  row('hop', [0.3, 1.05, 0.85], 5, [0.15, 1, 0.8], [1, 1.2], 0.5, null, null),
  row('sunflower', [0.35, [1, 1.15], 0.35], 2, [0.15, 1.1, 0.25], [0.8, 1.5], 0.45, null, null),
];

/** A row by its printed name, whatever the capitals. */
export const cropRow = (crop: string): CropRow | undefined => cropRows.find((row) => row.crop === crop.trim().toLowerCase());
