import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { type Column, count, money, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';

type Whole = OutputOf<typeof api.beds.wholeFarm>;
type Block = Whole['blocks'][number];
type Due = Whole['due'][number];
type TopUp = Whole['topUps'][number];

const blockColumns: readonly Column<Block>[] = [
  text('block', 'Block', { width: 70 }),
  text('name', 'Name', { width: 200 }),
  count('beds', 'Beds', { total: 'sum' }),
  quantity('area_m2', 'Area', { total: 'sum' }),
  quantity('fill_L', 'Fill', { total: 'sum' }),
  quantity('topUp_L', 'Top-up', { total: 'sum' }),
  quantity('water_L', 'Standing water', { total: 'sum' }),
  quantity('wet_kg', 'Wet weight', { total: 'sum' }),
  money('value_minor', 'Still worth', { total: 'sum', hint: 'Parts and fill, straight line over their lives' }),
];
const dueColumns: readonly Column<Due>[] = [
  count('year', 'Year', { width: 80 }),
  text('part', 'Part', { width: 240 }),
  count('beds', 'Beds', { total: 'sum' }),
  money('cost_minor', 'As last paid', { total: 'sum' }),
];
const topUpColumns: readonly Column<TopUp>[] = [
  text('material', 'Material', { width: 240 }),
  count('beds', 'Beds', { total: 'sum' }),
  quantity('loose_L', 'Loose', { total: 'sum' }),
];

/** The whole farm: area, volume, what tops it up, which parts are due when, what it is still worth. */
export function WholeFarmTab() {
  const reader = useReader();
  const whole = useRead(api.beds.wholeFarm, undefined);
  return (
    <Shown reading={whole}>
      {({ all, blocks, due, topUps }) => (
        <div className="stack">
          <dl className="figures">
            <Fact name="Beds" text={String(all.beds)} />
            <Fact name="Bed area" text={reader.print(all.area_m2, 'm2')} />
            <Fact name="Fill" text={reader.print(all.fill_L, 'bulk_L')} />
            <Fact name="Top-up this season" text={reader.print(all.topUp_L, 'bulk_L')} />
            <Fact name="Standing water" text={reader.print(all.water_L, 'L')} />
            <Fact name="Still worth" text={reader.money(all.value_minor)} />
          </dl>
          <Grid name="Blocks" rows={blocks} columns={blockColumns} rowId={blockId} />
          <div className="columns">
            <section>
              <h2>Parts due, by year</h2>
              <Grid name="Parts due" rows={due} columns={dueColumns} rowId={dueId} />
            </section>
            <section>
              <h2>To fill and top up</h2>
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

function Fact({ name, text: shown }: { readonly name: string; readonly text: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>{shown}</dd>
    </div>
  );
}
