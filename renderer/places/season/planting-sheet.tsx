import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Shown } from '../../app/states.tsx';
import { Chart } from '../../charts/chart.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { say, sayWith } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import type { BoardData, PlantingSheetData } from './board-data.ts';
import { PlaceForm } from './place-form.tsx';
import { PlanBesideActual } from './plan-beside-actual.tsx';

/** One planting: dates planned and real, its range, seed and trays, where it stands, what it should give. */
export function PlantingSheet(props: { readonly plantingId: string; readonly data: BoardData; readonly onClose: () => void }) {
  const planting = useRead(api.plantings.one, { plantingId: props.plantingId });
  const title = planting.state === 'ready' ? titleOf(planting.data) : say('Planting');
  return (
    <Sheet title={title} onClose={props.onClose}>
      <Shown reading={planting}>{(found) => <SheetOf key={found.record.revision} found={found} {...props} />}</Shown>
    </Sheet>
  );
}

const titleOf = ({ cropName, record }: PlantingSheetData): string =>
  record.number > 1 ? say('{cropName}, no. {number}', { cropName, number: record.number }) : cropName;

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
  const codes = found.spans.map((span) => data.beds.find((bed) => bed.id === span.bedId)?.code ?? say('a bed no longer there'));
  return (
    <>
      <dl className="facts">
        <dt>{say('Beds')}</dt>
        <dd>{codes.length === 0 ? say('none yet') : codes.join(', ')}</dd>
        <dt>{say('Plants')}</dt>
        <dd>{record.plants}</dd>
        <dt>{say('First harvest')}</dt>
        <dd>
          {say('{early} – {late}, likely {likely}', {
            early: reader.date(range.early),
            late: reader.date(range.late),
            likely: reader.date(range.likely),
          })}{' '}
          <Figure of={found.rangeWorking} />
        </dd>
        {seed === null ? null : (
          <>
            <dt>{say('Seed')}</dt>
            <dd>
              <Figure of={seed.seedWorking} />
              {seed.seed_g === null ? '' : ` (${reader.print(seed.seed_g / 1000, 'kg')})`}
            </dd>
            {seed.trays === null ? null : (
              <>
                <dt>{say('Trays of {cellsPerTray}', { cellsPerTray: seed.trays.cellsPerTray })}</dt>
                <dd>
                  {sayWith('{figure}, {mix} of mix', {
                    figure: <Figure of={seed.trays.working} />,
                    mix: reader.print(seed.trays.mix_L, 'L'),
                  })}
                </dd>
              </>
            )}
          </>
        )}
        <dt>{say('Yield')}</dt>
        <dd>
          {record.yieldTypical === null
            ? say('not known: enter it below or in Library, Crops')
            : say('{yieldLow} – {yieldHigh} {yieldUnit}, typically {yieldTypical}', {
                yieldLow: round(record.yieldLow ?? record.yieldTypical),
                yieldHigh: round(record.yieldHigh ?? record.yieldTypical),
                yieldUnit: record.yieldUnit,
                yieldTypical: round(record.yieldTypical),
              })}
        </dd>
      </dl>
      <PlanBesideActual found={found} />
      <PlaceForm found={found} data={data} />
      {weeks.length === 0 ? null : (
        <Chart
          title={say('Expected harvest by week, {yieldUnit}', { yieldUnit: record.yieldUnit })}
          rows={weeks}
          x={{ name: say('Week of'), text: (week) => reader.date(week.week) }}
          unit=""
          series={[{ name: 'typical', as: 'bar', read: (week) => week.typical }]}
          bands={[{ name: say('low to high'), low: (week) => week.low, high: (week) => week.high }]}
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
              .run({ plantingIds: [record.id] }, say('Removed the planting. Undo brings it back.'))
              .then((done) => (done === undefined ? undefined : onClose()))
          }
        >
          {say('Remove')}
        </Button>
      </div>
      {remove.failure === undefined ? null : <p className="failed">{remove.failure.message}</p>}
    </>
  );
}

/** Three digits are more than a yield is known to. */
const round = (value: number): number => Number(value.toPrecision(2));
