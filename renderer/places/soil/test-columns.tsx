import { type Column, choice, date, derived, quantity, share, text } from '../../table/column.ts';
import { say } from '../../words/say.ts';
import type { SoilTestRow } from './soil-types.ts';
import { classChoices, classText, kindChoices, methodChoices, toneOfClass } from './soil-words.ts';

/** How one nutrient of the sheet reads on its method's scale. */
export function ClassMark({ name }: { readonly name: string }) {
  return name === '' ? null : (
    <span className="state-mark" data-tone={toneOfClass(name)}>
      {classText(name)}
    </span>
  );
}

const nutrient = (name: string, title: string): readonly Column<SoilTestRow>[] => [
  derived<SoilTestRow>(
    'quantity',
    `${name.toLowerCase()}Value_ppm`,
    title,
    (row) => row.values.find((each) => each.nutrient === name)?.value_mg_per_kg ?? null,
    { width: 92 },
  ),
  {
    ...derived<SoilTestRow>(
      'choice',
      say('{name}Class', { name }),
      say('{title} reads', { title }),
      (row) => row.values.find((each) => each.nutrient === name)?.reading?.class ?? '',
      {
        width: 112,
        draw: (row) => <ClassMark name={row.values.find((each) => each.nutrient === name)?.reading?.class ?? ''} />,
      },
    ),
    choices: classChoices,
  },
];

export const testColumns: readonly Column<SoilTestRow>[] = [
  date('date', say('Sampled'), { width: 112 }),
  text('sample', say('Sample'), { width: 110 }),
  derived('count', 'bedCount', say('Beds'), (row) => row.beds.length, { width: 64 }),
  quantity('ph', 'pH', { width: 60, digits: 2 }),
  quantity('bufferPh', say('Buffer pH'), { width: 96, digits: 2 }),
  ...nutrient('P', 'P'),
  ...nutrient('K', 'K'),
  share('organicMatterShare', 'OM', { width: 70, hint: say('Organic matter') }),
  derived('quantity', 'cec', 'CEC', (row) => row.cec_meq_per_100g, { width: 64, hint: say('Exchange capacity, meq/100 g') }),
  quantity('ec_dS_per_m', 'EC', { width: 84 }),
  text('saltReading', say('Salts'), { width: 90 }),
  choice('kind', say('Kind'), kindChoices, { width: 150 }),
  choice('method', say('Method'), methodChoices, { width: 180 }),
  text('laboratory', say('Laboratory'), { width: 150, shown: false }),
  text('note', say('Note'), { shown: false }),
];
