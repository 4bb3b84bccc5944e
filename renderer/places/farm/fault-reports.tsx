import { Button } from '../../app/button.tsx';
import { Empty } from '../../app/states.tsx';
import { announce } from '../../client/announce.ts';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { saveFile } from '../../table/save-file.ts';
import { say } from '../../words/say.ts';

type Report = OutputOf<typeof api.program.reports>[number];

const breakNames: Readonly<Record<Report['what'], string>> = {
  program: say('The program broke off'),
  promise: say('Something in the program failed on the way'),
  page: say('A window’s page broke off'),
  helper: say('A helping process broke off'),
  unanswering: say('A window did not answer'),
  ended: say('The program ended without closing: the power went, or it was ended from outside'),
};

/** What broke, newest first: each is read, copied, saved and deleted here, and nowhere else. */
export function FaultReports({ list }: { readonly list: readonly Report[] }) {
  return (
    <section className="panel stack" aria-label={say('What broke')}>
      <h2>{say('What broke')}</h2>
      <p className="soft">
        {say(
          'When the program breaks off it writes down what kind of fault it was and where in the program: nothing of your farm, no names, no path. The newest twelve are kept on this computer and sent to nobody; copy or save one if you want to show it to someone.',
        )}
      </p>
      {list.length === 0 ? (
        <Empty title={say('Nothing broke')}>{say('There is no report.')}</Empty>
      ) : (
        <ul className="file-list">
          {list.map((report) => (
            <OneReport key={report.name} report={report} />
          ))}
        </ul>
      )}
    </section>
  );
}

function OneReport({ report }: { readonly report: Report }) {
  const reader = useReader();
  const drop = useChange(api.program.dropReport);
  const when = say('{day}, {time}', { day: reader.date(report.at.slice(0, 10)), time: report.at.slice(11, 16) });
  const copy = (): void =>
    void navigator.clipboard.writeText(report.text).then(
      () => announce(say('Copied the report.')),
      () => announce(say('The clipboard did not take the report; select its text and copy it.'), 'now'),
    );
  return (
    <li>
      <div>
        <strong>{breakNames[report.what]}</strong> <span className="soft">{when}</span>
        <details>
          <summary>{say('What is in the report')}</summary>
          <pre className="plain-text">{report.text}</pre>
        </details>
      </div>
      <Button
        icon="save"
        name={say('Save as a file: report of {when}', { when })}
        onClick={() =>
          saveFile(
            say('Bedwright report {at}.txt', { at: report.at.replaceAll(':', '-') }),
            new Blob([report.text], { type: 'text/plain' }),
          )
        }
      >
        {say('Save as a file')}
      </Button>
      <Button icon="copy" name={say('Copy as text: report of {when}', { when })} onClick={copy}>
        {say('Copy as text')}
      </Button>
      <Button
        weight="quiet"
        icon="bin"
        disabled={drop.busy}
        name={say('Delete: report of {when}', { when })}
        onClick={() => void drop.run({ name: report.name }, say('Deleted the report.'))}
      >
        {say('Delete')}
      </Button>
    </li>
  );
}
