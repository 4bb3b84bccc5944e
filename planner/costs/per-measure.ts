import { computed, type Working } from '../working.ts';

/** What a sum comes to for each unit of a measure; empty where the measure is none. */
export function perMeasure(amount_minor: number, measure: number): number | null {
  return measure > 0 ? amount_minor / measure : null;
}

/** Working of a margin: what was earned less each kind of cost. `parts` are workings of what stands in one of them. */
export function explainEarning(
  row: {
    readonly name: string;
    readonly income_minor: number;
    readonly direct_minor: number;
    readonly bed_minor: number;
    readonly water_minor: number;
    readonly lineParts_minor: number;
    readonly overhead_minor: number;
    readonly margin_minor: number;
    /** Some of the costs have no price that anyone knows. */
    readonly atLeast?: boolean;
  },
  parts: readonly Working[] = [],
): Working {
  const money = (symbol: string, name: string, value: number) => ({
    symbol,
    name,
    figure: { value, unit: 'minor' },
    origin: computed('the ledger of the season'),
  });
  return {
    title: `What ${row.name} earned`,
    formula: 'margin = I - (D + B + W + O)',
    symbols: [
      money('I', 'income from sales', row.income_minor),
      money('D', 'direct cost: labour, inputs, seed, packing', row.direct_minor),
      money('B', 'the bed: parts and fill over their years', row.bed_minor),
      money('W', 'water, power and the lines’ parts over their years', row.water_minor),
      money('O', 'overhead and shared items by their key', row.overhead_minor),
    ],
    steps: [
      ...(row.lineParts_minor === 0
        ? []
        : [
            {
              text: 'Water and power without the lines’ parts',
              figures: `${row.water_minor} - ${row.lineParts_minor}`,
              result: { value: row.water_minor - row.lineParts_minor, unit: 'minor' },
            },
          ]),
      {
        text: 'All costs',
        figures: `${row.direct_minor} + ${row.bed_minor} + ${row.water_minor} + ${row.overhead_minor}`,
        result: { value: row.direct_minor + row.bed_minor + row.water_minor + row.overhead_minor, unit: 'minor' },
      },
    ],
    result: { value: row.margin_minor, unit: 'minor' },
    parts,
    sources: ['University of Maryland Extension, Enterprise Budgeting'],
    notes: [
      'Every cost of the season is in exactly one row; what belongs to no bed or planting has a row of its own.',
      ...(row.atLeast === true
        ? ['Some of it has no price that anyone knows: the costs are at least these, the margin at most this.']
        : []),
    ],
  };
}
