import { Button } from '../../app/button.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';

/** Beds that were taken out of use; each can be taken into use again. */
export function RetiredTab({ onOpen }: { readonly onOpen: (bedId: string) => void }) {
  const reader = useReader();
  const retired = useRead(api.beds.retired, undefined);
  const restore = useChange(api.beds.restore);
  return (
    <Shown reading={retired}>
      {(rows) =>
        rows.length === 0 ? (
          <Empty title={say('No bed is retired')}>{say('Beds that end stay here with all that grew in them.')}</Empty>
        ) : (
          <>
            {restore.failure === undefined ? null : (
              <p className="failed" role="alert">
                {restore.failure.message}
              </p>
            )}
            <table className="lines">
              <thead>
                <tr>
                  <th scope="col">{say('Bed')}</th>
                  <th scope="col">{say('Design')}</th>
                  <th scope="col">{say('Built')}</th>
                  <th scope="col">{say('Ended')}</th>
                  <td />
                </tr>
              </thead>
              <tbody>
                {rows.map((row) => (
                  <tr key={row.bedId}>
                    <td>
                      <Button weight="quiet" onClick={() => onOpen(row.bedId)}>
                        {row.code}
                      </Button>
                    </td>
                    <td>{row.design}</td>
                    <td>{reader.date(row.builtDate)}</td>
                    <td>{reader.date(row.retiredDate)}</td>
                    <td>
                      <Button
                        disabled={restore.busy}
                        onClick={() => void restore.run({ bedId: row.bedId }, say('{row} is in use again.', { row: row.code }))}
                      >
                        {say('Take into use again')}
                      </Button>
                    </td>
                  </tr>
                ))}
              </tbody>
            </table>
          </>
        )
      }
    </Shown>
  );
}
