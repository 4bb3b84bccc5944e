import { useState } from 'react';
import { Sheet } from '../../app/sheet.tsx';
import { Shown } from '../../app/states.tsx';
import { Chart } from '../../charts/chart.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { say } from '../../words/say.ts';
import { useDemandChoice } from './demand-data.ts';

type Watering = 'as-planned' | 'rain-only' | 'when-due';

const wateringChoices: readonly { readonly value: Watering; readonly text: string }[] = [
  { value: 'as-planned', text: say('As it is watered now') },
  { value: 'when-due', text: say('Filled whenever it is due') },
  { value: 'rain-only', text: say('Rain only') },
];

/** One bed through a year: what is missing, what stands below, what was given and lost. */
export function BedWaterSheet({ bedId, onClose }: { readonly bedId: string; readonly onClose: () => void }) {
  const { seasonId, year } = useDemandChoice();
  const [watering, setWatering] = useState<Watering>('as-planned');
  const reading = useRead(api.waterDemand.trace, { seasonId, year, bedId, watering });
  const reader = useReader();
  return (
    <Sheet
      title={reading.state === 'ready' ? say('Water of {data}', { data: reading.data.code }) : say('Water of the bed')}
      onClose={onClose}
    >
      <ChoiceField label={say('Watered')} value={watering} choices={wateringChoices} onChange={setWatering} />
      <Shown reading={reading}>
        {(bed) => (
          <div className="stack">
            <dl className="facts">
              <dt>{say('Weather of')}</dt>
              <dd>{bed.year}</dd>
              <dt>{say('Days short of water')}</dt>
              <dd>{bed.totals.stressDays}</dd>
              <dt>{say('Given')}</dt>
              <dd>{reader.print(bed.totals.given_L, 'L', 2)}</dd>
              <dt>{say('Used')}</dt>
              <dd>{reader.print(bed.totals.used_L, 'L', 2)}</dd>
              <dt>{say('Rain on the bed')}</dt>
              <dd>{reader.print(bed.totals.rain_L, 'L', 2)}</dd>
              <dt>{say('Drained away')}</dt>
              <dd>{reader.print(bed.totals.drained_L, 'L', 2)}</dd>
              <dt>{say('Run over')}</dt>
              <dd>{reader.print(bed.totals.overflow_L, 'L', 2)}</dd>
              <dt>{say('From open water')}</dt>
              <dd>{reader.print(bed.totals.evaporated_L, 'L', 2)}</dd>
              {bed.plantings.map((planting) => (
                <PlantingFact key={`${planting.crop} ${planting.inBedDate}`} planting={planting} />
              ))}
            </dl>
            <Chart
              title={say('Missing in the rooted soil')}
              rows={bed.days}
              x={{ name: say('Day'), text: (day) => reader.date(day.date, 'day') }}
              unit="L"
              height={220}
              series={[
                { name: say('Missing'), as: 'area', read: (day) => day.missing_L },
                { name: say('Allowed before the crop is short'), as: 'line', read: (day) => day.allowed_L },
              ]}
              note={say('When what is missing goes past the line, the crop stands short of water.')}
            />
            {bed.store.free === null ? null : (
              <Chart
                title={bed.store.free.kind === 'basin' ? say('Water in the basin') : say('Water in the reservoir')}
                rows={bed.days}
                x={{ name: say('Day'), text: (day) => reader.date(day.date, 'day') }}
                unit="L"
                height={180}
                series={[{ name: say('Standing'), as: 'area', read: (day) => day.free_L }]}
              />
            )}
            <Chart
              title={say('Given and lost')}
              rows={bed.days}
              x={{ name: say('Day'), text: (day) => reader.date(day.date, 'day') }}
              unit="L"
              height={180}
              series={[
                { name: say('Given'), as: 'line', read: (day) => day.given_L },
                { name: say('Drained or run over'), as: 'line', read: (day) => day.lost_L },
              ]}
            />
          </div>
        )}
      </Shown>
    </Sheet>
  );
}

function PlantingFact({
  planting,
}: {
  readonly planting: { readonly crop: string; readonly inBedDate: string; readonly clearDate: string; readonly share: number };
}) {
  const reader = useReader();
  return (
    <>
      <dt>{planting.crop}</dt>
      <dd>
        {say('{inBedDate} to {clearDate}, {share} of the bed', {
          inBedDate: reader.date(planting.inBedDate),
          clearDate: reader.date(planting.clearDate),
          share: reader.print(planting.share, 'share', 2),
        })}
      </dd>
    </>
  );
}
