import { useState } from 'react';
import type { CheckedImport } from '../../../api/jobs/harvest/check-import.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useJob } from '../../client/use-job.ts';
import { say } from '../../words/say.ts';

/** Harvests from CSV: the whole file is checked first, each wrong line named; nothing is written until all lines are right. */
export function ImportDialog({ onClose }: { readonly onClose: () => void }) {
  const reader = useReader();
  const check = useChange(api.harvest.checkImport);
  const take = useChange(api.harvest.importAll);
  const { job, start, stop } = useJob<CheckedImport>();
  const [csv, setCsv] = useState('');
  const look = (text: string): void => {
    setCsv(text);
    if (text.trim() !== '') void start(() => check.run({ text }));
  };
  const checked = job.state === 'done' ? job.result : undefined;
  const save = async (): Promise<void> => {
    const done = await take.run({ text: csv }, say('{good} harvests brought in.', { good: checked?.good ?? 0 }));
    if (done !== undefined) onClose();
  };
  return (
    <Dialog title={say('Bring in harvests from CSV')} onClose={onClose} wide>
      <p className="soft">
        {say(
          'One harvest a line, with a head line. Columns: date, bed, crop, amount, unit; and where you have them grade, destination, price, culls, minutes, picker, note.',
        )}
      </p>
      <label className="field">
        <span>{say('CSV file')}</span>
        <input
          type="file"
          accept=".csv,text/csv"
          onChange={(event) => {
            const file = event.target.files?.[0];
            if (file !== undefined) void file.text().then(look);
          }}
        />
      </label>
      <label className="field">
        <span>{say('or paste it here')}</span>
        <textarea rows={4} value={csv} onChange={(event) => look(event.target.value)} />
      </label>
      {job.state === 'running' ? (
        <p className="row" role="status">
          {job.doing}… {job.share === null ? '' : `${Math.round(job.share * 100)} %`}
          <Button onClick={stop}>{say('Stop')}</Button>
        </p>
      ) : null}
      {[check.failure?.message, take.failure?.message, job.state === 'failed' ? job.failure.message : undefined].map((message) =>
        message === undefined ? null : (
          <p className="failed" role="alert" key={message}>
            {message}
          </p>
        ),
      )}
      {checked === undefined ? null : (
        <div className="stack">
          {checked.faultCount === 0 ? null : (
            <div className="failed" role="alert">
              <p>
                {say(
                  'Nothing is brought in while {faultCount, plural, one {this line is} other {these # lines are}} not mended:',
                  { faultCount: checked.faultCount },
                )}
              </p>
              <ul>
                {checked.faults.slice(0, 40).map((fault) => (
                  <li key={`${fault.line} ${fault.column} ${fault.message}`}>
                    {say('Line {line}, {column}: {message}', { line: fault.line, column: fault.column, message: fault.message })}
                  </li>
                ))}
              </ul>
            </div>
          )}
          <table className="lines">
            <thead>
              <tr>
                <th scope="col">{say('Day')}</th>
                <th scope="col">{say('Amount')}</th>
                <th scope="col">{say('Unit')}</th>
                <th scope="col">{say('Lot')}</th>
              </tr>
            </thead>
            <tbody>
              {checked.first.slice(0, 20).map((row) => (
                <tr key={row.lot}>
                  <td>{reader.date(row.date)}</td>
                  <td>{row.amount}</td>
                  <td>{row.unit}</td>
                  <td>{row.lot}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <div className="row">
            <Button
              weight="main"
              disabled={take.busy || checked.faultCount > 0 || checked.good === 0}
              onClick={() => void save()}
            >
              {say('Bring in {good} harvests', { good: checked.good })}
            </Button>
            <Button onClick={onClose}>{say('Cancel')}</Button>
          </div>
        </div>
      )}
    </Dialog>
  );
}
