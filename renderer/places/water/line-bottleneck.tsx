import type { LineReport } from '../../../planner/irrigation/line-report.ts';
import { useReader } from '../../client/reader.tsx';
import { say } from '../../words/say.ts';
import { headPartTitles } from './line-data.ts';

/** Where the head goes on the way to the bed that sets the flow of all. */
export function LineBottleneck({
  report,
  codeOf,
}: {
  readonly report: LineReport;
  readonly codeOf: (outletId: string) => string;
}) {
  const reader = useReader();
  const zone = report.zones.find((each) => each.budget !== null);
  const budget = zone?.budget;
  if (budget === null || budget === undefined || zone?.decides === null || zone?.decides === undefined) return null;
  const bore = (size_m: number | null): string =>
    size_m === null ? '' : say(', {size} inside', { size: reader.print(size_m * 1000, 'mm') });
  return (
    <section className="panel line-panel">
      <h2>{say('The bottleneck')}</h2>
      <p>
        {budget.bottleneck === null
          ? say('Nothing takes head on the way.')
          : say(
              'Most head goes into {headPartTitles}{bore}: {share} of what the source gives on the way to {code}, the bed that sets the flow of all.',
              {
                headPartTitles: headPartTitles[budget.bottleneck.what],
                bore: bore(budget.bottleneck.insideDiameter_m),
                share: reader.print(budget.bottleneck.share, 'share', 2),
                code: codeOf(zone.decides),
              },
            )}
      </p>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">{say('On the way to {code}', { code: codeOf(zone.decides) })}</th>
            <th scope="col" className="number">
              {say('Head')}
            </th>
            <th scope="col" className="number">
              {say('Of the whole')}
            </th>
          </tr>
        </thead>
        <tbody>
          {budget.parts.map((part) => (
            <tr key={`${part.what} ${part.insideDiameter_m}`}>
              <th scope="row">
                {headPartTitles[part.what]}
                {part.what === 'tube' || part.what === 'fittings' ? bore(part.insideDiameter_m) : ''}
              </th>
              <td className="number">{reader.print(part.head_m, 'm', 2)}</td>
              <td className="number">{reader.print(part.share, 'share', 2)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
