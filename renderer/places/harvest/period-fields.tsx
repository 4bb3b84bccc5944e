import { DateField } from '../../fields/date-field.tsx';
import { say } from '../../words/say.ts';
import type { Period } from './use-period.ts';

export function PeriodFields({ period }: { readonly period: Period }) {
  return (
    <div className="period-fields no-print">
      <DateField label={say('From')} value={period.from} onChange={period.setFrom} />
      <DateField label={say('To')} value={period.to} onChange={period.setTo} />
    </div>
  );
}
