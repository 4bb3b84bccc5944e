import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { ShareField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import type { BoardData, PlantingSheetData } from './board-data.ts';

type Piece = { readonly bedId: string; readonly fromShare: number; readonly toShare: number };

/** Where a planting stands: beds and pieces of beds, from one end (0 %) to the other (100 %). Plants are counted anew. */
export function PlaceForm({ found, data }: { readonly found: PlantingSheetData; readonly data: BoardData }) {
  const move = useChange(api.plantings.move);
  const [pieces, setPieces] = useState<readonly Piece[]>(
    found.spans.map(({ bedId, fromShare, toShare }) => ({ bedId, fromShare, toShare })),
  );
  const beds = data.beds.map((bed) => ({ value: bed.id, text: bed.code }));
  const set = (at: number, change: Partial<Piece>) =>
    setPieces(pieces.map((piece, index) => (index === at ? { ...piece, ...change } : piece)));
  const last = pieces.at(-1);
  return (
    <Form
      label={say('Beds of the planting')}
      failure={move.failure}
      paths={pieces.map((_, at) => `spans.${at}`)}
      onSave={() =>
        void move.run(
          { moves: [{ plantingId: found.record.id, revision: found.record.revision, how: 'move', days: 0, spans: [...pieces] }] },
          say('The plants are counted anew.'),
        )
      }
    >
      <h3>{say('Beds')}</h3>
      <div className="span-rows">
        {pieces.map((piece, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: pieces have no name of their own and keep their order
          <div key={at} className="span-row">
            <ChoiceField
              label={say('Bed')}
              path={`spans.${at}`}
              value={piece.bedId}
              choices={beds}
              onChange={(bedId) => set(at, { bedId })}
            />
            <ShareField label={say('From')} value={piece.fromShare} onChange={(value) => set(at, { fromShare: value ?? 0 })} />
            <ShareField label={say('To')} value={piece.toShare} onChange={(value) => set(at, { toShare: value ?? 1 })} />
            <Button
              weight="quiet"
              icon="bin"
              name={say('Take this bed away')}
              onClick={() => setPieces(pieces.filter((_, index) => index !== at))}
            />
          </div>
        ))}
      </div>
      <div className="row">
        <Button
          icon="add"
          disabled={data.beds.length === 0}
          onClick={() => {
            const next = data.beds[(data.beds.findIndex((bed) => bed.id === last?.bedId) + 1) % data.beds.length];
            if (next !== undefined) setPieces([...pieces, { bedId: next.id, fromShare: 0, toShare: 1 }]);
          }}
        >
          {say('Split over another bed')}
        </Button>
        <Button type="submit" disabled={move.busy}>
          {say('Save beds')}
        </Button>
      </div>
    </Form>
  );
}
