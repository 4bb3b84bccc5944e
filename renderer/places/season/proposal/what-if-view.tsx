import { useState } from 'react';
import type { VariantResult } from '../../../../api/jobs/season/compare.ts';
import type { VariantEntry } from '../../../../api/proposal/variants.ts';
import { Button } from '../../../app/button.tsx';
import { Shown } from '../../../app/states.tsx';
import { api } from '../../../client/api.ts';
import { useChange } from '../../../client/use-change.ts';
import { useJob } from '../../../client/use-job.ts';
import { useRead } from '../../../client/use-read.ts';
import { ChoiceField } from '../../../fields/choice-field.tsx';
import { say } from '../../../words/say.ts';
import { FigureTable } from './figure-table.tsx';
import type { Overview } from './proposal-types.ts';
import {
  goalVariants,
  type Question,
  type QuestionKind,
  questionKinds,
  questionText,
  sameQuestion,
  variantOf,
} from './questions.ts';

/** "What if": one thing different at a time, each solved and set beside the plan as it could be now. */
export function WhatIfView({ seasonId, overview }: { readonly seasonId: string; readonly overview: Overview }) {
  const [questions, setQuestions] = useState<readonly Question[]>([]);
  const [kind, setKind] = useState<QuestionKind>('pump');
  const [cropId, setCropId] = useState(overview.crops[0]?.cropId ?? '');
  const present = useRead(api.proposals.present, { seasonId });
  const compare = useChange(api.proposals.compare);
  const { job, start, stop } = useJob<readonly VariantResult[]>((answers) =>
    say('{answers, plural, one {One answer} other {# answers}} beside the plan as it could be now.', { answers: answers.length }),
  );
  const running = job.state === 'running';
  const crops = overview.crops.map(({ cropId: value, name }) => ({ value, text: name }));
  const nameOf = (id: string): string => crops.find(({ value }) => value === id)?.text ?? id;
  const ask = (variants: readonly VariantEntry[]): void =>
    void start(() => compare.run({ seasonId, variants: [...variants], seed: 1 }));
  const largest = overview.beds.reduce((best, bed) => (bed.area_m2 > (best?.area_m2 ?? 0) ? bed : best), overview.beds[0]);
  const variants = questions.map((question) => variantOf(question, nameOf, largest?.bedId ?? ''));
  const results = job.state === 'done' ? job.result : job.state === 'running' ? (job.best ?? []) : [];
  return (
    <div className="stack">
      <section className="panel stack" aria-label={say('Questions')}>
        <div className="proposal-wish">
          <ChoiceField label={say('What if')} value={kind} choices={questionKinds} onChange={setKind} />
          {kind === 'dearer' || kind === 'cheaper' || kind === 'without' ? (
            <ChoiceField label={say('Crop')} value={cropId} choices={crops} onChange={setCropId} />
          ) : null}
          <div className="row">
            <Button
              icon="add"
              disabled={running || questions.length >= 8 || questions.some((each) => sameQuestion(each, { kind, cropId }))}
              onClick={() => setQuestions([...questions, { kind, cropId, wage_minor_per_h: overview.wage_minor_per_h }])}
            >
              {say('Add to the questions')}
            </Button>
          </div>
        </div>
        {questions.length === 0 ? (
          <p className="soft">
            {say('Add one or more questions and have each solved for the most margin. Your plan is not touched.')}
          </p>
        ) : (
          <ul>
            {questions.map((question, at) => (
              <li key={`${question.kind} ${question.cropId}`} className="row">
                {questionText(question, nameOf)}
                <Button
                  weight="quiet"
                  icon="close"
                  name={say('Take this question out')}
                  onClick={() => setQuestions(questions.filter((_, other) => other !== at))}
                />
              </li>
            ))}
          </ul>
        )}
        <div className="row">
          <Button weight="main" disabled={running || questions.length === 0} onClick={() => ask([asItIs, ...variants])}>
            {say('Set them side by side')}
          </Button>
          <Button disabled={running} onClick={() => ask(goalVariants)}>
            {say('Preview every goal')}
          </Button>
          {running ? (
            <Button icon="close" onClick={stop}>
              {say('Stop here')}
            </Button>
          ) : null}
          {running ? <span role="status">{job.doing}…</span> : null}
        </div>
        {job.state === 'failed' ? (
          <p role="alert" className="failed">
            {job.failure.message}
          </p>
        ) : null}
      </section>
      {results.length === 0 ? null : (
        <section className="panel">
          <Shown reading={present}>
            {(figures) => (
              <FigureTable
                caption={say('Side by side')}
                plans={[
                  { name: say('Present plan'), figures },
                  ...results.map(({ name, figures: others, gap }) => ({
                    name,
                    figures: others,
                    note:
                      gap === null
                        ? say('not proven')
                        : say('within {gap} % of the best', { gap: Number((gap * 100).toFixed(1)) }),
                  })),
                ]}
              />
            )}
          </Shown>
        </section>
      )}
    </div>
  );
}

const asItIs: VariantEntry = {
  name: say('Best plan as things are'),
  goal: { aim: 'most-margin', weight: 'clearly' },
  changes: [],
};
