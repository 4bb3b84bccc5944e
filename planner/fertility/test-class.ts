import { requireRange } from '../errors.ts';

/** How the laboratory took the nutrient out of the soil. Figures of different methods are never compared. */
export const testMethods = ['mehlich-3', 'bray-1', 'olsen', 'morgan', 'ammonium-acetate', 'saturated-paste'] as const;
export type TestMethod = (typeof testMethods)[number];

export const testClassNames = ['very-low', 'low', 'medium', 'high', 'very-high'] as const;
export type TestClass = (typeof testClassNames)[number];

/** Upper bounds of the lower classes, mg/kg, and where they come from. */
export type ClassScale = {
  readonly below_mg_per_kg: readonly [TestClass, number][];
  readonly top: TestClass;
  readonly source: string;
};

const olsenP: ClassScale = {
  below_mg_per_kg: [
    ['low', 15],
    ['medium', 25],
  ],
  top: 'high',
  source:
    'University of California pest management guidelines, tomato fertilization (2024): Olsen P low below 15, high above 25 ppm',
};
const acetateK: ClassScale = {
  below_mg_per_kg: [
    ['low', 130],
    ['medium', 250],
  ],
  top: 'high',
  source: 'University of California pest management guidelines, tomato fertilization (2024): K low below 130, high above 250 ppm',
};
const brayP: ClassScale = {
  below_mg_per_kg: [
    ['low', 35],
    ['medium', 40],
    ['high', 80],
  ],
  top: 'very-high',
  source: 'Midwest Vegetable Guide 2022: response below 35 to 40 ppm (Bray), none above 80',
};
const mehlichP: ClassScale = {
  below_mg_per_kg: [
    ['very-low', 15],
    ['low', 30],
    ['medium', 50],
    ['high', 100],
  ],
  top: 'very-high',
  source: 'Mehlich-3 P classes common to eastern vegetable handbooks, from memory: ask your laboratory for its own',
};
const mehlichK: ClassScale = {
  below_mg_per_kg: [
    ['very-low', 30],
    ['low', 75],
    ['medium', 125],
    ['high', 200],
  ],
  top: 'very-high',
  source: 'Mehlich-3 K classes common to eastern vegetable handbooks, from memory: ask your laboratory for its own',
};
const morganP: ClassScale = {
  below_mg_per_kg: [
    ['very-low', 1],
    ['low', 4],
    ['medium', 7],
    ['high', 20],
  ],
  top: 'very-high',
  source: 'Modified Morgan P classes of the Northeast, from memory: ask your laboratory for its own',
};
const extract = (least: number, most: number): ClassScale => ({
  below_mg_per_kg: [
    ['low', least],
    ['medium', most],
  ],
  top: 'high',
  source: `University of Massachusetts, soilless media report: ${least} to ${most} ppm in the saturated extract`,
});

const scales: Readonly<Record<TestMethod, Readonly<Record<string, ClassScale>>>> = {
  'mehlich-3': { P: mehlichP, K: mehlichK },
  'bray-1': { P: brayP, K: mehlichK },
  olsen: { P: olsenP, K: acetateK },
  morgan: { P: morganP, K: mehlichK },
  'ammonium-acetate': { K: acetateK },
  'saturated-paste': {
    NO3N: extract(60, 175),
    P: extract(5, 15),
    K: extract(75, 200),
    Ca: extract(75, 250),
    Mg: extract(40, 75),
  },
};

export type ClassReading = { readonly class: TestClass; readonly source: string };

/**
 * The class a figure falls in, on the scale of its own method; `null` where no scale is known.
 * Sources: with each scale. @throws InputError on a negative value
 */
export function testClass(method: TestMethod, nutrient: string, value_mg_per_kg: number): ClassReading | null {
  requireRange(nutrient, value_mg_per_kg, 0, 1_000_000, 'mg/kg');
  const scale = scales[method]?.[nutrient];
  if (scale === undefined) return null;
  const found = scale.below_mg_per_kg.find(([, bound]) => value_mg_per_kg < bound);
  return { class: found?.[0] ?? scale.top, source: scale.source };
}

/**
 * Potassium level above which crops answer no more.
 *
 *   CL = 75 + 2.5 CEC      ppm; CEC meq/100 g, 1 to 40
 *
 * Source: Midwest Vegetable Guide 2022 (85 ppm at CEC 4, 115 at 16).
 */
export function potassiumCritical_mg_per_kg(cec_meq_per_100g: number): number {
  requireRange('cec_meq_per_100g', cec_meq_per_100g, 0, 200, 'meq/100 g');
  return 75 + 2.5 * cec_meq_per_100g;
}

/** The upper bounds of the lower classes of a method's scale; empty where no scale is known. */
export function classBounds_mg_per_kg(
  method: TestMethod,
  nutrient: string,
): readonly { readonly name: TestClass; readonly below_mg_per_kg: number }[] {
  return (scales[method]?.[nutrient]?.below_mg_per_kg ?? []).map(([name, below_mg_per_kg]) => ({ name, below_mg_per_kg }));
}
