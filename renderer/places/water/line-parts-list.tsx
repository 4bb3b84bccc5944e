import { useMemo } from 'react';
import { lineParts } from '../../../planner/irrigation/line-parts.ts';
import { convert } from '../../../planner/units/convert.ts';
import { Caution } from '../../cautions/caution.tsx';
import { useReader } from '../../client/reader.tsx';
import { type LineData, partTitles } from './line-data.ts';

/** What the line is made of, to be checked against the shed before anything is bought. */
export function LinePartsList({ data }: { readonly data: LineData }) {
  const reader = useReader();
  const parts = useMemo(() => lineParts(data.plan), [data.plan]);
  const names = new Map(data.parts.map((part) => [part.materialId as string, part.name]));
  const millimetres = (size_m: number): string => reader.print(convert(size_m, 'm', 'mm'), 'mm');
  return (
    <section className="panel">
      <h3>Parts of this line</h3>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">Part</th>
            <th scope="col">For tube of</th>
            <th scope="col" className="number">
              How much
            </th>
            <th scope="col">Why</th>
          </tr>
        </thead>
        <tbody>
          {parts.map((part) => (
            <tr key={`${part.what} ${part.size_m} ${part.toSize_m} ${part.materialId}`}>
              <th scope="row">
                {part.materialId === null ? partTitles[part.what] : (names.get(part.materialId) ?? partTitles[part.what])}
              </th>
              <td>
                {part.size_m === null ? '–' : millimetres(part.size_m)}
                {part.toSize_m === null ? '' : ` to ${millimetres(part.toSize_m)}`}
              </td>
              <td className="number">{part.unit === 'm' ? reader.print(part.amount, 'm') : part.amount}</td>
              <td className="soft">{part.why}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <Caution id="heat-gun-vinyl-solvents" folded />
    </section>
  );
}
