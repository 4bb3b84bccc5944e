import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';

/** Materials that may stand in for each other, so that what lies in the shed is used and the cheaper is bought. */
export function StandIns({ onClose }: { readonly onClose: () => void }) {
  const materials = useRead(api.materials.list, undefined);
  const pairs = useRead(api.stock.standIns, undefined);
  const add = useChange(api.stock.addStandIn);
  const remove = useChange(api.stock.removeStandIn);
  const [materialId, setMaterialId] = useState('');
  const [insteadId, setInsteadId] = useState('');
  const [ratio, setRatio] = useState<number | null>(1);
  return (
    <Dialog title={say('Stand-ins')} onClose={onClose} wide>
      <Shown reading={materials}>
        {(all) => {
          const choices = [{ value: '', text: say('Choose one') }, ...all.map((each) => ({ value: each.id, text: each.name }))];
          const nameOf = (id: string): string => all.find((each) => each.id === id)?.name ?? '';
          return (
            <>
              <Shown reading={pairs}>
                {(rows) =>
                  rows.length === 0 ? (
                    <p className="soft">
                      {say('None allowed yet. Where one is, stock of it serves the need, and the search may buy it instead.')}
                    </p>
                  ) : (
                    <ul className="stack">
                      {rows.map((row) => (
                        <li key={`${row.materialId} ${row.insteadId}`} className="row">
                          {say('{instead} for {materialId}, {ratio} of it for 1', {
                            instead: row.instead,
                            materialId: nameOf(row.materialId),
                            ratio: row.ratio,
                          })}
                          <Button
                            weight="quiet"
                            icon="bin"
                            name={say('Allow {instead} no more', { instead: row.instead })}
                            onClick={() => void remove.run({ materialId: row.materialId, insteadId: row.insteadId })}
                          />
                        </li>
                      ))}
                    </ul>
                  )
                }
              </Shown>
              <Form
                label={say('Allow a stand-in')}
                failure={add.failure}
                paths={['materialId', 'insteadId', 'ratio']}
                onSave={() => void add.run({ materialId, insteadId, ratio: ratio ?? 0 }, say('Allowed the stand-in.'))}
              >
                <div className="form-pair">
                  <ChoiceField
                    label={say('For')}
                    path="materialId"
                    value={materialId}
                    choices={choices}
                    onChange={setMaterialId}
                  />
                  <ChoiceField
                    label={say('May be used')}
                    path="insteadId"
                    value={insteadId}
                    choices={choices}
                    onChange={setInsteadId}
                  />
                  <QuantityField
                    label={say('Amount that does the work of 1')}
                    path="ratio"
                    unit=""
                    value={ratio}
                    onChange={setRatio}
                  />
                </div>
                <Button type="submit" weight="main" disabled={add.busy}>
                  {say('Allow it')}
                </Button>
              </Form>
            </>
          );
        }}
      </Shown>
    </Dialog>
  );
}
