import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import type { FactName } from './crop-columns.ts';
import type { CropFactRow } from './crop-sheet.tsx';
import { unitOfFact } from './fact-unit.ts';

/** The grower's own figure over the library's; emptied, the library's shows again. */
export function FactForm(props: {
  readonly fact: CropFactRow;
  readonly cropId: string;
  readonly varietyId: string | null;
  readonly onClose: () => void;
}) {
  const { fact } = props;
  const set = useChange(api.crops.setFact);
  const [number, setNumber] = useState(fact.number);
  const [words, setWords] = useState(fact.words ?? '');
  const [source, setSource] = useState(fact.origin === 'own' ? fact.source : '');
  const unit = unitOfFact(fact.name);
  const put = async (value: { readonly number: number | null; readonly words: string | null }): Promise<void> => {
    const done = await set.run(
      { cropId: props.cropId, varietyId: props.varietyId, name: fact.name as FactName, ...value, source },
      say('Your own figure is used from now on.'),
    );
    if (done !== undefined) props.onClose();
  };
  return (
    <Form
      label={say('Own figure: {fact}', { fact: fact.title })}
      failure={set.failure}
      paths={['number', 'words', 'source']}
      onSave={() => void put(fact.isNumber ? { number, words: null } : { number: null, words })}
    >
      {fact.isNumber ? (
        <QuantityField label={say('Own figure')} path="number" unit={unit} value={number} onChange={setNumber} />
      ) : (
        <TextField label={say('Own word')} path="words" value={words} onChange={setWords} />
      )}
      <TextField label={say('Where from')} path="source" value={source} onChange={setSource} />
      <div className="row">
        <Button type="submit" weight="main" disabled={set.busy}>
          {say('Save')}
        </Button>
        {fact.origin === 'own' ? (
          <Button disabled={set.busy} onClick={() => void put({ number: null, words: null })}>
            {say('Take away')}
          </Button>
        ) : null}
      </div>
    </Form>
  );
}
