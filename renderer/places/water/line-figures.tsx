import { explainBedFlow } from '../../../planner/irrigation/bed-flow-working.ts';
import type { LinePlan } from '../../../planner/irrigation/line-plan.ts';
import type { LineReport, Uniformity } from '../../../planner/irrigation/line-report.ts';
import { explainDistributionUniformity } from '../../../planner/irrigation/uniformity.ts';
import { useReader } from '../../client/reader.tsx';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';

const ratings = { excellent: 'excellent', good: 'good', fair: 'fair', poor: 'poor' } as const;

/** Headline figures of a line: what it gives as the valves stand and as they should be, and how evenly. */
export function LineFigures({
  report,
  plan,
  supply,
}: {
  readonly report: LineReport;
  readonly plan: LinePlan;
  readonly supply: 'reservoir' | 'tap';
}) {
  const reader = useReader();
  const now = report.outlets.map((outlet) => outlet.full.flow_L_per_h);
  const designed = report.outlets.filter((outlet) => outlet.design_L_per_h > 0).map((outlet) => outlet.design_L_per_h);
  const zone = report.zones[0];
  const least = report.outlets.toSorted((one, other) => one.full.flow_L_per_h - other.full.flow_L_per_h)[0];
  return (
    <dl className="figures">
      <div>
        <dt>{say('Least bed as it stands')}</dt>
        <dd>
          {least === undefined ? (
            '–'
          ) : (
            <Figure
              value={least.full.flow_L_per_h}
              unit="L_per_h"
              name={say('Least bed as it stands')}
              digits={2}
              explain={() => explainBedFlow(plan, least.id)}
            />
          )}
        </dd>
      </div>
      <div>
        <dt>{say('Least bed, valves set, water low')}</dt>
        <dd>{designed.length === 0 ? '–' : reader.print(Math.min(...designed), 'L_per_h', 2)}</dd>
      </div>
      <div>
        <dt>{say('All beds together{more}', { more: report.zones.length > 1 ? say(', zone 1') : '' })}</dt>
        <dd>{reader.print(zone?.now?.total_L_per_h, 'L_per_h', 2)}</dd>
      </div>
      <Even title={say('Evenness now')} of={zone?.nowUniformity ?? null} flows={now} />
      <Even title={say('Evenness, valves set')} of={zone?.designUniformity ?? null} flows={designed} />
      {report.emissionUniformity === null ? null : (
        <div>
          <dt>{say('Emission uniformity, drip')}</dt>
          <dd>{reader.print(report.emissionUniformity, 'share', 2)}</dd>
        </div>
      )}
      {report.most_L_per_h === null ? null : (
        <div>
          <dt>{supply === 'tap' ? say('The open tap gives') : say('On the pump’s box')}</dt>
          <dd>{reader.print(report.most_L_per_h, 'L_per_h', 2)}</dd>
        </div>
      )}
    </dl>
  );
}

function Even({
  title,
  of,
  flows,
}: {
  readonly title: string;
  readonly of: Uniformity | null;
  readonly flows: readonly number[];
}) {
  const reader = useReader();
  if (of === null)
    return (
      <div>
        <dt>{title}</dt>
        <dd>–</dd>
      </div>
    );
  return (
    <div>
      <dt>{title}</dt>
      <dd>
        <Figure
          value={of.du}
          unit="share"
          name={say('{title}, low quarter', { title })}
          digits={2}
          explain={() => explainDistributionUniformity(flows.map((flow) => Math.max(0, flow)))}
        />
        <span className="figure-note">
          {say('{ratings}, CU {cu}', { ratings: ratings[of.rating], cu: reader.print(of.cu, 'share', 2) })}
        </span>
      </dd>
    </div>
  );
}
