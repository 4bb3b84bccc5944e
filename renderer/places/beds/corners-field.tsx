import { useState } from 'react';
import { requireSimplePolygon } from '../../../planner/beds/polygon.ts';
import { InputError } from '../../../planner/errors.ts';
import { parseQuantity } from '../../../planner/units/parse.ts';
import { useReader } from '../../client/reader.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';

type Corner = [number, number];

/** Corners of a free outline, one a line: along, then across. Told at once when it crosses itself. */
export function CornersField({
  corners,
  onChange,
}: {
  readonly corners: readonly (readonly [number, number])[];
  readonly onChange: (corners: Corner[]) => void;
}) {
  const reader = useReader();
  const entry = (value: number): string => reader.entry(value, 'm');
  const [text, setText] = useState(() => corners.map(([x, y]) => `${entry(x)}; ${entry(y)}`).join('\n'));
  const read = (from: string): { readonly corners: Corner[] } | { readonly fault: string } => {
    try {
      const rows = from.split('\n').filter((line) => line.trim() !== '');
      const found = rows.map((line, at): Corner => {
        const [along, across] = line.split(';');
        const path = `polygon_m.${at}`;
        return [
          parseQuantity(along ?? '', { unit: 'm', system: reader.system, locale: reader.locale, path }),
          parseQuantity(across ?? '', { unit: 'm', system: reader.system, locale: reader.locale, path }),
        ];
      });
      requireSimplePolygon(found, 'polygon_m');
      return { corners: found };
    } catch (error) {
      if (error instanceof InputError) return { fault: error.faults.map((fault) => fault.message).join(' ') };
      throw error;
    }
  };
  const answer = read(text);
  return (
    <TextField
      label={say('Corners, in order round the bed')}
      path="polygon_m"
      value={text}
      lines={5}
      hint={say('One a line, along; across. For instance {entry}; {entry2}', { entry: entry(2.4), entry2: entry(1.2) })}
      onChange={(next) => {
        setText(next);
        const found = read(next);
        if ('corners' in found) onChange(found.corners);
      }}
      fault={'fault' in answer ? answer.fault : undefined}
    />
  );
}
