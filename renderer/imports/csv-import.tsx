import type { ReactNode } from 'react';
import { Button } from '../app/button.tsx';
import { Dialog } from '../app/dialog.tsx';
import { say } from '../words/say.ts';
import { FileField } from './file-field.tsx';

/** The last step of an import: what it would do, and doing it. */
export type BringIn = {
  readonly text: string;
  readonly ready: boolean;
  readonly busy: boolean;
  readonly run: () => Promise<boolean>;
};

/**
 * The dialog of every import of rows from CSV: a file or pasted text goes in, what was found in it is shown (`children`),
 * and it is brought in whole or not at all.
 */
export function CsvImport({
  title,
  lead,
  text,
  onText,
  refusals,
  bringIn,
  onClose,
  children,
}: {
  readonly title: string;
  /** The columns the file may have. */
  readonly lead: string;
  readonly text: string;
  readonly onText: (text: string) => void;
  readonly refusals: readonly (string | undefined)[];
  /** Given once the text has been looked into. */
  readonly bringIn: BringIn | undefined;
  readonly onClose: () => void;
  readonly children: ReactNode;
}) {
  return (
    <Dialog title={title} onClose={onClose} wide>
      <p className="soft">{lead}</p>
      <FileField label={say('CSV file')} accept=".csv,.txt,.tsv,text/csv" onText={onText} />
      <label className="field">
        <span>{say('or paste it here')}</span>
        <textarea rows={4} value={text} onChange={(event) => onText(event.target.value)} />
      </label>
      {refusals.map((message) =>
        message === undefined ? null : (
          <p className="failed" role="alert" key={message}>
            {message}
          </p>
        ),
      )}
      <div className="stack">
        {children}
        {bringIn === undefined ? null : (
          <div className="row">
            <Button
              weight="main"
              disabled={bringIn.busy || !bringIn.ready}
              onClick={() =>
                void bringIn.run().then((done) => {
                  if (done) onClose();
                })
              }
            >
              {bringIn.text}
            </Button>
            <Button onClick={onClose}>{say('Cancel')}</Button>
          </div>
        )}
      </div>
    </Dialog>
  );
}

/** A table of the first rows found. */
export function FoundRows({ heads, rows }: { readonly heads: readonly string[]; readonly rows: readonly FoundRow[] }) {
  return (
    <table className="lines">
      <thead>
        <tr>
          {heads.map((head) => (
            <th scope="col" key={head}>
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.key}>
            {row.cells.map((cell, at) => (
              <td key={heads[at]}>{cell}</td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

export type FoundRow = { readonly key: string | number; readonly cells: readonly ReactNode[] };
