import type { ReactNode } from 'react';
import { explainTotal } from '../../../planner/beds/explain-total.ts';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { type Column, count, derived, money, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';

type Whole = OutputOf<typeof api.beds.wholeFarm>;
type Block = Whole['blocks'][number];
type Due = Whole['due'][number];
type TopUp = Whole['topUps'][number];

const blockColumns: readonly Column<Block>[] = [
  text('block', say('Block'), { width: 70 }),
  text('name', say('Name'), { width: 200 }),
  count('beds', say('Beds'), { total: 'sum' }),
  quantity('area_m2', say('Area'), { total: 'sum' }),
  quantity('fill_L', say('Fill'), { total: 'sum' }),
  quantity('topUp_L', say('Top-up'), { total: 'sum' }),
  quantity('water_L', say('Standing water'), { total: 'sum' }),
  quantity('wet_kg', say('Wet weight'), { total: 'sum' }),
  money('value_minor', say('Still worth'), { total: 'sum', hint: say('Parts and fill, straight line over their lives') }),
];
const dueColumns: readonly Column<Due>[] = [
  derived('text', 'yearText', say('Year'), (row) => String(row.year), { width: 60 }),
  text('part', say('Part'), { width: 190 }),
  count('beds', say('Beds'), { total: 'sum', width: 64 }),
  money('cost_minor', say('Last paid'), { total: 'sum', width: 110 }),
];
const topUpColumns: readonly Column<TopUp>[] = [
  text('material', say('Material'), { width: 240 }),
  count('beds', say('Beds'), { total: 'sum' }),
  quantity('loose_L', say('Loose'), { total: 'sum' }),
];

/** The whole farm: area, volume, what tops it up, which parts are due when, what it is still worth. */
export function WholeFarmTab() {
  const whole = useRead(api.beds.wholeFarm, undefined);
  return (
    <Shown reading={whole}>
      {({ all, blocks, due, topUps }) => (
        <div className="stack">
          <dl className="figures">
            <Fact name={say('Beds')}>{all.beds}</Fact>
            <Total name={say('Bed area')} unit="m2" blocks={blocks} read={(block) => block.area_m2} />
            <Total name={say('Fill, settled')} unit="bulk_L" blocks={blocks} read={(block) => block.fill_L} />
            <Total
              name={say('Top-up this season')}
              unit="bulk_L"
              blocks={blocks}
              read={(block) => block.topUp_L}
              notes={settlingNote}
            />
            <Total name={say('Standing water')} unit="L" blocks={blocks} read={(block) => block.water_L} />
            <Total name={say('Still worth')} unit="minor" blocks={blocks} read={(block) => block.value_minor} notes={valueNote} />
          </dl>
          <Grid name="Blocks" rows={blocks} columns={blockColumns} rowId={blockId} />
          <div className="columns">
            <section>
              <h2>{say('Parts due, by year')}</h2>
              <Grid name="Parts due" rows={due} columns={dueColumns} rowId={dueId} />
            </section>
            <section>
              <h2>{say('To fill and top up')}</h2>
              <Grid name="Top-ups by material" rows={topUps} columns={topUpColumns} rowId={topUpId} />
            </section>
          </div>
        </div>
      )}
    </Shown>
  );
}

const blockId = (row: Block): string => row.blockId;
const dueId = (row: Due): string => row.key;
const topUpId = (row: TopUp): string => row.materialId;

const settlingNote = [
  say('Measured drops first; where none was measured, settling of the library (common practice, no source).'),
];
const valueNote = [say('Parts and fill, straight line over their lives, without salvage.')];

function Total(props: {
  readonly name: string;
  readonly unit: string;
  readonly blocks: readonly Block[];
  readonly read: (block: Block) => number;
  readonly notes?: readonly string[];
}) {
  const parts = props.blocks.map((block) => ({ name: `${block.block}, ${block.name}`, value: props.read(block) }));
  return (
    <Fact name={props.name}>
      <Figure of={explainTotal(props.name, props.unit, parts, props.notes)} />
    </Fact>
  );
}

function Fact({ name, children }: { readonly name: string; readonly children: ReactNode }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{children}</dd>
    </div>
  );
}
