import { Sheet } from '../../app/sheet.tsx';
import { client } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import type { BudgetRow } from './soil-types.ts';
import { partWords } from './soil-words.ts';

/** One bed's budget: need, each credit, what is left to feed, with its working. */
export function BudgetSheet({
  row,
  seasonId,
  onClose,
}: {
  readonly row: BudgetRow;
  readonly seasonId: string;
  readonly onClose: () => void;
}) {
  const reader = useReader();
  const kg = (value: number) => (value === 0 ? '–' : reader.print(value, 'kg', 2));
  const parts = row.parts.filter((part) => part.n_kg > 0 || part.p2o5_kg > 0 || part.k2o_kg > 0);
  const explain = (nutrient: 'N' | 'P2O5' | 'K2O') => () =>
    client.feeding.explainBudget.query({ seasonId, bedId: row.bedId, nutrient });
  return (
    <Sheet title={say('Budget of {row}', { row: row.code })} onClose={onClose}>
      <p className="soft">
        {row.crops === '' ? say('No planting this season.') : row.crops}. {reader.print(row.area_m2, 'm2')}.{' '}
        {row.testDate === null
          ? say('No soil test: P and K are taken as medium.')
          : say('Soil test of {testDate}.', { testDate: reader.date(row.testDate) })}
      </p>
      {row.surplus === '' ? null : (
        <p className="failed" role="note">
          {say(
            'Surplus: {surplus}. More than twice the need is there already. Compost brings phosphate every year; feed nitrogen from a material without it.',
            { surplus: row.surplus },
          )}
        </p>
      )}
      <table className="lines">
        <thead>
          <tr>
            <th scope="col">{say('For the whole bed')}</th>
            <th scope="col" className="number">
              N
            </th>
            <th scope="col" className="number">
              P₂O₅
            </th>
            <th scope="col" className="number">
              K₂O
            </th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{say('Need')}</th>
            <td className="number">{kg(row.needN_kg)}</td>
            <td className="number">{kg(row.needP2O5_kg)}</td>
            <td className="number">{kg(row.needK2O_kg)}</td>
          </tr>
          {parts.map((part) => (
            <tr key={part.kind}>
              <td>{say('less {partWords}', { partWords: (partWords[part.kind] ?? part.kind).toLowerCase() })}</td>
              <td className="number">{kg(part.n_kg)}</td>
              <td className="number">{kg(part.p2o5_kg)}</td>
              <td className="number">{kg(part.k2o_kg)}</td>
            </tr>
          ))}
          <tr>
            <th scope="row">{say('Still to feed')}</th>
            <td className="number">
              <Figure value={row.feedN_kg} unit="kg" digits={2} name={say('Nitrogen to feed')} explain={explain('N')} />
            </td>
            <td className="number">
              <Figure value={row.feedP2O5_kg} unit="kg" digits={2} name={say('Phosphate to feed')} explain={explain('P2O5')} />
            </td>
            <td className="number">
              <Figure value={row.feedK2O_kg} unit="kg" digits={2} name={say('Potash to feed')} explain={explain('K2O')} />
            </td>
          </tr>
        </tbody>
      </table>
      <p className="small faint">
        {say('Rates are planning defaults from memory of a regional handbook. Your laboratory’s own recommendation goes first.')}
      </p>
    </Sheet>
  );
}
