import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { TextField } from '../../fields/text-field.tsx';
import { sayKnown } from '../../words/known.ts';
import { say } from '../../words/say.ts';
import { folderOf, joined, nameOf, withEnding } from './file-path.ts';

type FolderView = OutputOf<typeof api.files.folder>;

type DialogProps = {
  readonly kind: 'open' | 'save' | 'folder';
  readonly title: string;
  readonly at: string;
  readonly onChoose: (path: string) => void;
  readonly onClose: () => void;
};

/** Folders and farm files of this computer, to choose one to open, or a place and a name to write. */
export function FolderDialog({ kind, title, at, onChoose, onClose }: DialogProps) {
  const [folder, setFolder] = useState(folderOf(at));
  const [name, setName] = useState(nameOf(at));
  const view = useRead(api.files.folder, { folder });
  const here = view.state === 'ready' ? view.data : undefined;
  const taken = here?.farms.some((farm) => farm.name === withEnding(name)) === true;
  return (
    <Dialog
      title={title}
      wide
      onClose={onClose}
      foot={
        <>
          <Button onClick={onClose}>{say('Leave it')}</Button>
          {kind === 'open' ? null : (
            <Button
              weight="main"
              disabled={here === undefined || (kind === 'save' && (name.trim() === '' || taken))}
              onClick={() =>
                here === undefined ? undefined : onChoose(kind === 'folder' ? here.folder : joined(here.folder, withEnding(name)))
              }
            >
              {kind === 'folder' ? say('Take this folder') : say('Take this place')}
            </Button>
          )}
        </>
      }
    >
      <Shown reading={view}>
        {(data) => (
          <div className="stack">
            <FolderTrail view={data} onGo={setFolder} />
            <FolderList
              view={data}
              onGo={setFolder}
              onFarm={kind === 'folder' ? undefined : (farm) => (kind === 'open' ? onChoose(farm.path) : setName(farm.name))}
            />
          </div>
        )}
      </Shown>
      {view.state === 'failed' ? <Button onClick={() => setFolder('')}>{say('Back to the program’s own folder')}</Button> : null}
      {kind !== 'save' ? null : (
        <TextField
          label={say('File name')}
          value={name}
          onChange={setName}
          fault={taken ? say('There is already a farm of this name here. Nothing is ever written over it.') : undefined}
        />
      )}
    </Dialog>
  );
}

function FolderTrail({ view, onGo }: { readonly view: FolderView; readonly onGo: (folder: string) => void }) {
  return (
    <div className="stack">
      <div className="row">
        {view.shortcuts.map((each) => (
          <Button key={each.path} weight="quiet" onClick={() => onGo(each.path)}>
            {sayKnown(each.name)}
          </Button>
        ))}
      </div>
      <nav aria-label={say('Folders above')} className="folder-trail">
        {view.trail.map((each, index) => (
          <button
            key={each.path}
            type="button"
            className="folder-step"
            aria-current={index === view.trail.length - 1 ? 'location' : undefined}
            onClick={() => onGo(each.path)}
          >
            {each.name}
          </button>
        ))}
      </nav>
    </div>
  );
}

function FolderList(props: {
  readonly view: FolderView;
  readonly onGo: (folder: string) => void;
  /** Absent where a folder is wanted: its farms are then only shown. */
  readonly onFarm: ((farm: FolderView['farms'][number]) => void) | undefined;
}) {
  const { folders, farms } = props.view;
  const reader = useReader();
  if (folders.length === 0 && farms.length === 0)
    return <p className="soft">{say('There is no folder and no farm file here.')}</p>;
  return (
    <ul className="folder-list" aria-label={say('In this folder')}>
      {folders.map((each) => (
        <li key={each.path}>
          <button type="button" className="folder-item" onClick={() => props.onGo(each.path)}>
            <span>{each.name}</span>
            <span className="soft small">{say('folder')}</span>
          </button>
        </li>
      ))}
      {farms.map((each) => (
        <li key={each.path}>
          <button
            type="button"
            className="folder-item"
            disabled={props.onFarm === undefined}
            onClick={() => props.onFarm?.(each)}
          >
            <strong>{each.name}</strong>
            <span className="soft small">
              {say('{size} kB, {changedAt}', {
                size: Math.round(each.size_B / 1024),
                changedAt: reader.date(each.changedAt.slice(0, 10)),
              })}
            </span>
          </button>
        </li>
      ))}
    </ul>
  );
}
