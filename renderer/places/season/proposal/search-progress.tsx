import type { ProposeSoFar } from '../../../../api/jobs/season/propose.ts';
import { explainMostBetter, mostBetter_minor } from '../../../../planner/season/proposal/explain-plan.ts';
import { Chart } from '../../../charts/chart.tsx';
import { useReader } from '../../../client/reader.tsx';
import { say } from '../../../words/say.ts';
import { Figure } from '../../../working/figure.tsx';

/** How good the plan is so far, and how good any plan can be. */
export function SearchProgress({ doing, soFar }: { readonly doing: string; readonly soFar: ProposeSoFar | undefined }) {
  const reader = useReader();
  return (
    <div className="stack">
      <p role="status">
        {doing}…{' '}
        {soFar === undefined
          ? null
          : soFar.bound_minor === null
            ? say('Best plan so far: {margin}.', { margin: reader.money(Math.round(soFar.margin_minor)) })
            : say('Best plan so far: {margin}. {bestPossible}', {
                margin: reader.money(Math.round(soFar.margin_minor)),
                bestPossible: bestPossible(soFar, reader.money),
              })}
      </p>
      {soFar === undefined || soFar.gaps.length < 2 ? null : <GapChart gaps={soFar.gaps} />}
    </div>
  );
}

/** The same sentence with the figure that opens its working. */
export function BestPossible({ found }: { readonly found: Parameters<typeof bestPossible>[0] }) {
  const reader = useReader();
  const sentence = bestPossible(found, reader.money);
  if (found.bound_minor === null) return sentence;
  const working = explainMostBetter({ margin_minor: found.margin_minor, bound_minor: found.bound_minor });
  const amount = reader.money(working.result.value);
  const [before, after] = sentence.split(amount);
  return after === undefined ? (
    sentence
  ) : (
    <>
      {before}
      <Figure of={working} />
      {after}
    </>
  );
}

/** "At most $35 (0.4 %) better is possible." Money stands first: a share of a margin near nothing says little. */
export function bestPossible(
  found: { readonly bound_minor: number | null; readonly gap: number | null; readonly margin_minor: number },
  money: (minor: number) => string,
): string {
  if (found.bound_minor === null || found.gap === null) return say('How much better a plan could be is not proven.');
  const apart = mostBetter_minor({ margin_minor: found.margin_minor, bound_minor: found.bound_minor });
  if (apart === 0) return say('No plan can be better.');
  const percent = found.gap * 100;
  return say('At most {apart}{more} more is possible.', {
    apart: money(apart),
    more: percent < 50 ? say(' ({percent} %)', { percent: Number(percent.toFixed(percent < 10 ? 1 : 0)) }) : '',
  });
}

export function GapChart({ gaps }: { readonly gaps: ProposeSoFar['gaps'] }) {
  const reader = useReader();
  return (
    <Chart
      title={say('Margin found over time')}
      rows={gaps}
      x={{ name: say('Seconds'), text: ({ at_s }) => reader.print(at_s, '', at_s < 10 ? 2 : 3) }}
      unit="minor"
      series={[{ name: say('Best plan'), as: 'line', read: ({ margin_minor }) => margin_minor }]}
      height={180}
    />
  );
}
