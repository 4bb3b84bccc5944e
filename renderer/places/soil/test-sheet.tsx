import { explainReading } from '../../../planner/fertility/explain-reading.ts';
import type { TestMethod } from '../../../planner/fertility/test-class.ts';
import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { Chart } from '../../charts/chart.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import type { SoilTestRow } from './soil-types.ts';
import { methodChoices } from './soil-words.ts';
import { ClassMark } from './test-columns.tsx';

/** One laboratory sheet: how each figure reads, and the years before it. */
export function TestSheet({
  test,
  onEdit,
  onClose,
}: {
  readonly test: SoilTestRow;
  readonly onEdit: () => void;
  readonly onClose: () => void;
}) {
  const reader = useReader();
  const remove = useChange(api.soilTests.remove);
  const method = methodChoices.find((each) => each.value === test.method)?.text ?? test.method;
  return (
    <Sheet
      title={test.sample === '' ? say('Soil test') : test.sample}
      onClose={onClose}
      foot={
        <div className="row">
          <Button icon="edit" onClick={onEdit}>
            {say('Change')}
          </Button>
          <Button
            icon="bin"
            weight="harm"
            disabled={remove.busy}
            onClick={() =>
              void remove.run({ testIds: [test.testId] }, say('Soil test removed. Undo brings it back.')).then(onClose)
            }
          >
            {say('Remove')}
          </Button>
        </div>
      }
    >
      <dl className="facts">
        <dt>{say('Sampled')}</dt>
        <dd>{reader.date(test.date)}</dd>
        <dt>{say('Laboratory')}</dt>
        <dd>{test.laboratory === '' ? '–' : test.laboratory}</dd>
        <dt>{say('Method')}</dt>
        <dd>{method}</dd>
        <dt>{say('pH')}</dt>
        <dd>
          {reader.print(test.ph, '', 2)}
          {test.bufferPh === null
            ? ''
            : say(', buffer {bufferPh} ({bufferMethod})', {
                bufferPh: reader.print(test.bufferPh, '', 2),
                bufferMethod: test.bufferMethod ?? say('method not named'),
              })}
        </dd>
        <dt>{say('Organic matter')}</dt>
        <dd>{reader.print(test.organicMatterShare, 'share', 2)}</dd>
        <dt>{say('CEC')}</dt>
        <dd>{test.cec_meq_per_100g === null ? '–' : say('{cec} meq/100 g', { cec: test.cec_meq_per_100g })}</dd>
        <dt>{say('Salts (EC)')}</dt>
        <dd>
          {reader.print(test.ec_dS_per_m, 'dS_per_m', 2)}
          {test.saltReading === null ? '' : `, ${test.saltReading}`}
        </dd>
        <dt>{say('Beds')}</dt>
        <dd>{test.beds.map((each) => each.code).join(', ')}</dd>
      </dl>
      {(test.lead_mg_per_kg ?? 0) > 0 ? <Cautions ids={['lead-in-soil']} /> : null}
      <table className="lines">
        <caption>{say('Readings on the scale of {method}', { method })}</caption>
        <thead>
          <tr>
            <th scope="col">{say('Nutrient')}</th>
            <th scope="col" className="number">
              {say('mg/kg')}
            </th>
            <th scope="col">{say('Class')}</th>
            <th scope="col">{say('As entered')}</th>
          </tr>
        </thead>
        <tbody>
          {test.values.map((each) => (
            <tr key={each.nutrient}>
              <td>{each.nutrient}</td>
              <td className="number">
                <Figure
                  value={each.value_mg_per_kg}
                  unit=""
                  name={`${each.nutrient}, mg/kg`}
                  explain={() =>
                    explainReading({
                      nutrient: each.nutrient,
                      method: test.method as TestMethod,
                      entered: `${each.enteredValue} ${each.enteredUnit}`,
                      value_mg_per_kg: each.value_mg_per_kg,
                    })
                  }
                />
              </td>
              <td>
                {each.reading === null ? (
                  <span className="faint">{say('no scale known')}</span>
                ) : (
                  <ClassMark name={each.reading.class} />
                )}
                {each.warning === null ? null : <div className="small">{each.warning}</div>}
              </td>
              <td>
                {each.enteredValue} {each.enteredUnit}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className="small faint">
        {[...new Set(test.values.flatMap((each) => (each.reading === null ? [] : [each.reading.source])))].map(
          (each) => `${each}. `,
        )}
      </p>
      {test.beds[0] === undefined ? null : <Trend bedId={test.beds[0].bedId} code={test.beds[0].code} method={test.method} />}
      {test.note === '' ? null : <p>{test.note}</p>}
    </Sheet>
  );
}

function Trend({ bedId, code, method }: { readonly bedId: string; readonly code: string; readonly method: string }) {
  const reader = useReader();

  const trend = useRead(api.soilTests.trend, { bedId });
  if (trend.state !== 'ready') return null;
  // figures of another method lie on another scale: they are left out
  const same = trend.data.filter((each) => each.method === method);
  if (same.length < 2)
    return <p className="soft small">{say('One sheet by this method so far; the trend starts with the second.')}</p>;
  const of = (name: string) => (row: SoilTestRow) => row.values.find((each) => each.nutrient === name)?.value_mg_per_kg ?? null;
  return (
    <>
      <Chart
        title={say('P and K of {code} over the years, mg/kg', { code })}
        rows={same}
        x={{ name: say('Sampled'), text: (row) => reader.date(row.date, 'month') }}
        unit=""
        height={190}
        series={[
          { name: 'P', as: 'line', read: of('P') },
          { name: 'K', as: 'line', read: of('K') },
        ]}
      />
      <Chart
        title={say('pH of {code} over the years', { code })}
        rows={same}
        x={{ name: say('Sampled'), text: (row) => reader.date(row.date, 'month') }}
        unit=""
        height={150}
        series={[{ name: 'pH', as: 'line', read: (row) => row.ph }]}
      />
    </>
  );
}
