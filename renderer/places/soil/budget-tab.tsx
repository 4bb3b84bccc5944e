import { type ReactNode, useMemo } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Chart } from '../../charts/chart.tsx';
import { api, client } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { type Column, choice, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import { chartBars, partNames } from './budget-bars.ts';
import { BudgetSheet } from './budget-sheet.tsx';
import type { BudgetRow, FeedingPlanView } from './soil-types.ts';
import { classChoices, type MainNutrient, nutrientChoices } from './soil-words.ts';
import { ClassMark } from './test-columns.tsx';
import { type WishPart, wishesWith } from './wishes.ts';

const needChoices = [
  { value: 'soil-test', text: say('Recommendation by soil-test class') },
  { value: 'removal', text: say('Removal at the expected yield') },
] as const;

const feed = (
  key: 'feedN_kg' | 'feedP2O5_kg' | 'feedK2O_kg',
  title: string,
  nutrient: MainNutrient,
  seasonId: string,
): Column<BudgetRow> =>
  quantity<BudgetRow>(key, title, {
    width: 122,
    total: 'sum',
    draw: (row) => (
      <Figure
        value={row[key]}
        unit="kg"
        digits={2}
        name={say('{title} of {row}', { title, row: row.code })}
        explain={() => client.feeding.explainBudget.query({ seasonId, bedId: row.bedId, nutrient })}
      />
    ),
  });

const columnsFor = (seasonId: string): readonly Column<BudgetRow>[] => [
  text('code', say('Bed'), { width: 84 }),
  text('crops', say('Plantings'), { width: 180 }),
  quantity('area_m2', say('Area'), { width: 84, total: 'sum' }),
  {
    ...choice<BudgetRow>('phosphorusClass', say('P class'), classChoices, {
      width: 106,
      draw: (row) => <ClassMark name={row.phosphorusClass} />,
    }),
  },
  {
    ...choice<BudgetRow>('potassiumClass', say('K class'), classChoices, {
      width: 106,
      draw: (row) => <ClassMark name={row.potassiumClass} />,
    }),
  },
  quantity('needN_kg', say('N need'), { width: 98, total: 'sum', digits: 2 }),
  quantity('supplyN_kg', say('N supply'), { width: 108, total: 'sum', digits: 2 }),
  feed('feedN_kg', say('N to feed'), 'N', seasonId),
  quantity('needP2O5_kg', say('P₂O₅ need'), { width: 96, total: 'sum', digits: 2, shown: false }),
  quantity('supplyP2O5_kg', say('P₂O₅ supply'), { width: 104, total: 'sum', digits: 2, shown: false }),
  feed('feedP2O5_kg', say('P₂O₅ to feed'), 'P2O5', seasonId),
  quantity('needK2O_kg', say('K₂O need'), { width: 96, total: 'sum', digits: 2, shown: false }),
  quantity('supplyK2O_kg', say('K₂O supply'), { width: 104, total: 'sum', digits: 2, shown: false }),
  feed('feedK2O_kg', say('K₂O to feed'), 'K2O', seasonId),
  text('surplus', say('Surplus'), {
    width: 110,
    hint: say('More than twice the need is there already; phosphate from compost is the usual one'),
  }),
];
const rowId = (row: BudgetRow): string => row.bedId;

/** Need against supply, bed by bed: what is still to be fed. */
export function BudgetTab({
  tabs,
  plan,
  season,
}: {
  readonly tabs: ReactNode;
  readonly plan: FeedingPlanView;
  readonly season: ReactNode;
}) {
  const { seasonId } = plan.season;
  const budget = useRead(api.feeding.budget, { seasonId });
  const wish = useChange(api.feeding.setPlan);
  const [bedId, setBed] = useQueryValue('bed');
  const [asked, setNutrient] = useQueryValue('nutrient');
  const nutrient: MainNutrient = nutrientChoices.find((each) => each.value === asked)?.value ?? 'N';
  const columns = useMemo(() => columnsFor(seasonId), [seasonId]);
  const set = (part: WishPart) => void wish.run(wishesWith(plan.plan, part));
  const open = budget.state === 'ready' ? budget.data.find((row) => row.bedId === bedId) : undefined;
  return (
    <Page
      title={say('Soil')}
      lead={say('What the season’s plantings ask of each bed, against what is there or coming.')}
      tabs={tabs}
      sheet={open === undefined ? null : <BudgetSheet row={open} seasonId={seasonId} onClose={() => setBed(undefined)} />}
    >
      <div className="soil-wishes">
        {season}
        <ChoiceField
          label={say('Need by')}
          value={plan.plan.needBy}
          choices={needChoices}
          onChange={(needBy) => set({ needBy })}
        />
        <QuantityField
          label={say('Nitrate-N of the water, mg/L')}
          unit=""
          value={plan.plan.waterNitrateN_mg_per_L}
          onChange={(waterNitrateN_mg_per_L) => set({ waterNitrateN_mg_per_L })}
        />
        <QuantityField
          label={say('Season’s water')}
          unit="L_per_m2"
          value={plan.plan.water_L_per_m2}
          onChange={(water_L_per_m2) => set({ water_L_per_m2 })}
        />
        <ChoiceField
          label={say('Chart of')}
          value={nutrient}
          choices={nutrientChoices}
          onChange={(name) => setNutrient(name === 'N' ? undefined : name)}
        />
      </div>
      {wish.failure === undefined ? null : (
        <p className="failed" role="alert">
          {wish.failure.message}
        </p>
      )}
      <Shown reading={budget}>
        {(rows) => {
          const bars = chartBars(rows, nutrient);
          return (
            <>
              {bars.rows.length === 0 ? null : (
                <Chart
                  title={say('{more} by {by}: supply stacked, need as a line', {
                    more: nutrient === 'N' ? 'N' : nutrient === 'P2O5' ? 'P₂O₅' : 'K₂O',
                    by: bars.by,
                  })}
                  rows={bars.rows}
                  x={{ name: bars.by === 'bed' ? say('Bed') : say('Block'), text: (row) => row.name }}
                  unit="g_per_m2"
                  height={230}
                  series={[
                    ...partNames(bars.rows).map(([at, name]) => ({
                      name,
                      as: 'bar' as const,
                      read: (row: (typeof bars.rows)[number]) => row.parts[at] ?? 0,
                    })),
                    { name: say('Still to feed'), as: 'bar', hue: 6, read: (row) => row.feed_g_per_m2 },
                    { name: say('Need'), as: 'line', hue: 7, read: (row) => row.need_g_per_m2 },
                  ]}
                />
              )}
              <Grid
                name="Nutrient budget"
                rows={rows}
                columns={columns}
                rowId={rowId}
                onOpen={(row) => setBed(row.bedId)}
                empty={
                  <Empty title={say('No beds yet')}>
                    {say('Build beds in Beds and plant them in Season; their budget appears here.')}
                  </Empty>
                }
              />
            </>
          );
        }}
      </Shown>
    </Page>
  );
}
