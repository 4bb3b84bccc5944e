import { currencyPlaces } from '../../planner/units/print-money.ts';
import { useReader } from '../client/reader.tsx';
import { say } from '../words/say.ts';
import type { FieldProps } from './field-frame.tsx';
import { ReadField } from './read-field.tsx';

/** A price of one unit, which may be a part of the smallest coin: 14.5 cents a kilowatt-hour is written 0.145. */
export function PriceField(
  props: FieldProps & { readonly value: number | null; readonly onChange: (value: number | null) => void; readonly per: string },
) {
  const { per, ...rest } = props;
  const reader = useReader();
  const { currency } = reader;
  const minor = 10 ** currencyPlaces(currency);
  return (
    <ReadField<number>
      {...rest}
      inputMode="decimal"
      sign={`${currency}/${per}`}
      print={(value) => reader.entry(Number((value / minor).toPrecision(9)), '')}
      read={(text) => {
        const value = reader.read(text.replace(/^\s*[$£€]\s*/, ''));
        return value === undefined
          ? { ok: false, message: say('"{text}" is not a price.', { text }) }
          : { ok: true, value: Number((value * minor).toPrecision(9)) };
      }}
    />
  );
}
