import { useState } from 'react';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';

const none = { value: '', text: say('Choose one') } as const;

/** A new offer: material, supplier, package and price. */
export function AddOffer({ onClose, ...wanted }: { readonly materialId?: string; readonly onClose: () => void }) {
  const materials = useRead(api.materials.list, undefined);
  const suppliers = useRead(api.suppliers.list, undefined);
  const add = useChange(api.suppliers.addOffer);
  const [materialId, setMaterialId] = useState(wanted.materialId ?? '');
  const [supplierId, setSupplierId] = useState('');
  const [name, setName] = useState('');
  const [amount, setAmount] = useState<number | null>(null);
  const [price_minor, setPrice] = useState<number | null>(null);
  const save = async (): Promise<void> => {
    const added = await add.run(
      { materialId, supplierId, name, packageAmount: amount ?? 0, price_minor: price_minor ?? 0 },
      say('Added the offer {name}.', { name }),
    );
    if (added !== undefined) onClose();
  };
  return (
    <Dialog title={say('Add an offer')} onClose={onClose}>
      <Shown reading={materials}>
        {(allMaterials) => (
          <Shown reading={suppliers}>
            {(allSuppliers) => {
              const unit = tradeUnit(allMaterials.find((each) => each.id === materialId)?.baseUnit ?? 'kg');
              return (
                <Form
                  label={say('Add an offer')}
                  failure={add.failure}
                  paths={['materialId', 'supplierId', 'name', 'packageAmount', 'price_minor']}
                  onSave={() => void save()}
                >
                  <ChoiceField
                    label={say('Material')}
                    path="materialId"
                    value={materialId}
                    choices={[none, ...allMaterials.map((each) => ({ value: each.id, text: each.name }))]}
                    onChange={setMaterialId}
                  />
                  <ChoiceField
                    label={say('Supplier')}
                    path="supplierId"
                    value={supplierId}
                    choices={[none, ...allSuppliers.map((each) => ({ value: each.id, text: each.name }))]}
                    onChange={setSupplierId}
                  />
                  <TextField
                    label={say('Package')}
                    path="name"
                    value={name}
                    onChange={setName}
                    hint={say('As it is sold: bag of 50 lb')}
                  />
                  <div className="form-pair">
                    <QuantityField
                      label={say('Holds')}
                      needed
                      path="packageAmount"
                      unit={unit}
                      value={amount}
                      onChange={setAmount}
                    />
                    <MoneyField label={say('Price')} needed path="price_minor" value={price_minor} onChange={setPrice} />
                  </div>
                  <div className="row">
                    <Button type="submit" weight="main" disabled={add.busy}>
                      {say('Add')}
                    </Button>
                    <Button onClick={onClose}>{say('Not now')}</Button>
                  </div>
                </Form>
              );
            }}
          </Shown>
        )}
      </Shown>
    </Dialog>
  );
}
