import { readerOf } from '../../planner/units/reader.ts';
import { useFarm } from './farm-gate.tsx';

/** Whose list a printed page is, and of which day. Only on paper. */
export function PrintHead() {
  const farm = useFarm();
  if (farm === undefined) return null;
  const reader = readerOf({ system: farm.unitSystem, currency: farm.currency, locale: farm.language });
  const now = new Date();
  const today = new Date(now.getTime() - now.getTimezoneOffset() * 60_000).toISOString().slice(0, 10);
  return (
    <div className="print-only print-head">
      <span>
        {farm.name}
        {farm.contact === '' ? '' : `, ${farm.contact.replaceAll('\n', ', ')}`}
      </span>
      <span>{reader.date(today)}</span>
    </div>
  );
}
