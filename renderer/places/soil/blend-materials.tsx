import { useMemo, useState } from 'react';
import { Empty } from '../../app/states.tsx';
import { type Column, choice, derived, flag, quantity, share, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import type { FeedingChoice } from './soil-types.ts';

type Row = FeedingChoice & { readonly used: boolean };

const organicChoices = [
  { value: 'allowed', text: say('allowed') },
  { value: 'not-allowed', text: say('not allowed') },
  { value: 'unknown', text: say('ask certifier') },
] as const;

const columns: readonly Column<Row>[] = [
  flag('used', say('Use'), { width: 64, edit: (row) => row.fault === null }),
  text('name', say('Material'), { width: 230 }),
  share('nShare', 'N', { width: 66 }),
  share('p2o5Share', 'P₂O₅', { width: 84 }),
  share('k2oShare', 'K₂O', { width: 70 }),
  share('firstYearNShare', say('N first year'), {
    width: 116,
    hint: say('Share of its nitrogen within reach in the first season'),
  }),
  quantity('stock_kg', say('In stock'), { width: 94 }),
  quantity('price_minor_per_kg', say('Least price'), { width: 118 }),
  choice('organicUse', say('Organic use'), organicChoices, { width: 122 }),
  derived(
    'text',
    'stands',
    say('Against it'),
    (row) => row.fault ?? (row.offers === 0 && row.stock_kg === 0 ? say('No offer and none in stock') : ''),
    { width: 210 },
  ),
  text('source', say('Source of the analysis'), { width: 320 }),
];
const rowId = (row: Row): string => row.materialId;

/** The materials that the blend may use, with their analysis, its source, and what stands against them. */
export function BlendMaterials(props: {
  readonly materials: readonly FeedingChoice[];
  readonly chosen: readonly string[];
  readonly onChoose: (ids: readonly string[]) => void;
}) {
  const [all, setAll] = useState(false);
  const rows = useMemo(
    () =>
      props.materials
        .map((each) => ({ ...each, used: props.chosen.includes(each.materialId) }))
        .filter((row) => all || row.used || row.offers > 0 || row.stock_kg > 0)
        .sort((a, b) => Number(b.used) - Number(a.used)),
    [props.materials, props.chosen, all],
  );
  return (
    <section className="stack" aria-label={say('Materials for the blend')}>
      <h2>{say('Materials it may use')}</h2>
      <Grid
        name="Blend materials"
        rows={rows}
        columns={columns}
        rowId={rowId}
        tools={
          <label className="row small">
            <input type="checkbox" checked={all} onChange={(event) => setAll(event.target.checked)} />
            {say('also those without offer or stock')}
          </label>
        }
        onEdit={async (edits) => {
          const next = new Set(props.chosen);
          for (const { row, value } of edits) value === true ? next.add(row.materialId) : next.delete(row.materialId);
          props.onChoose([...next]);
        }}
        empty={
          <Empty title={say('No material with an analysis')}>
            {say('Add amendments in the library, with their analysis and an offer.')}
          </Empty>
        }
      />
    </section>
  );
}
