import { useState } from 'react';
import { addressOf, go } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import type { FarmView } from '../../app/farm-gate.tsx';
import { Shown } from '../../app/states.tsx';
import { announce } from '../../client/announce.ts';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { Form } from '../../fields/form.tsx';
import { say } from '../../words/say.ts';
import { folderOf, joined, nameOf } from './file-path.ts';
import { PathField } from './path-field.tsx';

/** Opens another farm in this window, in the address so that two windows can show two farms. */
export function showFarm(key: string): void {
  window.location.assign(`/week?farm=${encodeURIComponent(key)}`);
}

/** The farm's file: save a copy, move it; open another; new ones. */
export function FilesTab({ farm }: { readonly farm: FarmView }) {
  return (
    <div className="stack">
      <section className="panel stack" aria-label={say("This farm's file")}>
        <h2>{say('This farm’s file')}</h2>
        <p className="file-path">{farm.path}</p>
        <div className="columns">
          <PathForm
            action={say('Save a copy')}
            label={say('Save a copy as')}
            kind="save"
            hint={say('A name, a whole path, or a folder. Work goes on in this file.')}
            suggested={joined(folderOf(farm.path), say('{path} copy', { path: nameOf(farm.path) }))}
            procedure={api.files.saveCopy}
            said={(path) => say('Saved a copy at {path}.', { path })}
          />
          <PathForm
            action={say('Move the file')}
            label={say('Move it to')}
            hint={say('A folder, or a whole path with another name. Its backups go with it; it stays open.')}
            kind="folder"
            suggested={farm.path}
            procedure={api.files.move}
            said={(path) => say('Moved the farm to {path}.', { path })}
          />
        </div>
      </section>
      <OpenFarms here={farm.path} />
      <div className="row">
        <Button weight="main" icon="add" onClick={() => go('farm', { tab: 'new' })}>
          {say('New farm')}
        </Button>
      </div>
    </div>
  );
}

function PathForm(props: {
  readonly action: string;
  readonly label: string;
  readonly hint: string;
  readonly kind: 'save' | 'folder';
  readonly suggested: string;
  readonly procedure: typeof api.files.saveCopy | typeof api.files.move;
  readonly said: (path: string) => string;
}) {
  const [path, setPath] = useState('');
  const change = useChange(props.procedure);
  return (
    <Form
      label={props.action}
      failure={change.failure}
      paths={['path']}
      onSave={() =>
        void change.run({ path }).then((done) => {
          if (done === undefined) return;
          announce(props.said(done.path));
          setPath('');
        })
      }
    >
      <PathField
        kind={props.kind}
        label={props.label}
        path="path"
        value={path}
        onChange={setPath}
        hint={props.hint}
        suggested={props.suggested}
      />
      <div className="row">
        <Button type="submit" disabled={change.busy || path.trim() === ''}>
          {props.action}
        </Button>
      </div>
    </Form>
  );
}

/** Opens a farm in a window of its own; the desktop window makes one that is as locked as this one, a browser a tab. */
const showInSecondWindow = (key: string): void => void window.open(addressOf('week', { farm: key }), '_blank', 'noopener');

/** Farms that are open, and those opened of late; and one by its path. `here` is the path of the farm that this window shows. */
export function OpenFarms({ here }: { readonly here: string | undefined }) {
  const state = useRead(api.files.state, undefined);
  const open = useChange(api.files.open);
  const empty = useChange(api.files.clearRecent);
  const [path, setPath] = useState('');
  const opened = (wanted: string, show: (key: string) => void): void =>
    void open.run({ path: wanted }).then((farm) => {
      if (farm !== undefined) show(farm.key);
    });
  return (
    <section className="panel stack" aria-label={say('Open a farm')}>
      <h2>{say('Open a farm')}</h2>
      <Shown reading={state}>
        {({ open: now, recent, folder }) => (
          <>
            <ul className="file-list">
              {recent.map((each) => (
                <RecentFarm
                  key={each.path}
                  farm={each}
                  state={each.path === here ? 'here' : now.some((other) => other.path === each.path) ? 'open' : 'closed'}
                  onOpen={(show) => opened(each.path, show)}
                />
              ))}
            </ul>
            {recent.length < 2 ? null : (
              <div className="row">
                <Button
                  weight="quiet"
                  disabled={empty.busy}
                  onClick={() => void empty.run(undefined, say('The list of recent farms is empty; the files stay.'))}
                >
                  {say('Empty this list')}
                </Button>
              </div>
            )}
            <Form label={say('Open by path')} failure={open.failure} paths={['path']} onSave={() => opened(path, showFarm)}>
              <PathField
                kind="open"
                label={say('A farm file')}
                path="path"
                value={path}
                onChange={setPath}
                hint={say('A whole path, or a name in {folder}. A farm file can also be dropped on this window.', { folder })}
              />
              <div className="row">
                <Button type="submit" disabled={open.busy || path.trim() === ''}>
                  {say('Open')}
                </Button>
                <Button disabled={open.busy || path.trim() === ''} onClick={() => opened(path, showInSecondWindow)}>
                  {say('Open in a second window')}
                </Button>
              </div>
            </Form>
          </>
        )}
      </Shown>
    </section>
  );
}

type Recent = { readonly name: string; readonly path: string; readonly there: boolean };

const stateNames = { here: say('in this window'), open: say('open'), closed: '' } as const;

function RecentFarm(props: {
  readonly farm: Recent;
  readonly state: keyof typeof stateNames;
  readonly onOpen: (show: (key: string) => void) => void;
}) {
  const { farm, state } = props;
  const forget = useChange(api.files.forget);
  return (
    <li>
      <div>
        <strong>{farm.name}</strong> {state === 'closed' ? null : <span className="state-mark soft">{stateNames[state]}</span>}
        <p className="file-path soft">{farm.path}</p>
      </div>
      {farm.there ? null : (
        <span className="state-mark" data-tone="guard">
          {say('not there now')}
        </span>
      )}
      {farm.there && state !== 'here' ? (
        <>
          <Button name={say('Open here: {farm}', { farm: farm.name })} onClick={() => props.onOpen(showFarm)}>
            {say('Open here')}
          </Button>
          <Button name={say('In a second window: {farm}', { farm: farm.name })} onClick={() => props.onOpen(showInSecondWindow)}>
            {say('In a second window')}
          </Button>
        </>
      ) : null}
      {state === 'closed' ? (
        <Button
          weight="quiet"
          name={say('Take off the list: {farm}', { farm: farm.name })}
          onClick={() => void forget.run({ path: farm.path }, say('Taken off the list; the file stays.'))}
        >
          {say('Take off the list')}
        </Button>
      ) : null}
    </li>
  );
}
