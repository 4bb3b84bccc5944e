import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type InputOf, useRead } from '../../client/use-read.ts';
import { sayKnown } from '../../words/known.ts';
import { say, sayWith } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';

/** What an entry would make: dates, plants, and what stands against it. */
export function EntryPreview({ input }: { readonly input: InputOf<typeof api.plantings.preview> }) {
  const reader = useReader();
  const preview = useRead(api.plantings.preview, input);
  if (preview.state === 'loading') return <p className="waiting">{say('Working it out…')}</p>;
  if (preview.state === 'failed') return <p className="failed">{preview.message}</p>;
  const { dates, plants, plantings, findings, unplaced, working, plantsWorking } = preview.data;
  return (
    <section className="panel findings" aria-label={say('What this makes')} aria-live="polite">
      <dl className="facts">
        {dates.sow === null ? null : (
          <>
            <dt>{say('Sow')}</dt>
            <dd>{reader.date(dates.sow)}</dd>
          </>
        )}
        <dt>{say('Into the bed')}</dt>
        <dd>{reader.date(dates.inBed)}</dd>
        <dt>{say('Harvest')}</dt>
        <dd>
          {sayWith('{firstHarvest} to {lastHarvest} ({figure})', {
            firstHarvest: reader.date(dates.firstHarvest),
            lastHarvest: reader.date(dates.lastHarvest),
            figure: <Figure of={working} />,
          })}
        </dd>
        <dt>{say('Bed free')}</dt>
        <dd>{reader.date(dates.free)}</dd>
        <dt>{say('Plants')}</dt>
        <dd>
          {plantsWorking === null || plantings.length > 1 ? (
            plants
          ) : (
            <Figure of={{ ...plantsWorking, result: { value: plants, unit: 'plants' } }} />
          )}
        </dd>
      </dl>
      {plantings.length < 2 ? null : (
        <table className="compare">
          <thead>
            <tr>
              <th scope="col">{say('No.')}</th>
              <th scope="col">{say('In the bed')}</th>
              <th scope="col">{say('First harvest')}</th>
              <th scope="col">{say('Bed')}</th>
              <th scope="col">{say('Plants')}</th>
            </tr>
          </thead>
          <tbody>
            {plantings.map((each, at) => (
              <tr key={each.inBed}>
                <td>{at + 1}</td>
                <td>{reader.date(each.inBed)}</td>
                <td>{reader.date(each.firstHarvest)}</td>
                <td>{each.beds.length === 0 ? say('none free') : each.beds.join(', ')}</td>
                <td>{each.plants}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
      {unplaced === 0 ? null : (
        <p className="small">
          {say(
            '{unplaced, plural, one {One planting has} other {# plantings have}} no bed yet; place {unplaced, plural, one {it} other {them}} on the board.',
            { unplaced },
          )}
        </p>
      )}
      {findings.filter((each) => each.weight !== 'note').length === 0 ? (
        <p className="small soft">{say('Nothing stands against it.')}</p>
      ) : (
        <ul>
          {findings
            .filter((each) => each.weight !== 'note')
            .slice(0, 8)
            .map((finding) => (
              <li
                key={`${finding.code} ${finding.plantingId} ${finding.bedId} ${finding.otherId}`}
                data-weight={finding.weight}
                className="small"
              >
                {reader.datesIn(sayKnown(finding.message))}
              </li>
            ))}
        </ul>
      )}
    </section>
  );
}
