import { type ReactNode, useState } from 'react';
import type { FarmBlendOutcome } from '../../../planner/fertility/solve-farm-blend.ts';
import { go } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useJob } from '../../client/use-job.ts';
import { say } from '../../words/say.ts';
import { BlendAnswer } from './blend-answer.tsx';
import { BlendMaterials } from './blend-materials.tsx';
import { BlendWishes } from './blend-wishes.tsx';
import type { FeedingPlanView } from './soil-types.ts';
import { type WishPart, wishesWith } from './wishes.ts';

/** The least-cost blend: wishes, materials, the computation and what it found. */
export function BlendTab({
  tabs,
  plan,
  season,
}: {
  readonly tabs: ReactNode;
  readonly plan: FeedingPlanView;
  readonly season: ReactNode;
}) {
  const { seasonId } = plan.season;
  const wish = useChange(api.feeding.setPlan);
  const begin = useChange(api.feeding.blend);
  const accept = useChange(api.feeding.accept);
  const { job, start, stop } = useJob<FarmBlendOutcome>((outcome) =>
    outcome.state === 'none'
      ? say('No blend was found.')
      : say('A blend was found for {beds, plural, one {one bed} other {# beds}}.', { beds: outcome.blend.beds.length }),
  );
  const [secondary, setSecondary] = useState<readonly ('Ca' | 'Mg' | 'S')[]>([]);
  const set = (part: WishPart) => void wish.run(wishesWith(plan.plan, part));
  const running = job.state === 'running';
  const outcome = job.state === 'done' ? job.result : job.state === 'running' ? job.best : undefined;
  const failure = wish.failure ?? begin.failure ?? accept.failure ?? (job.state === 'failed' ? job.failure : undefined);
  const put = async (): Promise<void> => {
    if (outcome?.state !== 'found') return;
    const doses = outcome.blend.beds.flatMap((bed) => bed.doses.map((dose) => ({ bedId: bed.bedId, ...dose })));
    const done = await accept.run({ seasonId, doses }, say('{doses} doses are on the cards.', { doses: doses.length }));
    if (done !== undefined) go('soil', { tab: 'cards', season: seasonId });
  };
  return (
    <Page
      title={say('Soil')}
      lead={say(
        'The cheapest of your materials that feed every bed: stock first, whole packages for the farm, whole measures for each bed.',
      )}
      tabs={tabs}
    >
      <BlendWishes plan={plan} season={season} set={set} secondary={secondary} onSecondary={setSecondary} />
      <div className="row">
        <Button
          weight="main"
          icon="play"
          disabled={running || begin.busy || wish.busy}
          onClick={() => void start(() => begin.run({ seasonId, nutrients: ['N', 'P2O5', 'K2O', ...secondary] }))}
        >
          {say('Find the blend')}
        </Button>
        {running ? (
          <>
            <progress value={job.share ?? undefined} max={1} aria-label={say('Progress of the blend')} />
            <span className="soft" role="status">
              {job.doing}…
            </span>
            <Button icon="stop" onClick={stop}>
              {say('Stop, keep the best so far')}
            </Button>
          </>
        ) : null}
      </div>
      {failure === undefined ? null : (
        <p className="failed" role="alert">
          {failure.message}
        </p>
      )}
      {outcome === undefined ? null : outcome.state === 'none' ? (
        <p className="failed" role="alert">
          {outcome.because}
        </p>
      ) : (
        <BlendAnswer
          blend={outcome.blend}
          seasonId={seasonId}
          toleranceShare={plan.plan.tolerance_share}
          onAccept={running ? undefined : () => void put()}
          busy={accept.busy}
        />
      )}
      <Cautions ids={['fertilizer-storage', 'dust-perlite-silica']} folded />
      <BlendMaterials
        materials={plan.materials}
        chosen={plan.plan.materialIds}
        onChoose={(ids) => set({ materialIds: [...ids] })}
      />
    </Page>
  );
}
