import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import type { FieldProps } from '../../fields/field-frame.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { FolderDialog } from './folder-dialog.tsx';

export type PathProps = FieldProps & {
  /** To open a file that is there, to write one that is not, or a folder to put a file into. */
  readonly kind: 'open' | 'save' | 'folder';
  readonly value: string;
  readonly onChange: (path: string) => void;
  /** The file's name where none was written yet. */
  readonly suggested?: string;
};

/** The path of a farm file, typed or chosen: in the desktop window by the system's dialog, else in a view of folders of our own. */
export function PathField({ kind, value, onChange, suggested = '', ...field }: PathProps) {
  const state = useRead(api.files.state, undefined);
  const choose = useChange(api.files.choose);
  const [looking, setLooking] = useState(false);
  const at = value.trim() === '' ? suggested : value;
  const look = async (): Promise<void> => {
    if (state.state !== 'ready' || state.data.chooser === 'page') {
      setLooking(true);
      return;
    }
    const chosen = await choose.run({ kind, title: field.label, at });
    if (chosen?.path !== null && chosen?.path !== undefined) onChange(chosen.path);
  };
  return (
    <div className="path-field">
      <TextField {...field} value={value} onChange={onChange} />
      <Button name={say('Choose: {field}', { field: field.label })} disabled={choose.busy} onClick={() => void look()}>
        {say('Choose…')}
      </Button>
      {looking ? (
        <FolderDialog
          kind={kind}
          title={field.label}
          at={at}
          onClose={() => setLooking(false)}
          onChoose={(path) => {
            onChange(path);
            setLooking(false);
          }}
        />
      ) : null}
    </div>
  );
}
