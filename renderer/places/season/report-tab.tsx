import type { ReactNode } from 'react';
import type { ReportFile } from '../../../api/report/make-report.ts';
import { Button } from '../../app/button.tsx';
import { JobBar } from '../../app/job-bar.tsx';
import { Page } from '../../app/page.tsx';
import { Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useJob } from '../../client/use-job.ts';
import { useRead } from '../../client/use-read.ts';
import { saveFile } from '../../table/save-file.ts';
import { languageSpoken } from '../../words/language.ts';
import { say } from '../../words/say.ts';
import { SeasonChoice, useSeasonId } from './season-choice.tsx';

/** The season told in one file, to keep, print or send. */
export function ReportTab({ tabs }: { readonly tabs: ReactNode }) {
  const [seasonId] = useSeasonId();
  const board = useRead(api.plantings.board, { seasonId });
  return <Shown reading={board}>{({ season }) => <ReportOf key={season.id} seasonId={season.id} tabs={tabs} />}</Shown>;
}

function ReportOf({ seasonId, tabs }: { readonly seasonId: string; readonly tabs: ReactNode }) {
  const begin = useChange(api.report.start);
  const handle = useJob<readonly ReportFile[]>((made) =>
    say('The report is made: {files, plural, one {one file} other {# files}}.', { files: made.length }),
  );
  const files = handle.job.state === 'done' ? handle.job.result : [];
  const [whole, ...tables] = files;
  return (
    <Page
      title={say('Season')}
      tabs={tabs}
      actions={<SeasonChoice seasonId={seasonId} />}
      lead={say('The whole season in one file that any browser shows and prints, and each of its tables for a spreadsheet.')}
    >
      <div className="stack">
        <p>
          {say(
            'It tells what goes where and when, what to buy or dig and where it is cheapest, whether the water suffices, and which beds and crops paid.',
          )}
        </p>
        <JobBar
          handle={handle}
          label={say('Make the report')}
          onStart={() => void handle.start(() => begin.run({ seasonId, language: languageSpoken().code }))}
        />
        {begin.failure === undefined ? null : <p className="failed">{begin.failure.message}</p>}
        {whole === undefined ? null : (
          <>
            <div className="row">
              <Button weight="main" icon="down" onClick={() => save(whole)}>
                {say('Save the report')}
              </Button>
              <span className="small soft">{whole.name}</span>
            </div>
            <h2>{say('Its tables as CSV')}</h2>
            <ul className="row" style={{ listStyle: 'none', padding: 0, flexWrap: 'wrap' }}>
              {tables.map((file) => (
                <li key={file.name}>
                  <Button weight="quiet" icon="down" onClick={() => save(file)}>
                    {file.name}
                  </Button>
                </li>
              ))}
            </ul>
          </>
        )}
      </div>
      <Cautions ids={['estimate-limits']} />
    </Page>
  );
}

const save = ({ name, text }: ReportFile): void =>
  saveFile(name, new Blob([text], { type: name.endsWith('.html') ? 'text/html' : 'text/csv;charset=utf-8' }));
