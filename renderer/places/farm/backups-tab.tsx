import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { type Column, choice, derived, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';

type Backup = OutputOf<typeof api.files.backups>[number];

const reasons = [
  { value: 'daily', text: 'each day' },
  { value: 'migration', text: 'before a change of the file’s form' },
  { value: 'by-hand', text: 'by hand' },
  { value: 'restore', text: 'before a restore' },
] as const;

const madeAt = (backup: Backup): string => / (\d{4}-\d{2}-\d{2}) /.exec(backup.name)?.[1] ?? '';
const madeTime = (backup: Backup): string => {
  const time = / (\d{2})(\d{2})(\d{2}) /.exec(backup.name);
  return time === null ? '' : `${time[1]}:${time[2]}`;
};

const columns: readonly Column<Backup>[] = [
  derived('date', 'made', 'Made on', madeAt),
  derived('text', 'time', 'At', madeTime, { width: 80 }),
  choice('why', 'Why', reasons, { width: 240 }),
  derived('count', 'size_kB', 'Size, kB', (backup) => Math.round(backup.size_B / 1024)),
  text('name', 'File', { width: 420 }),
];

const pathOf = (backup: Backup): string => backup.path;

/** The dated copies of this farm: look into one before going back to it. */
export function BackupsTab() {
  const backups = useRead(api.files.backups, undefined);
  const make = useChange(api.files.backUp);
  const [chosen, setChosen] = useState<Backup>();
  const now = (
    <Button icon="save" disabled={make.busy} onClick={() => void make.run(undefined, 'Made a backup.')}>
      Back up now
    </Button>
  );
  return (
    <>
      <p className="soft">
        A copy is made each day the farm is opened, before every change of the file’s form and before a restore. They lie in a
        folder beside the farm’s file; keep one on another disk too.
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
              <Empty title="No backup yet" action={now}>
                The first is made by itself on the next day the farm is opened.
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
      title={`Backup of ${madeAt(backup)}, ${madeTime(backup)}`}
      onClose={onClose}
      foot={
        <>
          <Button onClick={onClose}>Leave it</Button>
          <Button
            weight="harm"
            disabled={restore.busy || preview.state !== 'ready'}
            onClick={() =>
              void restore.run({ path: backup.path }, 'The farm is as it was in this backup.').then((done) => {
                if (done !== undefined) onClose();
              })
            }
          >
            Go back to this backup
          </Button>
        </>
      }
    >
      <Shown reading={preview}>
        {({ farm, counts, changes }) => (
          <>
            <dl className="figures">
              {counts.map((each) => (
                <div key={each.what}>
                  <dt>{each.what}</dt>
                  <dd>{each.count}</dd>
                </div>
              ))}
            </dl>
            <p>
              {farm}. {changes.length === 0 ? 'No change is kept in it to undo.' : 'Its newest changes:'}
            </p>
            <ul>
              {changes.map((change) => (
                <li key={`${change.madeAt} ${change.note}`}>
                  {change.note} <span className="soft small">{change.madeAt.replace('T', ', ')}</span>
                </li>
              ))}
            </ul>
            <p className="soft">The farm as it is now is kept as a backup first, so that this too can be taken back.</p>
          </>
        )}
      </Shown>
      {restore.failure === undefined ? null : <p role="alert">{restore.failure.message}</p>}
    </Dialog>
  );
}
