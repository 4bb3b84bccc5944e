import { useState } from 'react';
import { addressOf, go } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import type { FarmView } from '../../app/farm-gate.tsx';
import { Shown } from '../../app/states.tsx';
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
            hint={say('A name, or a whole path. Work goes on in this file.')}
            suggested={joined(folderOf(farm.path), say('{path} copy', { path: nameOf(farm.path) }))}
            procedure={api.files.saveCopy}
            said={(path) => say('Saved a copy at {path}.', { path })}
          />
          <PathForm
            action={say('Move the file')}
            label={say('Move it to')}
            hint={say('With its backups. It stays open.')}
            suggested={farm.path}
            procedure={api.files.move}
            said={(path) => say('Moved the farm to {path}.', { path })}
          />
        </div>
      </section>
      <OpenFarms />
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
        void change.run({ path }, props.said(path)).then((done) => {
          if (done !== undefined) setPath('');
        })
      }
    >
      <PathField
        kind="save"
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

/** Farms that are open, and those opened of late; and one by its path. */
export function OpenFarms() {
  const state = useRead(api.files.state, undefined);
  const open = useChange(api.files.open);
  const forget = useChange(api.files.forget);
  const [path, setPath] = useState('');
  const openPath = (wanted: string): void =>
    void open.run({ path: wanted }).then((farm) => {
      if (farm !== undefined) showFarm(farm.key);
    });
  return (
    <section className="panel stack" aria-label={say('Open a farm')}>
      <h2>{say('Open a farm')}</h2>
      <Shown reading={state}>
        {({ open: opened, recent, folder }) => (
          <>
            <ul className="file-list">
              {recent.map((each) => {
                const now = opened.find((other) => other.path === each.path);
                return (
                  <li key={each.path}>
                    <div>
                      <strong>{each.name}</strong>
                      {now === undefined ? null : <span className="state-mark soft"> {say('open')}</span>}
                      <p className="file-path soft">{each.path}</p>
                    </div>
                    {each.there ? (
                      <Button onClick={() => (now === undefined ? openPath(each.path) : showFarm(now.key))}>
                        {say('Open here')}
                      </Button>
                    ) : (
                      <span className="state-mark" data-tone="guard">
                        {say('not there now')}
                      </span>
                    )}
                    {now === undefined ? (
                      <Button
                        weight="quiet"
                        onClick={() => void forget.run({ path: each.path }, say('Taken off the list; the file stays.'))}
                      >
                        {say('Take off the list')}
                      </Button>
                    ) : (
                      <a className="button" href={addressOf('week', { farm: now.key })} target="_blank" rel="noreferrer">
                        {say('In a second window')}
                      </a>
                    )}
                  </li>
                );
              })}
            </ul>
            <Form label={say('Open by path')} failure={open.failure} paths={['path']} onSave={() => openPath(path)}>
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
              </div>
            </Form>
          </>
        )}
      </Shown>
    </section>
  );
}
