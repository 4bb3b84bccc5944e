import { api, client } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';

type Part = OutputOf<typeof api.costs.lineParts>[number];

/** The parts of the water lines that are in the costs of the season, each with its working. */
export function LinePartsPanel({ seasonId }: { readonly seasonId: string }) {
  const parts = useRead(api.costs.lineParts, { seasonId });
  const reader = useReader();
  if (parts.state !== 'ready' || parts.data.length === 0) return null;
  return (
    <details className="panel">
      <summary>
        {say('Parts of the water lines: {cost} of the season', {
          cost: reader.money(parts.data.reduce((sum, part) => sum + part.cost_minor, 0)),
        })}
      </summary>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">{say('Line')}</th>
            <th scope="col">{say('Part')}</th>
            <th scope="col">{say('In since')}</th>
            <th scope="col" className="number">
              {say('Paid')}
            </th>
            <th scope="col" className="number">
              {say('Cost of the season')}
            </th>
            <th scope="col">{say('Shared among')}</th>
          </tr>
        </thead>
        <tbody>
          {parts.data.map((part) => (
            <PartRow key={part.linePartId} part={part} seasonId={seasonId} />
          ))}
        </tbody>
      </table>
      <p className="soft small">{say('Among the beds that the line feeds, by the water each is to get of it.')}</p>
    </details>
  );
}

function PartRow({ part, seasonId }: { readonly part: Part; readonly seasonId: string }) {
  const reader = useReader();
  return (
    <tr>
      <td>{part.line}</td>
      <th scope="row">{part.material}</th>
      <td>{reader.date(part.from)}</td>
      <td className="number">{reader.money(part.price_minor)}</td>
      <td className="number">
        <Figure
          value={part.cost_minor}
          unit="minor"
          name={say('Cost of {part} in the season', { part: part.material })}
          explain={() => client.costs.explainLinePart.query({ seasonId, linePartId: part.linePartId })}
        />
      </td>
      <td>{say('{beds, plural, =0 {no bed} one {# bed} other {# beds}}', { beds: part.beds })}</td>
    </tr>
  );
}
