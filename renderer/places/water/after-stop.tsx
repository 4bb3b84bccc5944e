import type { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import type { OutputOf } from '../../client/use-read.ts';
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
      <h2>When the pump stops</h2>
      {runningOn.length > 0 ? (
        <p>
          <strong>
            {runningOn.length} {runningOn.length === 1 ? 'outlet runs' : 'outlets run'} on as a siphon
          </strong>{' '}
          (
          {runningOn
            .slice(0, 6)
            .map((outlet) => codeOf(outlet.id))
            .join(', ')}
          {runningOn.length > 6 ? ' …' : ''}): they lie below the highest water, up to{' '}
          {reader.print(Math.max(...runningOn.map((outlet) => outlet.below_m)), 'm', 2)}. At most{' '}
          {reader.print(answer.total_L_per_h, 'L_per_h', 2)} in all
          {lost_L === null ? '' : `, ${reader.print(lost_L, 'L', 2)} until it ends`}.{' '}
          {ventAt === null
            ? ''
            : `Put a vent (hole, open tee or vacuum breaker) at ${ventAt}, above the highest water inside the reservoir, or raise the outlets above it.`}
        </p>
      ) : (
        <p>
          {data.line.vented
            ? 'The vent lets air in, so the line stops with the pump.'
            : 'No outlet lies below the highest water, so the line stops with the pump.'}
        </p>
      )}
      {drainBack.length > 0 ? (
        <p>
          Basins of {drainBack.map(codeOf).join(', ')} drain back into the reservoir, with what is in them: end the tube above the
          basin’s rim, or fit a check valve.
        </p>
      ) : null}
      {ventLeak_L_per_h === null ? null : (
        <p className="soft small">
          While pumping the vent’s hole leaks about {reader.print(ventLeak_L_per_h, 'L_per_h', 2)} back into the reservoir.
        </p>
      )}
      <p className="soft small">The idle pump is taken as an open tube, so flows are at most these. Source: hydrostatics.</p>
    </section>
  );
}
