import { InputError } from '../../planner/errors.ts';
import { parseQuantity } from '../../planner/units/parse.ts';
import { type Reader, unitForKey } from '../../planner/units/reader.ts';
import { useReader } from '../client/reader.tsx';
import { sayKnown } from '../words/known.ts';
import { say } from '../words/say.ts';
import type { FieldProps } from './field-frame.tsx';
import { notANumber } from './not-a-number.ts';
import { type FieldRead, ReadField } from './read-field.tsx';

type Entry = FieldProps & { readonly value: number | null; readonly onChange: (value: number | null) => void };

/**
 * A quantity. The unit comes from `name` (`depth_m`) or is given; the entry may be in either system (`3 ft 6 in`,
 * `90 cm`), a bare number is in the unit shown.
 */
export function QuantityField({ name, unit, ...rest }: Entry & { readonly name?: string; readonly unit?: string }) {
  const reader = useReader();
  const of = unit ?? (name === undefined ? '' : unitForKey(name));
  const read = (text: string): FieldRead<number> => {
    try {
      return {
        ok: true,
        value: parseQuantity(text, { unit: of, system: reader.system, locale: reader.locale, path: rest.path ?? rest.label }),
      };
    } catch (error) {
      if (error instanceof InputError) return { ok: false, message: sayKnown(error.message) };
      throw error;
    }
  };
  // a value that was kept in another unit is read to the millimetre or so; text left alone never changes the value
  const digits = of === '' || reader.scale(1, of) === 1 ? undefined : 5;
  return (
    <ReadField<number>
      {...rest}
      path={rest.path ?? name}
      read={of === '' ? (text) => readPlain(text, reader) : read}
      print={(value) => reader.entry(value, of, digits).replace(signAtEnd(reader.sign(of)), '')}
      sign={reader.sign(of)}
      inputMode="text"
    />
  );
}

const signAtEnd = (sign: string): RegExp => new RegExp(`\\s*${sign.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&')}$`);

const readPlain = (text: string, reader: Reader): FieldRead<number> => {
  const value = reader.read(text);
  return value === undefined ? { ok: false, message: notANumber(text, reader.locale) } : { ok: true, value };
};

/** A whole number of things. */
export function CountField(props: Entry) {
  const reader = useReader();
  return (
    <ReadField<number>
      {...props}
      inputMode="numeric"
      print={String}
      read={(text) => {
        const value = reader.read(text);
        return value !== undefined && Number.isInteger(value)
          ? { ok: true, value }
          : { ok: false, message: say('"{text}" is not a whole number.', { text }) };
      }}
    />
  );
}

/** A share from 0 to 1, written in percent. */
export function ShareField(props: Entry) {
  return <QuantityField {...props} unit="share" />;
}
