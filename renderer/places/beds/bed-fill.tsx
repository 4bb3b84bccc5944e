import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import { BedRecipe } from './bed-recipe.tsx';
import type { WholeBed } from './bed-types.ts';
import { hatchColour } from './hatch-colour.ts';
import { hatchOf } from './layer-hatch.ts';

/** What a bed is filled with, what it wants, and its measured drops. */
export function BedFill({ bed, today }: { readonly bed: WholeBed; readonly today: IsoDate }) {
  const reader = useReader();
  return (
    <>
      <h3>{say('Layers, top down')}</h3>
      <table className="lines">
        <thead>
          <tr>
            <th scope="col">{say('Material')}</th>
            <th scope="col" className="number">
              {say('Depth')}
            </th>
            <th scope="col" className="number">
              {say('Settled')}
            </th>
            <th scope="col" className="number">
              {say('To place, loose')}
            </th>
          </tr>
        </thead>
        <tbody>
          {bed.layers
            .map((layer, at) => ({ ...layer, working: bed.workings?.layers[at] }))
            .toReversed()
            .map((layer) => (
              <tr key={`${layer.materialId} ${layer.from_m}`}>
                <td>
                  <span className="hatch-chip" style={{ background: hatchColour(hatchOf(layer)) }} />
                  {layer.name}
                </td>
                <td className="number">{reader.print(layer.to_m - layer.from_m, 'm_short')}</td>
                <td className="number">{reader.print(layer.settled_L, 'bulk_L')}</td>
                <td className="number">{layer.working === undefined ? '–' : <Figure of={layer.working} />}</td>
              </tr>
            ))}
        </tbody>
      </table>
      {bed.hasOwnRecipe ? <p className="small soft">{say('This bed has a fill of its own, other than its design’s.')}</p> : null}
      <BedRecipe key={JSON.stringify(bed.layers)} bed={bed} />
      <Needs bed={bed} today={today} />
      <Drop bed={bed} today={today} />
      <Done bed={bed} />
    </>
  );
}

function Needs({ bed, today }: { readonly bed: WholeBed; readonly today: IsoDate }) {
  const reader = useReader();
  const record = useChange(api.beds.recordFill);
  if (bed.needs.length === 0) return <p className="soft">{say('Nothing is wanted this season.')}</p>;
  return (
    <>
      <h3>{say('Wanted now')}</h3>
      <table className="lines">
        <thead>
          <tr>
            <th scope="col">{say('Material')}</th>
            <th scope="col" className="number">
              {say('Loose')}
            </th>
            <th scope="col" className="number">
              {say('From stock')}
            </th>
            <th scope="col" className="number">
              {say('To get')}
            </th>
          </tr>
        </thead>
        <tbody>
          {bed.needs.map((need) => (
            <tr key={`${need.kind} ${need.materialId}`}>
              <td>
                {need.material}
                <div className="small soft">{needText(need, reader)}</div>
              </td>
              <td className="number">
                {need.working === null ? reader.print(need.loose_L, 'bulk_L') : <Figure of={need.working} />}
              </td>
              <td className="number">{reader.print(need.fromStock_L, 'bulk_L')}</td>
              <td className="number">{reader.print(need.wanted_L, 'bulk_L')}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Button
        disabled={record.busy}
        onClick={() =>
          void record.run({ bedIds: [bed.row.bedId], date: today }, say('Recorded: {row} is filled.', { row: bed.row.code }))
        }
      >
        {say('Record as filled today')}
      </Button>
      {bed.needs.some((need) => need.wanted_L > 0 && !need.isOwn) ? (
        <p className="small soft">
          {say(
            'What does not lie in stock is taken as bought outside the books: it costs the lowest price on offer, and is marked so. Receive its purchase at Orders first where there is one.',
          )}
        </p>
      ) : null}
    </>
  );
}

function needText(need: WholeBed['needs'][number], reader: ReturnType<typeof useReader>): string {
  if (need.kind === 'first-fill') return say('First fill');
  const drop = reader.print(need.drop_m, 'm_short');
  return need.basis === 'measured'
    ? say('Top-up, measured drop {drop}', { drop })
    : say('Top-up, expected drop {drop} (settling: common practice, no source)', { drop });
}

function Drop({ bed, today }: { readonly bed: WholeBed; readonly today: IsoDate }) {
  const reader = useReader();
  const measure = useChange(api.beds.measure);
  const [drop_m, setDrop] = useState<number | null>(null);
  const [date, setDate] = useState<IsoDate | null>(today);
  const save = async (): Promise<void> => {
    const done = await measure.run(
      { bedIds: [bed.row.bedId], date: date ?? '', drop_m: drop_m ?? Number.NaN, note: '' },
      say('The drop is kept.'),
    );
    if (done !== undefined) setDrop(null);
  };
  return (
    <>
      <h3>{say('Measured drop')}</h3>
      <Form onSave={() => void save()} failure={measure.failure} paths={['drop_m', 'date']} label={say('Measured drop')}>
        <div className="form-pair">
          <QuantityField label={say('Below the wanted surface')} name="drop_m" value={drop_m} onChange={setDrop} needed />
          <DateField label={say('Measured')} path="date" value={date} onChange={setDate} />
        </div>
        <Button type="submit" disabled={measure.busy}>
          {say('Keep the drop')}
        </Button>
      </Form>
      {bed.measures.length === 0 ? null : (
        <ul className="small">
          {bed.measures.map((each) => (
            <li key={each.id}>
              {reader.date(each.date)}: {reader.print(each.drop_m, 'm_short')}
            </li>
          ))}
        </ul>
      )}
    </>
  );
}

const fillWords = { 'first-fill': say('First fill'), 'top-up': say('Top-up'), 'taken-out': say('Taken out') } as const;

function Done({ bed }: { readonly bed: WholeBed }) {
  const reader = useReader();
  if (bed.fills.length === 0) return <p className="soft">{say('It has not been filled yet.')}</p>;
  return (
    <>
      <h3>{say('What was put in')}</h3>
      <table className="lines">
        <tbody>
          {bed.fills.map((fill) => (
            <tr key={fill.fillId}>
              <td>{reader.date(fill.date)}</td>
              <td>{fillWords[fill.kind]}</td>
              <td>{fill.name}</td>
              <td className="number">{reader.print(fill.loose_L, 'bulk_L')}</td>
              <td className="number">
                {reader.money(fill.cost_minor)}
                {fill.unpriced_L === 0 ? null : (
                  <div className="small soft">
                    {say('no price known for {volume}', { volume: reader.print(fill.unpriced_L, 'bulk_L') })}
                  </div>
                )}
                {fill.priced_minor === 0 ? null : (
                  <div className="small soft">
                    {fill.priced_minor === fill.cost_minor
                      ? say('at the price of the day')
                      : say('of it {priced} at the price of the day', { priced: reader.money(fill.priced_minor) })}
                  </div>
                )}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}
