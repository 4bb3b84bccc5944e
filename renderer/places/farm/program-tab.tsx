import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { announce } from '../../client/announce.ts';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';

type About = OutputOf<typeof api.program.about>;
type Report = OutputOf<typeof api.program.reports>[number];

const breakNames: Readonly<Record<Report['what'], string>> = {
  program: say('The program broke off'),
  promise: say('Something in the program failed on the way'),
  page: say('A window’s page broke off'),
  helper: say('A helping process broke off'),
  unanswering: say('A window did not answer'),
  ended: say('The program ended without closing: the power went, or it was ended from outside'),
};

/** The program itself: version, that it asks nothing of any network, its licences, and what broke. */
export function ProgramTab() {
  const about = useRead(api.program.about, undefined);
  const reports = useRead(api.program.reports, undefined);
  return (
    <div className="stack">
      <Shown reading={about}>{(data) => <AboutProgram about={data} />}</Shown>
      <Shown reading={reports}>{(list) => <Reports list={list} />}</Shown>
    </div>
  );
}

function AboutProgram({ about }: { readonly about: About }) {
  const [reading, setReading] = useState(false);
  return (
    <section className="panel stack" aria-label={say('About this program')}>
      <h2>{say('About this program')}</h2>
      <dl className="facts">
        <div>
          <dt>{say('Version')}</dt>
          <dd>{about.version}</dd>
        </div>
        <div>
          <dt>{say('Shown in')}</dt>
          <dd>{about.ownWindow ? say('a window of its own') : say('your browser, from this computer alone')}</dd>
        </div>
        <div>
          <dt>{say('Runs on')}</dt>
          <dd>{about.engine}</dd>
        </div>
        <div>
          <dt>{say('Its own folder')}</dt>
          <dd className="file-path">{about.folder}</dd>
        </div>
      </dl>
      <h3>{say('Updates')}</h3>
      <p>
        {say(
          'The program does not look for updates and asks nothing of any network. A newer version comes as a new copy, put in the place of this one; it brings farm files up to date when it opens them, after a backup.',
        )}
      </p>
      <h3>{say('Licences')}</h3>
      <p>{say('The packages that the program is built with, each with its licence, are listed in the program.')}</p>
      <div className="row">
        <Button onClick={() => setReading(true)}>{say('Show the licences')}</Button>
      </div>
      {reading ? <Licences onClose={() => setReading(false)} /> : null}
    </section>
  );
}

function Licences({ onClose }: { readonly onClose: () => void }) {
  const list = useRead(api.program.licences, undefined);
  return (
    <Dialog title={say('Licences')} wide onClose={onClose} foot={<Button onClick={onClose}>{say('Close')}</Button>}>
      <Shown reading={list}>
        {(packages) => (
          <table className="plain-table">
            <thead>
              <tr>
                <th scope="col">{say('Package')}</th>
                <th scope="col">{say('Version')}</th>
                <th scope="col">{say('Licence')}</th>
              </tr>
            </thead>
            <tbody>
              {packages.map((each) => (
                <tr key={`${each.name} ${each.version}`}>
                  <th scope="row">{each.name}</th>
                  <td>{each.version}</td>
                  <td>{each.licence}</td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </Shown>
    </Dialog>
  );
}

function Reports({ list }: { readonly list: readonly Report[] }) {
  return (
    <section className="panel stack" aria-label={say('What broke')}>
      <h2>{say('What broke')}</h2>
      <p className="soft">
        {say(
          'When the program breaks off it writes down what kind of fault it was and where in the program: nothing of your farm, no names, no path. The newest twelve are kept on this computer and sent to nobody; copy one as text if you want to show it to someone.',
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
