import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { type Column, choice, derived, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { sayKnown } from '../../words/known.ts';
import { say } from '../../words/say.ts';

type Backup = OutputOf<typeof api.files.backups>[number];

const reasons = [
  { value: 'daily', text: say('each day') },
  { value: 'migration', text: say('before a change of the file’s form') },
  { value: 'by-hand', text: say('by hand') },
  { value: 'restore', text: say('before a restore') },
] as const;

const madeAt = (backup: Backup): string => / (\d{4}-\d{2}-\d{2}) /.exec(backup.name)?.[1] ?? '';
const madeTime = (backup: Backup): string => {
  const time = / (\d{2})(\d{2})(\d{2}) /.exec(backup.name);
  return time === null ? '' : `${time[1]}:${time[2]}`;
};

const columns: readonly Column<Backup>[] = [
  derived('date', 'made', say('Made on'), madeAt),
  derived('text', 'time', say('At'), madeTime, { width: 80 }),
  choice('why', say('Why'), reasons, { width: 240 }),
  derived('count', 'size_kB', say('Size, kB'), (backup) => Math.round(backup.size_B / 1024)),
  text('name', say('File'), { width: 420 }),
];

const pathOf = (backup: Backup): string => backup.path;

/** The dated copies of this farm: look into one before going back to it. */
export function BackupsTab() {
  const backups = useRead(api.files.backups, undefined);
  const make = useChange(api.files.backUp);
  const [chosen, setChosen] = useState<Backup>();
  const now = (
    <Button icon="save" disabled={make.busy} onClick={() => void make.run(undefined, say('Made a backup.'))}>
      {say('Back up now')}
    </Button>
  );
  return (
    <>
      <p className="soft">
        {say(
          'A copy is made each day the farm is opened, before every change of the file’s form and before a restore. They lie in a folder beside the farm’s file; keep one on another disk too.',
        )}
      </p>
      <Shown reading={backups}>
        {(rows) => (
          <Grid
            name="Backups"
            rows={rows}
            columns={columns}
            rowId={pathOf}
            onOpen={setChosen}
            tools={now}
            empty={
              <Empty title={say('No backup yet')} action={now}>
                {say('The first is made by itself on the next day the farm is opened.')}
              </Empty>
            }
          />
        )}
      </Shown>
      {chosen === undefined ? null : <BackupDialog backup={chosen} onClose={() => setChosen(undefined)} />}
    </>
  );
}

function BackupDialog({ backup, onClose }: { readonly backup: Backup; readonly onClose: () => void }) {
  const preview = useRead(api.files.preview, { path: backup.path });
  const restore = useChange(api.files.restore);
  return (
    <Dialog
      title={say('Backup of {madeAt}, {madeTime}', { madeAt: madeAt(backup), madeTime: madeTime(backup) })}
      wide
      onClose={onClose}
      foot={
        <>
          <Button onClick={onClose}>{say('Leave it')}</Button>
          <Button
            weight="harm"
            disabled={restore.busy || preview.state !== 'ready'}
            onClick={() =>
              void restore.run({ path: backup.path }, say('The farm is as it was in this backup.')).then((done) => {
                if (done !== undefined) onClose();
              })
            }
          >
            {say('Go back to this backup')}
          </Button>
        </>
      }
    >
      <Shown reading={preview}>
        {(data) => (
          <>
            <Differences preview={data} />
            <p className="soft">{say('The farm as it is now is kept as a backup first, so that this too can be taken back.')}</p>
          </>
        )}
      </Shown>
      {restore.failure === undefined ? null : <p role="alert">{restore.failure.message}</p>}
    </Dialog>
  );
}

type Preview = OutputOf<typeof api.files.preview>;

/** What is in the backup beside what is in the farm now, and the changes made since: all that going back would undo. */
function Differences({ preview }: { readonly preview: Preview }) {
  const { farm, kinds, changes, since, sinceCount } = preview;
  const shown = kinds.filter((kind) => kind.inBackup > 0 || kind.inFarm > 0);
  const differing = shown.filter((kind) => kind.added + kind.removed + kind.changed > 0);
  return (
    <>
      <p>
        {farm}.{' '}
        {differing.length === 0
          ? say('Nothing that is counted here differs from the farm as it is now.')
          : say('What going back changes:')}
      </p>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">{say('Of')}</th>
            <th scope="col">{say('In the backup')}</th>
            <th scope="col">{say('Now')}</th>
            <th scope="col">{say('Would be lost')}</th>
            <th scope="col">{say('Would come back')}</th>
            <th scope="col">{say('Would change')}</th>
          </tr>
        </thead>
        <tbody>
          {shown.map((kind) => (
            <tr key={kind.what}>
              <th scope="row">{sayKnown(kind.what)}</th>
              <td className="number">{kind.inBackup}</td>
              <td className="number">{kind.inFarm}</td>
              <td className="number">{orDash(kind.added)}</td>
              <td className="number">{orDash(kind.removed)}</td>
              <td className="number">{orDash(kind.changed)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Steps
        title={sinceCount === 0 ? say('No change was made since.') : say('Changes made since: {sinceCount}', { sinceCount })}
        steps={since}
        more={sinceCount - since.length}
      />
      <Steps
        title={changes.length === 0 ? say('No change is kept in it to undo.') : say('Its own newest changes')}
        steps={changes}
        more={0}
      />
    </>
  );
}

const orDash = (count: number): string => (count === 0 ? '–' : String(count));

function Steps({ title, steps, more }: { readonly title: string; readonly steps: Preview['since']; readonly more: number }) {
  return (
    <section>
      <h3>{title}</h3>
      {steps.length === 0 ? null : (
        <ul>
          {steps.map((step) => (
            <li key={`${step.madeAt} ${step.note}`}>
              {sayKnown(step.note)} <span className="soft small">{step.madeAt.replace('T', ', ')}</span>
            </li>
          ))}
          {more > 0 ? <li>{say('and {more} before these', { more })}</li> : null}
        </ul>
      )}
    </section>
  );
}
