import { useState } from 'react';
import type { CheckedImport } from '../../../api/jobs/harvest/check-import.ts';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useJob } from '../../client/use-job.ts';
import { CsvImport, FoundRows } from '../../imports/csv-import.tsx';
import { FaultList } from '../../imports/fault-list.tsx';
import { say } from '../../words/say.ts';

/** Harvests from CSV: the whole file is checked first, each wrong line named; nothing is written until all lines are right. */
export function ImportDialog({ onClose }: { readonly onClose: () => void }) {
  const reader = useReader();
  const check = useChange(api.harvest.checkImport);
  const take = useChange(api.harvest.importAll);
  const { job, start, stop } = useJob<CheckedImport>(({ lines, good, faultCount }) =>
    faultCount === 0
      ? say('{good, plural, one {One harvest} other {# harvests}} can be brought in.', { good })
      : say('{faultCount, plural, one {One fault} other {# faults}} in {lines, plural, one {one line} other {# lines}}.', {
          faultCount,
          lines,
        }),
  );
  const [text, setText] = useState('');
  const look = (csv: string): void => {
    setText(csv);
    if (csv.trim() !== '') void start(() => check.run({ text: csv }));
  };
  const checked = job.state === 'done' ? job.result : undefined;
  const good = checked?.good ?? 0;
  return (
    <CsvImport
      title={say('Bring in harvests from CSV')}
      lead={say(
        'One harvest a line, with a head line. Columns: date, bed, crop, amount, unit; and where you have them grade, destination, price, culls, minutes, picker, note.',
      )}
      text={text}
      onText={look}
      refusals={[check.failure?.message, take.failure?.message, job.state === 'failed' ? job.failure.message : undefined]}
      bringIn={
        checked === undefined
          ? undefined
          : {
              text: say('Bring in {good, plural, one {one harvest} other {# harvests}}', { good }),
              ready: checked.faultCount === 0 && good > 0,
              busy: take.busy,
              run: async () =>
                (await take.run({ text }, say('{good, plural, one {One harvest} other {# harvests}} brought in.', { good }))) !==
                undefined,
            }
      }
      onClose={onClose}
    >
      {job.state === 'running' ? (
        <p className="row" role="status">
          {job.doing}… {job.share === null ? '' : `${Math.round(job.share * 100)} %`}
          <Button onClick={stop}>{say('Stop')}</Button>
        </p>
      ) : null}
      {checked === undefined ? null : (
        <>
          <FaultList
            lead={say(
              'Nothing is brought in while {faultCount, plural, one {this line is} other {these # lines are}} not mended:',
              {
                faultCount: checked.faultCount,
              },
            )}
            faults={checked.faults.map(({ line, column, message }) =>
              say('Line {line}, {column}: {message}', { line, column, message }),
            )}
          />
          <FoundRows
            heads={[say('Day'), say('Amount'), say('Unit'), say('Lot')]}
            rows={checked.first
              .slice(0, 20)
              .map((row) => ({ key: row.lot, cells: [reader.date(row.date), row.amount, row.unit, row.lot] }))}
          />
        </>
      )}
    </CsvImport>
  );
}
