import { currencyPlaces } from '../../planner/units/print-money.ts';
import { useReader } from '../client/reader.tsx';
import { say } from '../words/say.ts';
import type { FieldProps } from './field-frame.tsx';
import { ReadField } from './read-field.tsx';

/**
 * A price of one unit, which may be a part of the smallest coin: 14.5 cents a kilowatt-hour is written 0.145.
 * `perUnits` is how many of the reader's units make one of those in which the price is kept.
 */
export function PriceField(
  props: FieldProps & {
    readonly value: number | null;
    readonly onChange: (value: number | null) => void;
    readonly per: string;
    readonly perUnits?: number;
  },
) {
  const { per, perUnits = 1, ...rest } = props;
  const reader = useReader();
  const { currency } = reader;
  const minor = 10 ** currencyPlaces(currency) * perUnits;
  return (
    <ReadField<number>
      {...rest}
      inputMode="decimal"
      sign={`${currency}/${per}`}
      print={(value) => reader.entry(Number((value / minor).toPrecision(perUnits === 1 ? 9 : 4)), '')}
      read={(text) => {
        const value = reader.read(text.replace(/^\s*[$£€]\s*/, ''));
        return value === undefined
          ? { ok: false, message: say('"{text}" is not a price.', { text }) }
          : { ok: true, value: Number((value * minor).toPrecision(9)) };
      }}
    />
  );
}
