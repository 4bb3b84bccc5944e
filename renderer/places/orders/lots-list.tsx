import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { ShareField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';

const tones = { expired: 'stop', soon: 'warn', good: 'good', 'no date': 'plain' } as const;
const words = {
  expired: say('past its date'),
  soon: say('soon past its date'),
  good: say('in date'),
  'no date': say('no date'),
} as const;

/** Makers' lots of seed and inputs with their dates. */
export function LotsList() {
  const lots = useRead(api.stock.lots, undefined);
  const reader = useReader();
  const [adding, setAdding] = useState(false);
  return (
    <section className="stack" aria-label={say('Lots')}>
      <div className="row">
        <h2>{say('Lots')}</h2>
        <Button icon="add" onClick={() => setAdding(true)}>
          {say('Add a lot')}
        </Button>
      </div>
      <Shown reading={lots}>
        {(all) =>
          all.length === 0 ? (
            <p className="soft">
              {say('None yet. A lot with its date tells which seed to sow first, and traces a harvest back to its inputs.')}
            </p>
          ) : (
            <ul className="stack">
              {all.map((lot) => (
                <li key={lot.lotId} className="row">
                  <strong>{lot.code}</strong> {lot.material}
                  {lot.supplier === null ? '' : `, ${lot.supplier}`}
                  {lot.left === 0 ? '' : say(', {left} left', { left: reader.print(lot.left, tradeUnit(lot.baseUnit)) })}
                  <span className="state-mark" data-tone={tones[lot.standing]}>
                    {words[lot.standing]} {lot.expiresDate === null ? '' : reader.date(lot.expiresDate)}
                  </span>
                  {lot.germinationShare === null ? null : (
                    <span className="soft">
                      {say('germination {germinationShare}', {
                        germinationShare: reader.print(lot.germinationShare, 'share', 2),
                      })}
                    </span>
                  )}
                </li>
              ))}
            </ul>
          )
        }
      </Shown>
      {adding ? <AddLot onClose={() => setAdding(false)} /> : null}
    </section>
  );
}

function AddLot({ onClose }: { readonly onClose: () => void }) {
  const materials = useRead(api.materials.list, undefined);
  const add = useChange(api.stock.addLot);
  const [materialId, setMaterialId] = useState('');
  const [code, setCode] = useState('');
  const [expires, setExpires] = useState<IsoDate | null>(null);
  const [germination, setGermination] = useState<number | null>(null);
  const save = async (): Promise<void> => {
    const added = await add.run(
      { materialId, code, expiresDate: expires, germinationShare: germination },
      say('Added lot {code}.', { code }),
    );
    if (added !== undefined) onClose();
  };
  return (
    <Dialog title={say('Add a lot')} onClose={onClose}>
      <Shown reading={materials}>
        {(all) => (
          <Form
            label={say('Add a lot')}
            failure={add.failure}
            paths={['materialId', 'code', 'expiresDate', 'germinationShare']}
            onSave={() => void save()}
          >
            <ChoiceField
              label={say('Material')}
              path="materialId"
              value={materialId}
              choices={[{ value: '', text: say('Choose one') }, ...all.map((each) => ({ value: each.id, text: each.name }))]}
              onChange={setMaterialId}
            />
            <TextField label={say('Lot as it stands on the package')} path="code" value={code} onChange={setCode} needed />
            <div className="form-pair">
              <DateField label={say('Best before')} path="expiresDate" value={expires} onChange={setExpires} />
              <ShareField label={say('Germination')} path="germinationShare" value={germination} onChange={setGermination} />
            </div>
            <Button type="submit" weight="main" disabled={add.busy}>
              {say('Add')}
            </Button>
          </Form>
        )}
      </Shown>
    </Dialog>
  );
}
