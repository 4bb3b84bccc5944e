import { useState } from 'react';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import type { BoardData } from './board-data.ts';

const SHOWN = 150;

/** Beds to plant, found by the beginning of their code. */
export function BedPicks(props: {
  readonly data: BoardData;
  readonly chosen: readonly string[];
  readonly onChange: (bedIds: readonly string[]) => void;
  readonly hint: string;
}) {
  const { data, chosen, onChange } = props;
  const [text, setText] = useState('');
  const found = data.beds.filter(
    (bed) => chosen.includes(bed.id) || bed.code.toLowerCase().startsWith(text.trim().toLowerCase()),
  );
  return (
    <fieldset>
      <legend>{say('Beds')}</legend>
      <p className="small soft">{props.hint}</p>
      {data.beds.length > 20 ? <TextField label={say('Code begins with')} value={text} onChange={setText} /> : null}
      <div className="bed-picks">
        {found.slice(0, SHOWN).map((bed) => (
          <label key={bed.id} className="bed-pick">
            <input
              type="checkbox"
              checked={chosen.includes(bed.id)}
              onChange={(event) =>
                onChange(event.target.checked ? [...chosen, bed.id] : chosen.filter((each) => each !== bed.id))
              }
            />
            {bed.code}
          </label>
        ))}
        {found.length > SHOWN ? (
          <span className="small soft">{say('and {found} more: type a code', { found: found.length - SHOWN })}</span>
        ) : null}
      </div>
    </fieldset>
  );
}
