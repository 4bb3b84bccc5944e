import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { say } from '../../words/say.ts';
import { quarters } from './quarters.ts';

const whats = [
  { value: 'wanted', text: say('What each bed wants now') },
  { value: 'first-fill', text: say('The whole fill of each bed') },
] as const;

/** Cards to take outdoors: how many buckets and barrows of each material, bed by bed. */
export function CardsTab({ bedIds }: { readonly bedIds: readonly string[] }) {
  const reader = useReader();
  const [what, setWhat] = useState<(typeof whats)[number]['value']>('wanted');
  const cards = useRead(api.beds.cards, { bedIds: [...bedIds], what });
  return (
    <Shown reading={cards}>
      {({ bucket_L, barrow_L, cards: all }) => {
        const shown = all.filter((card) => card.lines.length > 0);
        return (
          <div className="stack">
            <div className="row no-print">
              <ChoiceField label={say('On the cards')} value={what} choices={whats} onChange={setWhat} />
              <Button icon="print" onClick={() => window.print()}>
                {say('Print')}
              </Button>
            </div>
            <p className="soft">
              {say('Bucket {bucket}, barrow {barrow}: set in Farm. Rounded to quarters. {shown} of {all} beds.', {
                bucket: reader.print(bucket_L, 'L'),
                barrow: reader.print(barrow_L, 'bulk_L'),
                shown: shown.length,
                all: all.length,
              })}
            </p>
            <Cautions ids={['saturated-weight-lifting', 'dust-perlite-silica']} folded />
            {shown.length === 0 ? (
              <Empty title={say('No card to print')}>{say('None of these beds wants anything.')}</Empty>
            ) : null}
            <div className="bed-cards">
              {shown.map((card) => (
                <article className="bed-card" key={card.bedId}>
                  <h2>{card.code}</h2>
                  <p className="small soft">
                    {say('{design}, {block}, {area}, fill to {fillDepth}', {
                      design: card.design,
                      block: card.block,
                      area: reader.print(card.area_m2, 'm2'),
                      fillDepth: reader.print(card.fillDepth_m, 'm_short'),
                    })}
                  </p>
                  <table className="lines">
                    <thead>
                      <tr>
                        <th scope="col">{say('Material')}</th>
                        <th scope="col" className="number">
                          {say('Loose')}
                        </th>
                        <th scope="col" className="number">
                          {say('Buckets')}
                        </th>
                        <th scope="col" className="number">
                          {say('Barrows')}
                        </th>
                      </tr>
                    </thead>
                    <tbody>
                      {card.lines.toReversed().map((line) => (
                        <tr key={line.material}>
                          <td>
                            {line.material}
                            {line.dig_L === null ? null : (
                              <div className="small soft">
                                {say('dig {dig} from the bank', { dig: reader.print(line.dig_L, 'bulk_L') })}
                              </div>
                            )}
                          </td>
                          <td className="number">{reader.print(line.loose_L, 'bulk_L')}</td>
                          <td className="number">{quarters(line.buckets)}</td>
                          <td className="number">{quarters(line.barrows)}</td>
                        </tr>
                      ))}
                    </tbody>
                  </table>
                </article>
              ))}
            </div>
          </div>
        );
      }}
    </Shown>
  );
}
