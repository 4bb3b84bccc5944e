import { z } from 'zod';

const metres = (what: string) => z.number(`${what} is a length.`);
const height = metres('A height').min(-100, 'At least -100 m.').max(500, 'At most 500 m.');
const above = (what: string, most: number) =>
  z.number(`${what} is a number.`).positive(`${what} must be more than zero.`).max(most, `${what}: at most ${most}.`);
const shareOf = (what: string) =>
  z.number().min(0, `${what} lies between 0 and 100 %.`).max(1, `${what} lies between 0 and 100 %.`);

export const lineId = z.string().min(1);
export const lineName = z.string().trim().min(1, 'A line needs a name.').max(80, 'A name has at most 80 signs.');

/** Fields of a line's supply, as changed one by one. Ranges of the trade are the planner's. */
export const supplyFields = z
  .object({
    name: lineName,
    supply: z.enum(['reservoir', 'tap']),
    supplySource: z.enum(['public', 'well', 'surface', 'roof', 'reuse']),
    reservoir_L: above('The reservoir', 1e7).nullable(),
    reservoirArea_m2: above('The reservoir area', 1e5).nullable(),
    reservoirBase_m: height.nullable(),
    highLevel_m: height.nullable(),
    lowLevel_m: height.nullable(),
    usableShare: shareOf('The usable share'),
    floatTopUp_L_per_day: z.number().nonnegative('A top-up is zero or more.').nullable(),
    tapHead_m: above('The tap pressure', 200).nullable(),
    tapFlow_L_per_min: above('The tap flow', 1000).nullable(),
    vented: z.boolean(),
    ventHole_m: above('The vent hole', 0.05).nullable(),
    foodGrade: z.boolean(),
    reserveHead_m: z.number().min(0, 'A reserve is zero or more.').max(10, 'At most 10 m of reserve.'),
    water_C: z.number().min(0.5, 'Water below 0.5 C is ice.').max(45, 'At most 45 C.'),
    roofArea_m2: above('The roof', 1e5).nullable(),
    roofShare: shareOf('The roof’s share').nullable(),
    firstFlush_mm: z.number().min(0).max(20, 'At most 20 mm.').nullable(),
    level_L: z.number().nonnegative('A level is zero or more.').nullable(),
    levelDate: z.iso.date().nullable(),
    notes: z.string().max(2000),
  })
  .partial();

export const pumpFields = z.object({
  name: z.string().trim().min(1, 'A pump needs a name.').max(120),
  materialId: z.string().nullable(),
  curveKind: z.enum(['points', 'three-points', 'one-point', 'rated']),
  power_W: z.number().min(0, 'Watts are zero or more.').max(5000, 'At most 5000 W.'),
  inletHeight_m: height,
  count: z.int('A whole number of pumps.').min(1, 'At least one pump.').max(20, 'At most 20 pumps.'),
  points: z
    .array(z.object({ flow_L_per_h: z.number().min(0).max(1e6), head_m: z.number().min(0).max(500) }))
    .min(1, 'A pump needs at least one point.')
    .max(40, 'At most 40 points.'),
});

export const powerFields = z.object({
  kind: z.enum(['mains', 'battery', 'engine']),
  battery: z.enum(['lead-acid', 'lithium-iron-phosphate', 'other-lithium']).nullable(),
  capacity_Wh: above('The capacity', 1e6).nullable(),
  usableShare: shareOf('The usable share').nullable(),
  inverterShare: shareOf('The inverter’s share').nullable(),
  selfDischarge_share_per_month: shareOf('The self-discharge').nullable(),
  controller_W: z.number().min(0, 'Watts are zero or more.').max(1000),
  idle_W: z.number().min(0, 'Watts are zero or more.').max(1000),
  idleOff_h: z.number().min(0, 'Hours are zero or more.').max(24, 'At most 24 h.').nullable(),
  panel_W: above('The panel', 1e5).nullable(),
  panelLossShare: shareOf('The panel’s loss').nullable(),
  peakSun_h: above('The peak-sun hours', 12).nullable(),
  limit_W: above('The most at once', 1e5).nullable(),
});

export const timerFields = z.object({
  month: z.int().min(1).max(12),
  every_days: z.int('Whole days.').min(1, 'At least every day.').max(60, 'At most 60 days.'),
  start: z.string().regex(/^([01]\d|2[0-3]):[0-5]\d$/, 'Write the time as 05:30.'),
  run_min: above('A run', 1440),
  zone: z.int().min(1).max(50),
});

export const nodeFields = z
  .object({
    name: z.string().trim().min(1, 'A place needs a name.').max(80),
    x_m: metres('A place').min(-1e5).max(1e5),
    y_m: metres('A place').min(-1e5).max(1e5),
    elevation_m: height,
    zone: z.int('A zone is a whole number.').min(1, 'Zones begin with 1.').max(50, 'At most 50 zones.'),
  })
  .partial();

export const runFields = z
  .object({
    length_m: z.number('A length is needed here.'),
    insideDiameter_m: z.number('An inside diameter is needed here.'),
    roughness_m: z.number('A roughness is needed here.'),
    fittingK: z.number('A loss coefficient is needed here.'),
    teeBore_m: above('The tee’s bore', 0.5).nullable(),
    materialId: z.string().nullable(),
  })
  .partial();

export const outletFields = z
  .object({
    bedId: z.string().nullable(),
    kind: z.enum(['open-end', 'drip', 'hand']),
    outlet_m: height,
    bore_m: z.number('A bore is needed here.'),
    drowned: z.boolean(),
    openK: z.number().min(0, 'A loss coefficient is zero or more.').max(1e6),
    setK: z.number().min(0, 'A loss coefficient is zero or more.').max(1e12).nullable(),
    wantShare: z.number().min(0, 'A share is zero or more.').max(1000, 'At most 1000.'),
    emitters: z.int('A whole number of emitters.').min(1).max(100_000).nullable(),
    emitter_L_per_h: above('An emitter’s flow', 500).nullable(),
    emitterExponent: z.number().min(0.05, 'At least 0.05.').max(1, 'At most 1.').nullable(),
    emitterHead_m: above('The emitter’s head', 100).nullable(),
    emitterCv: z.number().min(0).max(0.5, 'At most 0.5.').nullable(),
    fill_L: z.number().min(0, 'A fill is zero or more.').max(1e5).nullable(),
  })
  .partial();

/** Only what was given: zod's optional keys without their `undefined`. */
export function given<T extends object>(values: T): { [K in keyof T]: Exclude<T[K], undefined> } {
  return Object.fromEntries(Object.entries(values).filter(([, value]) => value !== undefined)) as {
    [K in keyof T]: Exclude<T[K], undefined>;
  };
}
