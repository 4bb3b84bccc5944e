import { DateField } from '../../fields/date-field.tsx';
import type { Period } from './use-period.ts';

export function PeriodFields({ period }: { readonly period: Period }) {
  return (
    <div className="period-fields no-print">
      <DateField label="From" value={period.from} onChange={period.setFrom} />
      <DateField label="To" value={period.to} onChange={period.setTo} />
    </div>
  );
}
