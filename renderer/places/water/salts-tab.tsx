import { useMemo, useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Shown } from '../../app/states.tsx';
import { api, client } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { type Column, count, flag, quantity, share, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import { useDemandChoice } from './demand-data.ts';

type Salts = OutputOf<typeof api.waterDemand.salts>;
type CropRow = Salts['crops'][number];
type BedRow = Salts['closedBeds'][number];

const cropColumns = (ecw_dS_per_m: number | null): readonly Column<CropRow>[] => [
  text('name', say('Crop'), { width: 180 }),
  quantity('threshold_dS_per_m', say('Threshold'), {
    hint: say('Salinity of the soil extract up to which the crop does not mind'),
  }),
  quantity('bears_dS_per_m', say('Bears'), { width: 120, hint: say('Soil extract at the share of the yield above') }),
  share('leachingShare', say('Leaching'), {
    hint: say('Share of the water that must drain through'),
    draw: (row) =>
      row.leachingShare === null || row.bears_dS_per_m === null || ecw_dS_per_m === null ? (
        '–'
      ) : (
        <Figure
          value={row.leachingShare}
          unit="share"
          name={say('Leaching for {row}', { row: row.name })}
          digits={2}
          explain={() => client.waterDemand.explainLeaching.query({ ecw_dS_per_m, ece_dS_per_m: row.bears_dS_per_m ?? 0 })}
        />
      ),
  }),
  share('yieldShare', say('Yield with it'), {
    width: 150,
    hint: say('At 15 to 20 % leaching, soil extract 1.5 times the water'),
  }),
  flag('tooSalty', say('Too salty')),
];
const cropId = (row: CropRow): string => row.cropId;

const bedColumns: readonly Column<BedRow>[] = [
  text('code', say('Bed'), { width: 80 }),
  text('kind', say('Kind'), { width: 90 }),
  quantity('threshold_dS_per_m', say('Threshold'), { width: 140, hint: say('Of the most tender crop of the season') }),
  quantity('soilWater_L', say('Water held'), { digits: 2 }),
  quantity('season_L', say('Given in a year'), { digits: 2 }),
  quantity('salts_g', say('Salts brought'), { digits: 2 }),
  quantity('before_L', say('Flush after'), {
    width: 140,
    digits: 2,
    hint: say('Water after which the soil water passes twice the threshold'),
  }),
  count('flushes', say('Flushes'), { width: 110, hint: say('In a year') }),
];
const bedId = (row: BedRow): string => row.bedId;

/** What the irrigation water brings in salts, and what to do about it. */
export function SaltsTab() {
  const { seasonId } = useDemandChoice();
  const reading = useRead(api.waterDemand.salts, { seasonId });
  return <Shown reading={reading}>{(salts) => <SaltsBody salts={salts} />}</Shown>;
}

function SaltsBody({ salts }: { readonly salts: Salts }) {
  const reader = useReader();
  const remove = useChange(api.waterDemand.removeSaltTest);
  return (
    <div className="stack">
      <div className="columns">
        <section className="panel stack">
          <h2>{say('Water test')}</h2>
          <TestForm />
          {salts.tests.length === 0 ? (
            <p className="soft">{say('No test yet. A meter in µS/cm reads a thousand times as much as one in dS/m.')}</p>
          ) : (
            <ul className="plain-list">
              {salts.tests.map((test) => (
                <li key={test.id} className="row">
                  {reader.date(test.date)} · {reader.print(test.value, 'dS_per_m', 3)} {test.point}
                  <Button weight="quiet" icon="bin" onClick={() => void remove.run({ testId: test.id }, say('Test taken away.'))}>
                    {say('Take away')}
                  </Button>
                </li>
              ))}
            </ul>
          )}
        </section>
        <section className="panel stack">
          <h2>{say('What it means')}</h2>
          {salts.ecw_dS_per_m === null ? (
            <p className="soft">{say('Enter the conductivity of the irrigation water to see what it asks for.')}</p>
          ) : (
            <dl className="facts">
              <dt>{say('Conductivity')}</dt>
              <dd>{reader.print(salts.ecw_dS_per_m, 'dS_per_m', 3)}</dd>
              <dt>{say('Restriction on use')}</dt>
              <dd>{salts.restriction}</dd>
              <dt>{say('Dissolved salts')}</dt>
              <dd>
                {salts.dissolved_mg_per_L === null
                  ? '–'
                  : say('{dissolved} mg/L', { dissolved: Math.round(salts.dissolved_mg_per_L) })}
              </dd>
            </dl>
          )}
          <p className="small soft">
            {say(
              'Source: FAO Irrigation and Drainage Paper 29, Tables 1 and 4, section 2.4. Rain that drains through leaches too and is not counted.',
            )}
          </p>
        </section>
      </div>
      <h2>
        {say('Crops of the season, for {yieldShare} of the yield', { yieldShare: reader.print(salts.yieldShare, 'share', 2) })}
      </h2>
      <SaltsCrops salts={salts} />
      {salts.closedBeds.length === 0 ? null : (
        <>
          <h2>{say('Beds with standing water below')}</h2>
          <p className="soft">
            {say(
              'A closed reservoir leaches nothing. Flush from the top until the overflow reads near the supply, at least once a season (common practice, no source).',
            )}
          </p>
          <Grid name="Flushing" rows={salts.closedBeds} columns={bedColumns} rowId={bedId} />
        </>
      )}
    </div>
  );
}

function SaltsCrops({ salts }: { readonly salts: Salts }) {
  const columns = useMemo(() => cropColumns(salts.ecw_dS_per_m), [salts.ecw_dS_per_m]);
  return <Grid name="Salts by crop" rows={salts.crops} columns={columns} rowId={cropId} />;
}

function TestForm() {
  const add = useChange(api.waterDemand.addSaltTest);
  const [ecw, setEcw] = useState<number | null>(null);
  const [date, setDate] = useState<IsoDate | null>(null);
  const [point, setPoint] = useState('');
  const save = async (): Promise<void> => {
    const done = await add.run(
      { date: date ?? '', point, ecw_dS_per_m: ecw ?? Number.NaN, laboratory: '' },
      say('Water test kept.'),
    );
    if (done === undefined) return;
    setEcw(null);
    setPoint('');
  };
  return (
    <Form onSave={() => void save()} failure={add.failure} paths={['ecw_dS_per_m', 'date', 'point']}>
      <div className="form-pair">
        <QuantityField label={say('Conductivity')} name="ecw_dS_per_m" value={ecw} onChange={setEcw} needed />
        <DateField label={say('Date')} path="date" value={date} onChange={setDate} needed />
      </div>
      <TextField label={say('Where it was taken')} path="point" value={point} onChange={setPoint} />
      <Button type="submit" disabled={add.busy}>
        {say('Keep the test')}
      </Button>
    </Form>
  );
}
