import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { api, client } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { CsvImport, FoundRows } from '../../imports/csv-import.tsx';
import { FaultList } from '../../imports/fault-list.tsx';
import { UnreadColumns } from '../../imports/unread-columns.tsx';
import { useLook } from '../../imports/use-look.ts';
import { say } from '../../words/say.ts';

/** A supplier's price list from CSV: looked into whole, each wrong line named, old prices kept beside the new. */
export function OfferImport({ onClose }: { readonly onClose: () => void }) {
  const reader = useReader();
  const bring = useChange(api.suppliers.importOffers);
  const { text, found, refused, into } = useLook((csv) => client.suppliers.lookIntoOffers.query({ csv }));
  const rows = found?.rows.length ?? 0;
  return (
    <CsvImport
      title={say('Bring in a price list from CSV')}
      lead={say(
        'One package a line. Columns: supplier, material, package, holds, price; and where you have them minimum, lead days, weight, priced. “Holds” is a quantity as written: 2 cu ft, 50 lb, 100.',
      )}
      text={text}
      onText={(csv) => void into(csv)}
      refusals={[refused?.message, bring.failure?.message]}
      bringIn={
        found === undefined
          ? undefined
          : {
              text: say('Bring in {rows, plural, one {one offer} other {# offers}}', { rows }),
              ready: found.faults.length === 0 && rows > 0,
              busy: bring.busy,
              run: async () =>
                (await bring.run(
                  { csv: text },
                  say('{rows, plural, one {One offer} other {# offers}} brought in.', { rows }),
                )) !== undefined,
            }
      }
      onClose={onClose}
    >
      {found === undefined ? null : (
        <>
          <UnreadColumns names={found.unread} />
          <FaultList
            lead={say('Nothing is brought in while these are not mended:')}
            faults={found.faults.map(({ line, column, message }) =>
              say('Line {line}, {column}: {message}', { line, column, message }),
            )}
          />
          <FoundRows
            heads={[say('Supplier'), say('Material'), say('Package'), say('Holds'), say('Price'), say('Until now')]}
            rows={found.rows.slice(0, 50).map((row) => ({
              key: row.line,
              cells: [
                row.supplier,
                row.material,
                row.name,
                reader.print(row.packageAmount, tradeUnit(row.baseUnit)),
                reader.money(row.price_minor),
                row.present === null ? say('new') : reader.money(row.present.price_minor),
              ],
            }))}
          />
        </>
      )}
    </CsvImport>
  );
}
