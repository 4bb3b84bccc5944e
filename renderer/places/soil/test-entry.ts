import type { IsoDate } from '../../../planner/calendar.ts';
import type { api } from '../../client/api.ts';
import type { InputOf } from '../../client/use-read.ts';
import type { SoilTestRow } from './soil-types.ts';

type Input = InputOf<typeof api.soilTests.add>;

/** Nutrients a sheet is asked for at first; more can be added by their symbol. */
export const usualNutrients = ['P', 'K', 'Ca', 'Mg', 'S'] as const;

/** A sheet while it is being entered: empty figures stay out of it. */
export type TestEntry = Omit<Input, 'values' | 'date'> & {
  readonly date: IsoDate | null;
  readonly values: readonly {
    readonly nutrient: string;
    readonly value: number | null;
    readonly unit: Input['values'][number]['unit'];
  }[];
};

export const emptyEntry = (today: IsoDate): TestEntry => ({
  date: today,
  laboratory: '',
  sample: '',
  kind: 'soil',
  method: 'mehlich-3',
  depth_m: 0.1524,
  texture: null,
  ph: null,
  bufferPh: null,
  bufferMethod: null,
  organicMatterShare: null,
  cec_meq_per_100g: null,
  ec_dS_per_m: null,
  lead_mg_per_kg: null,
  note: '',
  values: usualNutrients.map((nutrient) => ({ nutrient, value: null, unit: 'ppm' })),
  bedIds: [],
});

/** A kept sheet as it was entered, to be changed. */
export function entryOf(test: SoilTestRow): TestEntry {
  const kept = test.values.map((each) => ({
    nutrient: each.nutrient,
    value: each.enteredValue,
    unit: each.enteredUnit as Input['values'][number]['unit'],
  }));
  const more = usualNutrients.filter((name) => !kept.some((each) => each.nutrient === name));
  return {
    date: test.date as IsoDate,
    laboratory: test.laboratory,
    sample: test.sample,
    kind: test.kind,
    method: test.method as Input['method'],
    depth_m: test.depth_m,
    texture: test.texture,
    ph: test.ph,
    bufferPh: test.bufferPh,
    bufferMethod: test.bufferMethod as Input['bufferMethod'],
    organicMatterShare: test.organicMatterShare,
    cec_meq_per_100g: test.cec_meq_per_100g,
    ec_dS_per_m: test.ec_dS_per_m,
    lead_mg_per_kg: test.lead_mg_per_kg,
    note: test.note,
    values: [...kept, ...more.map((nutrient) => ({ nutrient, value: null, unit: 'ppm' as const }))],
    bedIds: test.beds.map((each) => each.bedId),
  };
}

/** What is sent: figures that were left empty are no figures. */
export function inputOf(entry: TestEntry): Input {
  const values = entry.values.flatMap(({ nutrient, value, unit }) => (value === null ? [] : [{ nutrient, value, unit }]));
  return { ...entry, date: entry.date ?? '', values, bedIds: [...entry.bedIds] };
}
