import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { announce } from '../../client/announce.ts';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { FlagField } from '../../fields/flag-field.tsx';
import { CountField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import { OfferImport } from '../library/offer-import.tsx';
import { exportOf, listAsText } from './list-text.ts';
import { NoPrice, useAtLeast } from './no-price.tsx';
import { SearchResult } from './search-result.tsx';
import { SupplierPart } from './supplier-part.tsx';
import type { TabHead } from './tab-head.ts';
import { useSearch } from './use-search.ts';

/** The search for the cheapest list, and the list by supplier to tick off while buying. */
export function ListTab({ tabs, choice, season }: TabHead) {
  const lists = useRead(api.orders.list, { seasonId: season.seasonId });
  const keep = useChange(api.orders.keepList);
  const search = useSearch();
  const reader = useReader();
  const atLeast = useAtLeast(season.seasonId);
  const unpriced = useRead(api.orders.unpriced, { seasonId: season.seasonId });
  const [mostSuppliers, setMost] = useState<number | null>(null);
  const [inTime, setInTime] = useState(true);
  const [importing, setImporting] = useState(false);
  const begin = () => void search.start({ seasonId: season.seasonId, mostSuppliers, inTime });
  return (
    <Page
      title={say('Orders')}
      lead={say('Least total cost over suppliers, packages, price breaks and deliveries.')}
      tabs={tabs}
      actions={
        <>
          {choice}
          <a className="button" href={exportOf('shopping-list.pdf', season.seasonId)} target="_blank" rel="noreferrer">
            {say('PDF')}
          </a>
          <a className="button" href={exportOf('shopping-list.csv', season.seasonId)}>
            {say('CSV')}
          </a>
          <Button onClick={() => window.print()}>{say('Print')}</Button>
          <Button onClick={() => setImporting(true)}>{say('Import prices')}</Button>
        </>
      }
    >
      <section className="panel stack no-print" aria-label={say('Search')}>
        <div className="row orders-search">
          <CountField label={say('Suppliers at most')} value={mostSuppliers} onChange={setMost} hint={say('Empty: any number')} />
          <FlagField label={say('Only suppliers that bring it in time')} value={inTime} onChange={setInTime} />
          {search.running ? (
            <Button onClick={search.stop}>{say('Stop, keep the best so far')}</Button>
          ) : (
            <Button weight="main" onClick={begin}>
              {say('Find the cheapest list')}
            </Button>
          )}
        </div>
        <SearchResult
          search={search}
          onKeep={(bought) =>
            void keep.run(
              { seasonId: season.seasonId, bought: [...bought] },
              say('Kept a list of {bought} lines.', { bought: bought.length }),
            )
          }
          busy={keep.busy}
          failure={keep.failure}
        />
      </section>
      <NoPrice seasonId={season.seasonId} />
      <Shown reading={lists}>
        {(all) =>
          all.length === 0 ? (
            <Empty title={say('No shopping list yet')}>
              {say('Find the cheapest list, look at it, and keep it: it then stands here by supplier.')}
            </Empty>
          ) : (
            <>
              <div className="row no-print">
                <strong>
                  {say('{reduce} at {all, plural, one {# supplier} other {# suppliers}}', {
                    reduce: atLeast(reader.money(all.reduce((sum, list) => sum + list.total_minor, 0))),
                    all: all.length,
                  })}
                </strong>
                <Button
                  icon="copy"
                  onClick={() => {
                    void navigator.clipboard
                      .writeText(listAsText(all, reader, unpriced.state === 'ready' ? unpriced.data : []))
                      .then(() => announce(say('Copied the list as text.')));
                  }}
                >
                  {say('Copy as text')}
                </Button>
              </div>
              {all.map((list) => (
                <SupplierPart key={list.supplierId} list={list} seasonId={season.seasonId} />
              ))}
            </>
          )
        }
      </Shown>
      {importing ? <OfferImport onClose={() => setImporting(false)} /> : null}
    </Page>
  );
}
