import { currencyPlaces, printMinorForEntry } from '../../planner/units/print-money.ts';
import { useReader } from '../client/reader.tsx';
import { readMoney } from '../table/read-cell.ts';
import { say } from '../words/say.ts';
import type { FieldProps } from './field-frame.tsx';
import { ReadField } from './read-field.tsx';

/** Money in whole minor units, written in the farm's currency. */
export function MoneyField(
  props: FieldProps & { readonly value: number | null; readonly onChange: (value: number | null) => void },
) {
  const reader = useReader();
  const { currency } = reader;
  return (
    <ReadField<number>
      {...props}
      inputMode="decimal"
      sign={currency}
      print={(value) => printMinorForEntry(value, currencyPlaces(currency), reader.locale)}
      read={(text) => {
        const read = readMoney(props.label, text, reader);
        return read.ok && typeof read.value === 'number'
          ? { ok: true, value: read.value }
          : { ok: false, message: read.ok ? say('No amount.') : read.message };
      }}
    />
  );
}
