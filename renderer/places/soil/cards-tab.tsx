import { type ReactNode, useState } from 'react';
import { explainDose } from '../../../planner/fertility/explain-dose.ts';
import { messageFor } from '../../../planner/units/print-message.ts';
import { go } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { sayKnown } from '../../words/known.ts';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import { DoneDialog } from './done-dialog.tsx';
import { cardsOf, measureText } from './dose-cards.ts';
import type { DoseRow, FeedingPlanView } from './soil-types.ts';
import { useToday } from './use-today.ts';

/** Dose cards: bed by bed what to weigh or scoop, when and how. Printable, several to a page. */
export function CardsTab({
  tabs,
  plan,
  season,
}: {
  readonly tabs: ReactNode;
  readonly plan: FeedingPlanView;
  readonly season: ReactNode;
}) {
  const reader = useReader();
  const today = useToday();
  const doses = useRead(api.applications.planned, { seasonId: plan.season.seasonId });
  const remove = useChange(api.applications.removePlanned);
  const [marked, setMarked] = useState<readonly string[]>([]);
  const [giving, setGiving] = useState(false);
  const rows = doses.state === 'ready' ? doses.data : [];
  const chosen = rows.filter((row) => marked.includes(row.applicationBedId));
  const mark = (ids: readonly string[], on: boolean) => {
    const next = new Set(marked);
    for (const id of ids) on ? next.add(id) : next.delete(id);
    setMarked([...next]);
  };
  const ids = chosen.map((row) => row.applicationBedId);
  return (
    <Page
      title={say('Soil')}
      lead={say('What to give each bed, by weight and by the scoop. Marked as given, it becomes a record and leaves stock.')}
      tabs={tabs}
      actions={
        rows.length === 0 ? null : (
          <>
            <Button weight="main" icon="check" disabled={chosen.length === 0} onClick={() => setGiving(true)}>
              {chosen.length === 0 ? say('Mark doses to record') : say('Record {chosen} as given', { chosen: chosen.length })}
            </Button>
            <Button
              icon="bin"
              disabled={chosen.length === 0 || remove.busy}
              onClick={() =>
                void remove
                  .run({ applicationBedIds: ids }, say('Took {ids} doses off the cards.', { ids: ids.length }))
                  .then(() => setMarked([]))
              }
            >
              {say('Take off')}
            </Button>
            <Button icon="print" onClick={() => window.print()}>
              {say('Print')}
            </Button>
          </>
        )
      }
    >
      <div className="soil-wishes no-print">
        {season}
        {rows.length === 0 ? null : (
          <Button
            onClick={() =>
              mark(
                rows.map((row) => row.applicationBedId),
                chosen.length < rows.length,
              )
            }
          >
            {chosen.length < rows.length ? say('Mark all {rows} doses', { rows: rows.length }) : say('Mark none')}
          </Button>
        )}
      </div>
      {remove.failure === undefined ? null : (
        <p className="failed" role="alert">
          {remove.failure.message}
        </p>
      )}
      <Shown reading={doses}>
        {(all) => {
          if (all.length === 0)
            return (
              <Empty
                title={say('No dose card yet')}
                action={
                  <Button onClick={() => go('soil', { tab: 'blend', season: plan.season.seasonId })}>
                    {say('Find a blend')}
                  </Button>
                }
              >
                {say('A blend, or lime and sulfur, put their doses here.')}
              </Empty>
            );
          return (
            <>
              <Cautions ids={cautionsOf(all)} folded />
              <p className="soft">
                {say(
                  'Scoop {scoop}; spoon 15 mL, teaspoon 5 mL, all level. Weights follow the material’s loose density: weigh a scoop of yours once.',
                  { scoop: reader.print(plan.plan.scoop_L, 'L') },
                )}
              </p>
              <div className="dose-cards">
                {cardsOf(all).map((card) => {
                  const own = card.doses.map((dose) => dose.applicationBedId);
                  return (
                    <article className="dose-card" key={card.bedId}>
                      <header>
                        <label>
                          <input
                            type="checkbox"
                            className="no-print"
                            checked={own.every((id) => marked.includes(id))}
                            onChange={(event) => mark(own, event.target.checked)}
                          />
                          <h3>{card.code}</h3>
                        </label>
                      </header>
                      <table className="lines">
                        <thead>
                          <tr>
                            <th scope="col">{say('Give')}</th>
                            <th scope="col" className="number">
                              {say('Weight')}
                            </th>
                            <th scope="col">{say('By measure')}</th>
                            <th scope="col">{say('On')}</th>
                          </tr>
                        </thead>
                        <tbody>
                          {card.doses.map((dose) => (
                            <tr key={dose.applicationBedId}>
                              <td>
                                <label>
                                  <input
                                    type="checkbox"
                                    className="no-print"
                                    aria-label={say('{material} on {dose}', { material: dose.material, dose: dose.code })}
                                    checked={marked.includes(dose.applicationBedId)}
                                    onChange={(event) => mark([dose.applicationBedId], event.target.checked)}
                                  />
                                  <span className="print-only tick-box" aria-hidden="true" />
                                  {dose.material}
                                </label>
                                <div className="small soft">
                                  {messageFor(sayKnown(dose.method), reader.system, reader.locale)}
                                  {dose.dusty ? say('; dusty: mask, low wind') : ''}
                                  {dose.caustic ? say('; caustic: gloves and eye cover') : ''}
                                </div>
                              </td>
                              <td className="number">
                                <Figure
                                  value={dose.amount_kg}
                                  unit="kg"
                                  digits={2}
                                  name={say('{material} for {dose}', { material: dose.material, dose: dose.code })}
                                  explain={() =>
                                    explainDose({ ...dose, dose_kg: dose.amount_kg, scoop_L: plan.plan.scoop_L, area_m2: null })
                                  }
                                />
                              </td>
                              <td>{measureText(dose)}</td>
                              <td className="dose-day">{reader.date(dose.date)}</td>
                            </tr>
                          ))}
                        </tbody>
                      </table>
                    </article>
                  );
                })}
              </div>
            </>
          );
        }}
      </Shown>
      {giving && today !== null ? (
        <DoneDialog
          doses={chosen}
          today={today}
          onClose={(done) => {
            setGiving(false);
            if (done) setMarked([]);
          }}
        />
      ) : null}
    </Page>
  );
}

function cautionsOf(doses: readonly DoseRow[]): readonly string[] {
  return [
    ...(doses.some((dose) => dose.caustic || /lime|sulfur|ash/i.test(dose.material)) ? ['lime-sulfur-ash'] : []),
    ...(doses.some((dose) => dose.dusty) ? ['dust-perlite-silica'] : []),
    ...(doses.some((dose) => dose.animalOrigin === 'raw') ? ['raw-manure'] : []),
    'fertilizer-storage',
  ];
}
