import { type ReactNode, useMemo, useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { messageFor } from '../../../planner/units/print-message.ts';
import type { Reader } from '../../../planner/units/reader.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api, client } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { type Column, choice, count, date, derived, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { sayKnown } from '../../words/known.ts';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import type { FeedingPlanView, PhRow } from './soil-types.ts';
import { actChoices } from './soil-words.ts';
import { useToday } from './use-today.ts';
import { type WishPart, wishesWith } from './wishes.ts';

const columnsFor = (seasonId: string, reader: Reader): readonly Column<PhRow>[] => [
  text('code', say('Bed'), { width: 84 }),
  quantity('area_m2', say('Area'), { width: 90, total: 'sum' }),
  date('testDate', say('Tested'), { width: 112 }),
  quantity('ph', 'pH', { width: 60, digits: 2 }),
  quantity('bufferPh', say('Buffer'), { width: 70, digits: 2 }),
  quantity('targetPh', say('Target'), { width: 70, digits: 2 }),
  choice('act', say('Wants'), actChoices, { width: 96 }),
  text('material', say('Material'), { width: 170 }),
  quantity('dose_kg', say('Dose'), {
    width: 110,
    total: 'sum',
    draw: (row) =>
      row.act === 'none' ? null : (
        <Figure
          value={row.dose_kg}
          unit="kg"
          name={say('{material} for {row}', { material: row.material, row: row.code })}
          explain={() => client.feeding.explainPh.query({ seasonId, bedId: row.bedId })}
        />
      ),
  }),
  count('applications', say('In parts'), { width: 84, hint: say('Half a year apart where it is much') }),
  derived('text', 'methodText', say('By'), (row) => messageFor(sayKnown(row.method), reader.system, reader.locale), {
    width: 190,
  }),
  derived('text', 'noteText', say('Note'), (row) => sayKnown(row.note), { width: 360 }),
];
const rowId = (row: PhRow): string => row.bedId;

/** Lime or sulfur for each bed, never both, by the buffer of its sheet or, as a rough guide, its texture. */
export function PhTab({
  tabs,
  plan,
  season,
}: {
  readonly tabs: ReactNode;
  readonly plan: FeedingPlanView;
  readonly season: ReactNode;
}) {
  const reader = useReader();
  const { seasonId } = plan.season;
  const rows = useRead(api.feeding.ph, { seasonId });
  const today = useToday();
  const wish = useChange(api.feeding.setPlan);
  const planPh = useChange(api.feeding.planPh);
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [when, setWhen] = useState<IsoDate | null>(null);
  const columns = useMemo(() => columnsFor(seasonId, reader), [seasonId, reader]);
  const limes = plan.materials.filter((each) => (each.neutralisingShare ?? 0) > 0.3);
  const sulfurs = plan.materials.filter((each) => each.materialId.startsWith('sulfur'));
  const set = (part: WishPart) => void wish.run(wishesWith(plan.plan, part));
  const wanting = rows.state === 'ready' ? rows.data.filter((row) => row.act !== 'none') : [];
  const onCards = chosen.length === 0 ? wanting : wanting.filter((row) => chosen.includes(row.bedId));
  const start = when ?? today;
  return (
    <Page
      title={say('Soil')}
      lead={say('Lime or sulfur for each bed’s pH, corrected for the worth of the material, depth and area.')}
      tabs={tabs}
    >
      <div className="soil-wishes">
        {season}
        <QuantityField
          label={say('Wanted pH')}
          unit=""
          path="targetPh"
          value={plan.plan.targetPh}
          onChange={(targetPh) => targetPh === null || set({ targetPh })}
        />
        <ChoiceField
          label={say('Lime')}
          value={plan.plan.limeMaterialId ?? ''}
          choices={[
            { value: '', text: say('None chosen') },
            ...limes.map((each) => ({
              value: each.materialId,
              text: say('{each} (worth {neutralisingShare})', {
                each: each.name,
                neutralisingShare: reader.print((each.neutralisingShare ?? 0) * (each.finenessShare ?? 1), 'share', 2),
              }),
            })),
          ]}
          onChange={(id) => set({ limeMaterialId: id === '' ? null : id })}
        />
        <ChoiceField
          label={say('Sulfur')}
          value={plan.plan.sulfurMaterialId ?? ''}
          choices={[
            { value: '', text: say('None chosen') },
            ...sulfurs.map((each) => ({ value: each.materialId, text: each.name })),
          ]}
          onChange={(id) => set({ sulfurMaterialId: id === '' ? null : id })}
        />
        <DateField label={say('First part on')} value={start} onChange={setWhen} />
        <Button
          weight="main"
          disabled={onCards.length === 0 || start === null || planPh.busy}
          onClick={() =>
            start === null ||
            void planPh.run(
              { seasonId, bedIds: onCards.map((row) => row.bedId), date: start },
              say('On the cards of {onCards} beds.', { onCards: onCards.length }),
            )
          }
        >
          {say('Put on {onCards} dose cards', { onCards: onCards.length })}
        </Button>
      </div>
      {(wish.failure ?? planPh.failure) === undefined ? null : (
        <p className="failed" role="alert">
          {(wish.failure ?? planPh.failure)?.message}
        </p>
      )}
      <Cautions ids={['lime-sulfur-ash']} folded />
      <Shown reading={rows}>
        {(all) => (
          <Grid
            name="Lime and sulfur"
            rows={all}
            columns={columns}
            rowId={rowId}
            onSelect={setChosen}
            empty={<Empty title={say('No beds yet')}>{say('Build beds in Beds, then enter their soil tests.')}</Empty>}
          />
        )}
      </Shown>
    </Page>
  );
}
