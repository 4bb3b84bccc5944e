import { type IsoDate, isIsoDate } from '../../planner/calendar.ts';
import { FieldFrame, type FieldProps } from './field-frame.tsx';

/** A calendar date. */
export function DateField({
  value,
  onChange,
  ...frame
}: FieldProps & { readonly value: IsoDate | null; readonly onChange: (value: IsoDate | null) => void }) {
  return (
    <FieldFrame
      {...frame}
      control={(props) => (
        <input
          {...props}
          type="date"
          value={value ?? ''}
          data-unread={frame.needed === true && value === null}
          onChange={(event) => {
            const text = event.target.value;
            if (text === '') onChange(null);
            else if (isIsoDate(text)) onChange(text);
          }}
        />
      )}
    />
  );
}
