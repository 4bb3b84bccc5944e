import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
import { FaultReports } from './fault-reports.tsx';
import { SelfTest } from './self-test.tsx';

type About = OutputOf<typeof api.program.about>;
/** The program itself: version, that it asks nothing of any network, its licences, what broke, and whether it works here. */
export function ProgramTab() {
  const about = useRead(api.program.about, undefined);
  const reports = useRead(api.program.reports, undefined);
  return (
    <div className="stack">
      <Shown reading={about}>{(data) => <AboutProgram about={data} />}</Shown>
      <Shown reading={reports}>{(list) => <FaultReports list={list} />}</Shown>
      <SelfTest />
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
          // biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls must be reachable by keys
          <section aria-label={say('Packages and their licences')} tabIndex={0}>
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
          </section>
        )}
      </Shown>
    </Dialog>
  );
}
