import { Caution } from '../cautions/caution.tsx';
import { say } from '../words/say.ts';
import { shortcuts, tableShortcuts } from './keys.ts';
import { type PlaceTab, tabsOf } from './place-tabs.ts';
import type { Place } from './places.ts';
import { Sheet } from './sheet.tsx';

/** Help of one place: what it is for, what it computes and from which sources, its cautions, and the keys. */
export function HelpSheet({ place, onClose }: { readonly place: Place; readonly onClose: () => void }) {
  const tabs: readonly PlaceTab[] = tabsOf[place.name];
  return (
    <Sheet title={say('Help: {place}', { place: place.title })} onClose={onClose}>
      <p>{place.help.what}</p>
      <section className="stack">
        <h3>{say('What to do')}</h3>
        <ol>
          {place.help.steps.map((step) => (
            <li key={step}>{step}</li>
          ))}
        </ol>
      </section>
      {tabs.length === 0 ? null : (
        <section className="stack">
          <h3>{say('The tabs')}</h3>
          <dl className="help-computes">
            {tabs.map((tab) => (
              <div key={tab.name}>
                <dt>{tab.title}</dt>
                <dd>{tab.what}</dd>
              </div>
            ))}
          </dl>
        </section>
      )}
      <section className="stack">
        <h3>{say('What is computed')}</h3>
        <dl className="help-computes">
          {place.help.computes.map((each) => (
            <div key={each.name}>
              <dt>{each.name}</dt>
              <dd>{each.how}</dd>
              <dd className="small faint">{each.source}</dd>
            </div>
          ))}
        </dl>
      </section>
      <section className="stack">
        <h3>{say('Cautions')}</h3>
        {place.help.cautions.map((id) => (
          <Caution key={id} id={id} folded />
        ))}
      </section>
      <Keys title={say('Keys')} list={shortcuts} />
      <Keys title={say('Keys of the tables')} list={tableShortcuts} />
    </Sheet>
  );
}

function Keys({ title, list }: { readonly title: string; readonly list: typeof shortcuts }) {
  return (
    <section className="stack">
      <h3>{title}</h3>
      <dl className="facts">
        {list.map(({ keys, does }) => (
          <div key={keys} className="keys-line">
            <dt>
              <span className="keys">{keys}</span>
            </dt>
            <dd>{does}</dd>
          </div>
        ))}
      </dl>
    </section>
  );
}
