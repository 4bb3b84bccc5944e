import { type ReactNode, useState } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type InputOf, useRead } from '../../client/use-read.ts';
import { editsByRow } from '../../table/edits-by-row.ts';
import { Grid } from '../../table/grid.tsx';
import type { Edit } from '../../table/paste-block.ts';
import { say } from '../../words/say.ts';
import { AddOffer } from './add-offer.tsx';
import { type OfferRow, offerColumns } from './offer-columns.ts';
import { OfferImport } from './offer-import.tsx';
import { OfferSheet } from './offer-sheet.tsx';

type Values = InputOf<typeof api.suppliers.setOffers>['edits'][number]['values'];

const idOf = (row: OfferRow): string => row.id;

/** What each supplier sells, in which package, at what price. */
export function OffersTab({ tabs }: { readonly tabs: ReactNode }) {
  const offers = useRead(api.suppliers.offers, undefined);
  const change = useChange(api.suppliers.setOffers);
  const reader = useReader();
  const now = useRead(api.soilTests.today, undefined);
  const [offerId, setOfferId] = useQueryValue('offer');
  const [adding, setAdding] = useState(false);
  const [importing, setImporting] = useState(false);
  const edit = (edits: readonly Edit<OfferRow>[]) =>
    change.run({
      edits: editsByRow(edits).map(({ row, values }) => ({ offerId: row.id, revision: row.revision, values: values as Values })),
    });
  const open = offers.state === 'ready' ? offers.data.find((row) => row.id === offerId) : undefined;
  const add = (
    <Button weight="main" icon="add" onClick={() => setAdding(true)}>
      {say('Add an offer')}
    </Button>
  );
  return (
    <Page
      title={say('Library')}
      tabs={tabs}
      actions={
        <>
          {add}
          <Button onClick={() => setImporting(true)}>{say('Bring in CSV')}</Button>
        </>
      }
      sheet={open === undefined ? null : <OfferSheet key={open.id} offer={open} onClose={() => setOfferId(undefined)} />}
    >
      <Shown reading={now}>
        {({ today }) => (
          <Shown reading={offers}>
            {(rows) => (
              <Grid
                name="Offers"
                rows={rows}
                columns={offerColumns(reader, today)}
                rowId={idOf}
                onOpen={(row) => setOfferId(row.id)}
                onEdit={edit}
                failure={change.failure}
                empty={
                  <Empty title={say('No offer yet')} action={add}>
                    {say('An offer is a package of a material at a price, from one supplier.')}
                  </Empty>
                }
              />
            )}
          </Shown>
        )}
      </Shown>
      {importing ? <OfferImport onClose={() => setImporting(false)} /> : null}
      {adding ? <AddOffer onClose={() => setAdding(false)} /> : null}
    </Page>
  );
}
