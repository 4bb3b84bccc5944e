import type { FarmBlend } from '../../../planner/fertility/blend-answer.ts';
import { Button } from '../../app/button.tsx';
import { Empty } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import { explainBlendCost } from './blend-working.ts';
import { fedColumns, fedRows } from './fed-rows.ts';

const names: Readonly<Record<string, string>> = { P2O5: 'P₂O₅', K2O: 'K₂O' };
const word = (nutrient: string): string => names[nutrient] ?? nutrient;

/** What the blend found: cost and packages, what binds and its price, what is missing, and each bed's doses. */
export function BlendAnswer(props: {
  readonly blend: FarmBlend;
  readonly seasonId: string;
  readonly toleranceShare: number;
  readonly onAccept: (() => void) | undefined;
  readonly busy: boolean;
}) {
  const { blend } = props;
  const reader = useReader();
  const budget = useRead(api.feeding.budget, { seasonId: props.seasonId });
  const codes = new Map((budget.state === 'ready' ? budget.data : []).map((row) => [row.bedId, row.code]));
  const rows = fedRows(blend, codes, (kg) => reader.print(kg, 'kg', 2));
  const met = blend.missing.length === 0;
  // a price that rounds to nothing says nothing
  const prices = blend.prices.filter((each) => Math.abs(100 * each.price_minor_per_g) >= 0.5);
  return (
    <section className="stack" aria-label={say('The blend found')}>
      <dl className="figures">
        <div>
          <dt>{say('To buy')}</dt>
          <dd>
            <Figure of={explainBlendCost(blend)} />
          </dd>
        </div>
        <div>
          <dt>{say('Beds fed')}</dt>
          <dd>{blend.beds.length}</dd>
        </div>
        <div>
          <dt>{say('Packages')}</dt>
          <dd>{blend.packages.reduce((sum, each) => sum + each.packages, 0)}</dd>
        </div>
        <div>
          <dt>{say('Needs')}</dt>
          <dd>
            <span className="state-mark" data-tone={met ? 'good' : 'guard'}>
              {met
                ? say('met within {toleranceShare}', { toleranceShare: reader.print(props.toleranceShare, 'share') })
                : say('not all met')}
            </span>
          </dd>
        </div>
      </dl>
      {blend.state === 'best-so-far' ? (
        <p className="soft">{say('Best so far: stopped before it was proven the cheapest.')}</p>
      ) : null}
      {met ? null : (
        <div className="failed" role="alert">
          <p>
            {blend.leastMiss > 0.01
              ? say('These materials cannot meet every need within the tolerance. What is missing:')
              : say('In whole measures some beds miss the tolerance:')}
          </p>
          <ul>
            {blend.missing.map((each) => (
              <li key={each.nutrient + each.standing}>
                {say('{nutrient} {more} on {beds} beds, {miss} in all.{more2}', {
                  nutrient: word(each.nutrient),
                  more: each.standing === 'under' ? say('too little') : say('too much'),
                  beds: each.beds,
                  miss: reader.print(each.miss_kg, 'kg', 2),
                  more2:
                    blend.leastMiss <= 0.01
                      ? ''
                      : each.standing === 'under'
                        ? say(' Choose a material richer in {nutrient}.', { nutrient: word(each.nutrient) })
                        : say(' Choose a material with less of it.'),
                })}
              </li>
            ))}
          </ul>
        </div>
      )}
      <div className="columns">
        <table className="lines">
          <caption>{say('Materials')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('Material')}</th>
              <th scope="col" className="number">
                {say('Used')}
              </th>
              <th scope="col" className="number">
                {say('From stock')}
              </th>
              <th scope="col" className="number">
                {say('Packages')}
              </th>
              <th scope="col" className="number">
                {say('Cost')}
              </th>
            </tr>
          </thead>
          <tbody>
            {blend.materials.map((each) => {
              const bought = blend.packages.filter((p) => p.materialId === each.materialId);
              return (
                <tr key={each.materialId}>
                  <td>{each.name}</td>
                  <td className="number">{reader.print(each.used_kg, 'kg')}</td>
                  <td className="number">{each.fromStock_kg === 0 ? '–' : reader.print(each.fromStock_kg, 'kg')}</td>
                  <td className="number">
                    {bought.length === 0
                      ? '–'
                      : bought.map((p) => `${p.packages} × ${reader.print(p.bought_kg / p.packages, 'kg')}`).join(', ')}
                  </td>
                  <td className="number">{reader.money(bought.reduce((sum, p) => sum + p.cost_minor, 0))}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
        <table className="lines">
          <caption>{say('Limits that bind, and their price')}</caption>
          <thead>
            <tr>
              <th scope="col">{say('Limit')}</th>
              <th scope="col" className="number">
                {say('Beds')}
              </th>
              <th scope="col" className="number">
                {say('100 g more')}
              </th>
            </tr>
          </thead>
          <tbody>
            {prices.length === 0 ? (
              <tr>
                <td colSpan={3}>{say('None: stock covers it.')}</td>
              </tr>
            ) : null}
            {prices.map((each) => (
              <tr key={each.nutrient + each.limit}>
                <td>
                  {each.limit === 'least' ? say('least') : say('most')} {word(each.nutrient)}
                </td>
                <td className="number">{each.beds}</td>
                <td className="number">
                  {each.limit === 'least' ? say('costs') : say('saves')}{' '}
                  {reader.money(Math.round(100 * Math.abs(each.price_minor_per_g)))}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
      <Grid
        name="Doses of the blend"
        rows={rows}
        columns={fedColumns}
        rowId={(row) => row.bedId}
        empty={<Empty title={say('No bed wants feeding')} />}
      />
      {props.onAccept === undefined ? null : (
        <div className="row">
          <Button weight="main" disabled={props.busy || rows.length === 0} onClick={props.onAccept}>
            {say('Put on dose cards')}
          </Button>
          <span className="soft small">
            {say('Doses of an earlier blend that are not given yet are replaced. Packages stay a need for Orders.')}
          </span>
        </div>
      )}
    </section>
  );
}
