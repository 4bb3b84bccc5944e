import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type InputOf, useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import { clockText } from './clock-text.ts';

/** Size and times of a batch, and the harvests near it. */
export function TeaPlan({ input }: { readonly input: InputOf<typeof api.compost.planTea> }) {
  const reader = useReader();
  const plan = useRead(api.compost.planTea, input);
  return (
    <Shown reading={plan}>
      {(found) => (
        <>
          <dl className="figures tea-figures">
            <div>
              <dt>{say('Tea to brew')}</dt>
              <dd>
                <Figure of={found.working} />
              </dd>
            </div>
            <div>
              <dt>{say('Water to add')}</dt>
              <dd>{reader.print(found.water_L, 'L')}</dd>
            </div>
            <div>
              <dt>{say('Compost')}</dt>
              <dd>{reader.print(found.compost_kg, 'kg')}</dd>
            </div>
            <div>
              <dt>{say('Tank fillings')}</dt>
              <dd>{found.fillings}</dd>
            </div>
            <div>
              <dt>{say('Air off')}</dt>
              <dd>{clockText(found.brewedAt, reader)}</dd>
            </div>
            <div>
              <dt>{say('Use by')}</dt>
              <dd>{clockText(found.latestUseAt, reader)}</dd>
            </div>
          </dl>
          <p className="soft small">
            {say('{beds} beds, {beds2}{more}', {
              beds: found.beds.length,
              beds2: found.beds
                .slice(0, 8)
                .map((bed) => `${bed.code} ${reader.print(bed.volume_L, 'L')}`)
                .join(', '),
              more: found.beds.length > 8 ? ' …' : '',
            })}
          </p>
          {found.harvests.length === 0 ? (
            <p className="soft">{say('Nothing grows on these beds that day.')}</p>
          ) : (
            <table className="lines">
              <caption>{say('Days from drench to harvest')}</caption>
              <thead>
                <tr>
                  <th scope="col">{say('Bed')}</th>
                  <th scope="col">{say('Crop')}</th>
                  <th scope="col">{say('First harvest')}</th>
                  <th scope="col" className="number">
                    {say('Days')}
                  </th>
                  <th scope="col">{say('Wanted')}</th>
                </tr>
              </thead>
              <tbody>
                {found.harvests.map((each) => (
                  <tr key={`${each.code} ${each.crop}`}>
                    <td>{each.code}</td>
                    <td>{each.crop}</td>
                    <td>{reader.date(each.firstHarvest)}</td>
                    <td className="number">{each.days}</td>
                    <td>
                      {each.wanted_days === null ? (
                        say('no additives: see the caution')
                      ) : (
                        <span className="state-mark" data-tone={each.short ? 'stop' : 'good'}>
                          {say('{wanted} days{more}', { wanted: each.wanted_days, more: each.short ? say(': too soon') : '' })}
                        </span>
                      )}
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          )}
        </>
      )}
    </Shown>
  );
}
