import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { api, client } from '../../client/api.ts';
import { type Failure, failureOf } from '../../client/failure.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';

type Look = OutputOf<typeof api.soilTests.lookIntoFile>;

/** Bring in many sheets from CSV: looked into whole, each wrong line named, and written only when all are right. */
export function TestImport({ onClose }: { readonly onClose: () => void }) {
  const reader = useReader();
  const bring = useChange(api.soilTests.importFile);
  const [csv, setCsv] = useState('');
  const [look, setLook] = useState<Look>();
  const [refused, setRefused] = useState<Failure>();
  const open = async (text: string): Promise<void> => {
    setCsv(text);
    setLook(undefined);
    setRefused(undefined);
    if (text.trim() === '') return;
    try {
      setLook(await client.soilTests.lookIntoFile.query({ csv: text }));
    } catch (error) {
      setRefused(failureOf(error));
    }
  };
  const save = async (): Promise<void> => {
    const done = await bring.run({ csv }, say('{tests} soil tests brought in.', { tests: look?.tests.length ?? 0 }));
    if (done !== undefined) onClose();
  };
  return (
    <Dialog title={say('Bring in soil tests from CSV')} onClose={onClose} wide>
      <p className="soft">
        {say(
          'One sample a line. Columns: date, sample, beds (codes, or a block), method, pH, buffer pH, buffer method, OM %, CEC, EC, and each nutrient with its unit, as “P ppm”, “K (lb/acre)”, “Ca meq/100g”.',
        )}
      </p>
      <label className="field">
        <span>{say('CSV file')}</span>
        <input
          type="file"
          accept=".csv,text/csv"
          onChange={(event) => {
            const file = event.target.files?.[0];
            if (file !== undefined) void file.text().then(open);
          }}
        />
      </label>
      <label className="field">
        <span>{say('or paste it here')}</span>
        <textarea rows={4} value={csv} onChange={(event) => void open(event.target.value)} />
      </label>
      {[refused, bring.failure].map((each) =>
        each === undefined ? null : (
          <p className="failed" role="alert" key={each.message}>
            {each.message}
          </p>
        ),
      )}
      {look === undefined ? null : (
        <div className="stack">
          {look.unread.length === 0 ? null : (
            <p className="soft">{say('Columns not read: {unread}.', { unread: look.unread.join(', ') })}</p>
          )}
          {look.warnings.length === 0 ? null : (
            <div className="panel" role="note">
              <p>{say('Look at these figures again; they are brought in as they stand:')}</p>
              <ul>
                {look.warnings.slice(0, 20).map((each) => (
                  <li key={each}>{each}</li>
                ))}
              </ul>
            </div>
          )}
          {look.faults.length === 0 ? null : (
            <div className="failed" role="alert">
              <p>{say('Nothing is brought in while these are not mended:')}</p>
              <ul>
                {look.faults.slice(0, 30).map((fault) => (
                  <li key={fault.path + fault.message}>{fault.message}</li>
                ))}
              </ul>
            </div>
          )}
          <table className="lines">
            <thead>
              <tr>
                <th scope="col">{say('Sampled')}</th>
                <th scope="col">{say('Sample')}</th>
                <th scope="col">{say('pH')}</th>
                <th scope="col">{say('Figures')}</th>
                <th scope="col">{say('Beds')}</th>
              </tr>
            </thead>
            <tbody>
              {look.tests.slice(0, 50).map((each) => (
                <tr key={`${each.date} ${each.sample}`}>
                  <td>{reader.date(each.date)}</td>
                  <td>{each.sample}</td>
                  <td>{each.ph ?? '–'}</td>
                  <td>{each.figures}</td>
                  <td>{each.beds}</td>
                </tr>
              ))}
            </tbody>
          </table>
          <div className="row">
            <Button
              weight="main"
              disabled={bring.busy || look.faults.length > 0 || look.tests.length === 0}
              onClick={() => void save()}
            >
              {say('Bring in {tests} tests', { tests: look.tests.length })}
            </Button>
            <Button onClick={onClose}>{say('Cancel')}</Button>
          </div>
        </div>
      )}
    </Dialog>
  );
}
