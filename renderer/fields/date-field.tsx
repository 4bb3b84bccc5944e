import { useState } from 'react';
import { type IsoDate, isIsoDate } from '../../planner/calendar.ts';
import { say } from '../words/say.ts';
import { FieldFrame, type FieldProps } from './field-frame.tsx';

/** A calendar date. */
export function DateField({
  value,
  onChange,
  ...frame
}: FieldProps & { readonly value: IsoDate | null; readonly onChange: (value: IsoDate | null) => void }) {
  const [left, setLeft] = useState(false);
  const lacking = frame.needed === true && value === null;
  return (
    <FieldFrame
      {...frame}
      unread={left && lacking ? say('A date is needed here.') : undefined}
      control={(props) => (
        <input
          {...props}
          type="date"
          value={value ?? ''}
          data-unread={lacking}
          onBlur={() => setLeft(true)}
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
