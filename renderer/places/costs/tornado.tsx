import type { TornadoBar } from '../../../planner/costs/chance.ts';
import { ChartFrame } from '../../charts/chart-frame.tsx';
import { useReader } from '../../client/reader.tsx';
import { say } from '../../words/say.ts';

const ROW_PX = 30;
const FOOT_PX = 44;

/** One bar a cause, the largest swing first, all on one scale with the margin's zero marked. */
export function Tornado({ bars }: { readonly bars: readonly TornadoBar[] }) {
  const reader = useReader();
  const all = bars.flatMap((bar) => [bar.low_minor, bar.high_minor]);
  const least = Math.min(0, ...all);
  const most = Math.max(0, ...all);
  const span = most - least || 1;
  const at = (minor: number): number => ((minor - least) / span) * 100;
  return (
    <ChartFrame
      title={say('What matters most')}
      height={bars.length * ROW_PX + FOOT_PX}
      table={{
        head: [say('Cause'), say('Margin, low'), say('Margin, high')],
        rows: bars.map((bar) => [
          bar.cause,
          reader.money(Math.round(Math.min(bar.low_minor, bar.high_minor))),
          reader.money(Math.round(Math.max(bar.low_minor, bar.high_minor))),
        ]),
      }}
    >
      <div className="tornado">
        {bars.map((bar) => {
          const from = Math.min(bar.low_minor, bar.high_minor);
          const to = Math.max(bar.low_minor, bar.high_minor);
          return (
            <div key={bar.cause} style={{ display: 'contents' }}>
              <span>{bar.cause}</span>
              <svg
                role="img"
                aria-label={say('{cause}: margin from {from} to {to}', {
                  cause: bar.cause,
                  from: reader.money(Math.round(from)),
                  to: reader.money(Math.round(to)),
                })}
                viewBox="0 0 100 10"
                preserveAspectRatio="none"
              >
                <rect x={at(from)} y={1} width={Math.max(0.4, at(to) - at(from))} height={8} fill="var(--accent)" />
                <line x1={at(0)} x2={at(0)} y1={0} y2={10} stroke="var(--ink)" strokeWidth={0.5} />
                <title>{say('{from} to {to}', { from: reader.money(Math.round(from)), to: reader.money(Math.round(to)) })}</title>
              </svg>
            </div>
          );
        })}
        <span className="soft small">{say('The line is a margin of nothing.')}</span>
        <span className="soft small row spread">
          <span>{reader.money(Math.round(least))}</span>
          <span>{reader.money(Math.round(most))}</span>
        </span>
      </div>
    </ChartFrame>
  );
}
