import { useEffect, useState } from 'react';
import type { ProposeSoFar } from '../../../../api/jobs/season/propose.ts';
import { Button } from '../../../app/button.tsx';
import { api } from '../../../client/api.ts';
import { useReader } from '../../../client/reader.tsx';
import { useChange } from '../../../client/use-change.ts';
import { useJob } from '../../../client/use-job.ts';
import { ChoiceField } from '../../../fields/choice-field.tsx';
import { say } from '../../../words/say.ts';
import { type Aim, aims, type Effort, efforts, goalSays, type Weight, weights } from './goal-words.ts';
import { SearchProgress } from './search-progress.tsx';

/** The goal in words, the effort, and the search while it runs. What it finds is kept and shown. */
export function ProposeForm({ seasonId, onKept }: { readonly seasonId: string; readonly onKept: (proposalId: string) => void }) {
  const [aim, setAim] = useState<Aim>('most-margin');
  const [weight, setWeight] = useState<Weight>('clearly');
  const [effort, setEffort] = useState<Effort>('good');
  const reader = useReader();
  const begin = useChange(api.proposals.propose);
  const keep = useChange(api.proposals.keep);
  const { job, start, stop } = useJob<ProposeSoFar>(({ margin_minor }) =>
    say('A plan was found with a margin of {margin}.', { margin: reader.money(Math.round(margin_minor)) }),
  );
  const [begun, setBegun] = useState<Parameters<typeof keep.run>[0] | null>(null);

  const propose = async (): Promise<void> => {
    const wish = { seasonId, goal: { aim, weight }, effort, seed: 1 };
    await start(async () => {
      const answer = await begin.run(wish);
      if (answer !== undefined) setBegun({ ...wish, jobId: answer.jobId });
      return answer;
    });
  };
  const running = job.state === 'running';
  const { run: keepIt } = keep;
  useEffect(() => {
    if (job.state !== 'done' || begun === null) return;
    setBegun(null);
    void keepIt(begun, say('The proposal is kept. Nothing in your plan was changed.')).then((kept) => {
      if (kept !== undefined) onKept(kept.proposalId);
    });
  }, [job.state, begun, keepIt, onKept]);

  return (
    <section className="panel stack" aria-label={say('Make a proposal')}>
      <div className="proposal-wish">
        <ChoiceField label={say('What it should aim for')} value={aim} choices={aims} onChange={setAim} disabled={running} />
        {aim === 'most-margin' ? null : (
          <ChoiceField
            label={say('How much that counts')}
            value={weight}
            choices={weights}
            onChange={setWeight}
            disabled={running}
          />
        )}
        <ChoiceField label={say('How long to look')} value={effort} choices={efforts} onChange={setEffort} disabled={running} />
        <div className="row">
          {running ? (
            <Button icon="close" onClick={stop}>
              {say('Stop here')}
            </Button>
          ) : (
            <Button weight="main" onClick={() => void propose()} disabled={begin.busy || keep.busy}>
              {say('Propose a plan')}
            </Button>
          )}
        </div>
      </div>
      <p className="soft">
        {say('{goalSays} Your plan is not touched until you accept something.', { goalSays: goalSays(aim, weight) })}
      </p>
      {running ? <SearchProgress doing={job.doing} soFar={job.best} /> : null}
      {job.state === 'failed' ? (
        <p role="alert" className="failed">
          {job.failure.message}
        </p>
      ) : null}
    </section>
  );
}
