import type { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import type { OutputOf } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
import type { LineData } from './line-data.ts';

/** What the line does when the pump stops: outlets that run on, water lost, basins that drain back, and the cure. */
export function AfterStop({
  data,
  answer,
}: {
  readonly data: LineData;
  readonly answer: OutputOf<typeof api.waterLines.reservoir>['afterStop'];
}) {
  const reader = useReader();
  const codeOf = (id: string): string => data.facts.find((fact) => fact.outletId === id)?.code ?? '';
  if (data.line.supply === 'tap' || data.pump === null) return null;
  const { runningOn, drainBack, lost_L, ventAt, ventLeak_L_per_h } = answer;
  return (
    <section className="panel line-panel">
      <h2>{say('When the pump stops')}</h2>
      {runningOn.length > 0 ? (
        <p>
          <strong>
            {say('{runningOn, plural, one {# outlet runs} other {# outlets run}} on as a siphon', {
              runningOn: runningOn.length,
            })}
          </strong>{' '}
          {say('({runningOn}{more}): they lie below the highest water, up to {value}. At most {total} in all{more2}. {more3}', {
            runningOn: runningOn
              .slice(0, 6)
              .map((outlet) => codeOf(outlet.id))
              .join(', '),
            more: runningOn.length > 6 ? ' …' : '',
            value: reader.print(Math.max(...runningOn.map((outlet) => outlet.below_m)), 'm', 2),
            total: reader.print(answer.total_L_per_h, 'L_per_h', 2),
            more2: lost_L === null ? '' : say(', {lost} until it ends', { lost: reader.print(lost_L, 'L', 2) }),
            more3:
              ventAt === null
                ? ''
                : say(
                    'Put a vent (hole, open tee or vacuum breaker) at {ventAt}, above the highest water inside the reservoir, or raise the outlets above it.',
                    { ventAt },
                  ),
          })}
        </p>
      ) : (
        <p>
          {data.line.vented
            ? say('The vent lets air in, so the line stops with the pump.')
            : say('No outlet lies below the highest water, so the line stops with the pump.')}
        </p>
      )}
      {drainBack.length > 0 ? (
        <p>
          {say(
            'Basins of {drainBack} drain back into the reservoir, with what is in them: end the tube above the basin’s rim, or fit a check valve.',
            { drainBack: drainBack.map(codeOf).join(', ') },
          )}
        </p>
      ) : null}
      {ventLeak_L_per_h === null ? null : (
        <p className="soft small">
          {say('While pumping the vent’s hole leaks about {ventLeak} back into the reservoir.', {
            ventLeak: reader.print(ventLeak_L_per_h, 'L_per_h', 2),
          })}
        </p>
      )}
      <p className="soft small">
        {say('The idle pump is taken as an open tube, so flows are at most these. Source: hydrostatics.')}
      </p>
    </section>
  );
}
