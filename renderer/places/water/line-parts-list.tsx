import { useMemo } from 'react';
import { type LinePart, lineParts } from '../../../planner/irrigation/line-parts.ts';
import { materialOfPart } from '../../../planner/irrigation/part-prices.ts';
import { convert } from '../../../planner/units/convert.ts';
import { Button } from '../../app/button.tsx';
import { Caution } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { sayKnown } from '../../words/known.ts';
import { say } from '../../words/say.ts';
import { type LineData, partTitles } from './line-data.ts';

/** What the line is made of, to be checked against the shed before anything is bought. */
export function LinePartsList({ data }: { readonly data: LineData }) {
  const reader = useReader();
  const order = useChange(api.waterLines.orderParts);
  const parts = useMemo(() => lineParts(data.plan), [data.plan]);
  const materialOf = (part: LinePart) => materialOfPart(part, data.parts, data.pump?.materialId ?? null);
  const millimetres = (size_m: number): string => reader.print(convert(size_m, 'm', 'mm'), 'mm');
  return (
    <section className="panel line-panel">
      <h2>{say('Parts of this line')}</h2>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">{say('Part')}</th>
            <th scope="col">{say('For tube of')}</th>
            <th scope="col" className="number">
              {say('How much')}
            </th>
            <th scope="col">{say('Bought as')}</th>
            <th scope="col">{say('Why')}</th>
          </tr>
        </thead>
        <tbody>
          {parts.map((part) => (
            <tr key={`${part.what} ${part.size_m} ${part.toSize_m} ${part.materialId}`}>
              <th scope="row">{partTitles[part.what]}</th>
              <td>
                {part.size_m === null ? '–' : millimetres(part.size_m)}
                {part.toSize_m === null ? '' : say(' to {millimetres}', { millimetres: millimetres(part.toSize_m) })}
              </td>
              <td className="number">{part.unit === 'm' ? reader.print(part.amount, 'm') : part.amount}</td>
              <td>{materialOf(part)?.name ?? <span className="faint">{say('not in the library')}</span>}</td>
              <td className="soft">{sayKnown(part.why)}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <div className="row no-print">
        <Button
          disabled={order.busy}
          onClick={() => void order.run({ lineId: data.line.id }, say('The parts are among the needs of Orders.'))}
        >
          {say('Put them into Orders')}
        </Button>
        <span className="soft small">
          {say('Those that a material of the library stands for; what is in stock is taken off there.')}
        </span>
      </div>
      <Caution id="heat-gun-vinyl-solvents" folded />
    </section>
  );
}
