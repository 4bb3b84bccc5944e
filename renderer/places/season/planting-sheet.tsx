import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Shown } from '../../app/states.tsx';
import { Chart } from '../../charts/chart.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { Figure } from '../../working/figure.tsx';
import type { BoardData, PlantingSheetData } from './board-data.ts';
import { PlaceForm } from './place-form.tsx';
import { PlanBesideActual } from './plan-beside-actual.tsx';

/** One planting: dates planned and real, its range, seed and trays, where it stands, what it should give. */
export function PlantingSheet(props: { readonly plantingId: string; readonly data: BoardData; readonly onClose: () => void }) {
  const planting = useRead(api.plantings.one, { plantingId: props.plantingId });
  const title = planting.state === 'ready' ? titleOf(planting.data) : 'Planting';
  return (
    <Sheet title={title} onClose={props.onClose}>
      <Shown reading={planting}>{(found) => <SheetOf key={found.record.revision} found={found} {...props} />}</Shown>
    </Sheet>
  );
}

const titleOf = ({ cropName, record }: PlantingSheetData): string =>
  record.number > 1 ? `${cropName}, no. ${record.number}` : cropName;

function SheetOf({
  found,
  data,
  onClose,
}: {
  readonly found: PlantingSheetData;
  readonly data: BoardData;
  readonly onClose: () => void;
}) {
  const reader = useReader();
  const remove = useChange(api.plantings.remove);
  const { record, range, seed, weeks } = found;
  const codes = found.spans.map((span) => data.beds.find((bed) => bed.id === span.bedId)?.code ?? 'a bed no longer there');
  return (
    <>
      <dl className="facts">
        <dt>Beds</dt>
        <dd>{codes.length === 0 ? 'none yet' : codes.join(', ')}</dd>
        <dt>Plants</dt>
        <dd>{record.plants}</dd>
        <dt>First harvest</dt>
        <dd>
          {reader.date(range.early)} – {reader.date(range.late)}, likely {reader.date(range.likely)}{' '}
          <Figure of={found.rangeWorking} />
        </dd>
        {seed === null ? null : (
          <>
            <dt>Seed</dt>
            <dd>
              <Figure of={seed.seedWorking} />
              {seed.seed_g === null ? '' : ` (${reader.print(seed.seed_g / 1000, 'kg')})`}
            </dd>
            {seed.trays === null ? null : (
              <>
                <dt>Trays of {seed.trays.cellsPerTray}</dt>
                <dd>
                  <Figure of={seed.trays.working} />, {reader.print(seed.trays.mix_L, 'L')} of mix
                </dd>
              </>
            )}
          </>
        )}
        <dt>Yield</dt>
        <dd>
          {record.yieldTypical === null
            ? 'not known: enter it below or in Library, Crops'
            : `${round(record.yieldLow ?? record.yieldTypical)} – ${round(record.yieldHigh ?? record.yieldTypical)} ${record.yieldUnit}, typically ${round(record.yieldTypical)}`}
        </dd>
      </dl>
      <PlanBesideActual found={found} />
      <PlaceForm found={found} data={data} />
      {weeks.length === 0 ? null : (
        <Chart
          title={`Expected harvest by week, ${record.yieldUnit}`}
          rows={weeks}
          x={{ name: 'Week of', text: (week) => reader.date(week.week) }}
          unit=""
          series={[{ name: 'typical', as: 'bar', read: (week) => week.typical }]}
          bands={[{ name: 'low to high', low: (week) => week.low, high: (week) => week.high }]}
          height={170}
        />
      )}
      <div className="row">
        <Button
          weight="harm"
          icon="bin"
          disabled={remove.busy}
          onClick={() =>
            void remove
              .run({ plantingIds: [record.id] }, 'Removed the planting. Undo brings it back.')
              .then((done) => (done === undefined ? undefined : onClose()))
          }
        >
          Remove
        </Button>
      </div>
      {remove.failure === undefined ? null : <p className="failed">{remove.failure.message}</p>}
    </>
  );
}

/** Three digits are more than a yield is known to. */
const round = (value: number): string => String(Number(value.toPrecision(2)));
