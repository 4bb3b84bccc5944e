import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { FactForm } from './fact-form.tsx';
import { unitOfFact } from './fact-unit.ts';
import { yieldText } from './yield-text.ts';

type CropOne = OutputOf<typeof api.crops.one>;
export type CropFactRow = CropOne['facts'][number];

const markWords = { seen: say('seen in the source'), memory: say('from memory'), practice: say('common practice') } as const;

/** One crop: every figure with its source, the grower's own over the library's, varieties, and what the records taught. */
export function CropSheet({ cropId, onClose }: { readonly cropId: string; readonly onClose: () => void }) {
  const [varietyId, setVarietyId] = useState<string | null>(null);
  const crop = useRead(api.crops.one, { cropId, varietyId });
  return (
    <Sheet title={crop.state === 'ready' ? crop.data.crop.name : say('Crop')} onClose={onClose}>
      <Shown reading={crop}>
        {(found) => (
          <>
            <p className="small soft">
              {[found.crop.botanicalName, found.crop.family, found.crop.notes].filter((text) => text !== '').join('. ')}
            </p>
            <Varieties found={found} varietyId={varietyId} onChoose={setVarietyId} />
            <Learned found={found} />
            <Facts found={found} varietyId={varietyId} />
          </>
        )}
      </Shown>
    </Sheet>
  );
}

function Varieties(props: {
  readonly found: CropOne;
  readonly varietyId: string | null;
  readonly onChoose: (id: string | null) => void;
}) {
  const { found } = props;
  const add = useChange(api.crops.addVariety);
  const [name, setName] = useState('');
  const save = async (): Promise<void> => {
    const done = await add.run({ cropId: found.crop.id, name }, say('Added {name}.', { name }));
    if (done === undefined) return;
    setName('');
    props.onChoose(done.varietyId);
  };
  return (
    <Form label={say('Varieties')} failure={add.failure} paths={['name']} onSave={() => void save()}>
      <ChoiceField
        label={say('Figures of')}
        value={props.varietyId ?? ''}
        choices={[
          { value: '', text: say('the crop as a whole') },
          ...found.varieties.map((each) => ({ value: each.id, text: each.name })),
        ]}
        onChange={(id) => props.onChoose(id === '' ? null : id)}
      />
      <div className="form-pair">
        <TextField label={say('New variety')} path="name" value={name} onChange={setName} />
        <Button type="submit" disabled={add.busy || name.trim() === ''}>
          {say('Add variety')}
        </Button>
      </div>
    </Form>
  );
}

function Learned({ found }: { readonly found: CropOne }) {
  const take = useChange(api.crops.takeLearned);
  const reader = useReader();
  if (found.learned.length === 0) return null;
  return (
    <section className="panel stack">
      <h3>{say('From your own records')}</h3>
      {found.learned.map((each) => (
        <dl key={`${each.varietyId} ${each.method} ${each.unit}`} className="facts small">
          {each.toHarvest_days === null ? null : (
            <>
              <dt>{say('Bed to first harvest')}</dt>
              <dd>
                {Math.round(each.toHarvest_days.mean)} d ({each.toHarvest_days.least}–{each.toHarvest_days.most}),{' '}
                {each.restsOn.toHarvest}
              </dd>
            </>
          )}
          {each.window_days === null ? null : (
            <>
              <dt>{say('Harvest lasted')}</dt>
              <dd>
                {Math.round(each.window_days.mean)} d, {each.restsOn.window}
              </dd>
            </>
          )}
          {each.yield_per_m2 === null ? null : (
            <>
              <dt>{say('Yield')}</dt>
              <dd>
                {yieldText(each.yield_per_m2.mean, each.unit, reader)} ({yieldText(each.yield_per_m2.least, each.unit, reader)} –{' '}
                {yieldText(each.yield_per_m2.most, each.unit, reader)}), {each.restsOn.yields}
              </dd>
            </>
          )}
        </dl>
      ))}
      <Button
        disabled={take.busy}
        onClick={() => void take.run({ cropId: found.crop.id }, say('Days and yields of your records are used from now on.'))}
      >
        {say('Use these days and yields')}
      </Button>
      <p className="small soft">{reader.system === 'us' ? say('Yields are per square metre, as in the library.') : ''}</p>
    </section>
  );
}

function Facts({ found, varietyId }: { readonly found: CropOne; readonly varietyId: string | null }) {
  const reader = useReader();
  const [open, setOpen] = useState<string | null>(null);
  const show = (number: number | null, words: string | null, name: string): string => {
    if (words !== null) return words;
    if (number === null) return say('not known');
    return reader.print(number, unitOfFact(name));
  };
  return (
    <table className="compare">
      <caption className="heard-only">{say('Figures of {crop} with their sources', { crop: found.crop.name })}</caption>
      <thead>
        <tr>
          <th scope="col">{say('Figure')}</th>
          <th scope="col">{say('Value')}</th>
          <th scope="col">{say('Where it comes from')}</th>
        </tr>
      </thead>
      <tbody>
        {found.facts.map((fact) => (
          <tr key={fact.name}>
            <th scope="row">{fact.title}</th>
            <td>
              <button type="button" className="figure" onClick={() => setOpen(open === fact.name ? null : fact.name)}>
                {show(fact.number, fact.words, fact.name)}
              </button>
              {open === fact.name ? (
                <FactForm fact={fact} cropId={found.crop.id} varietyId={varietyId} onClose={() => setOpen(null)} />
              ) : null}
            </td>
            <td className="small">
              {fact.origin === null
                ? ''
                : fact.origin === 'library'
                  ? `${fact.source}${fact.mark === null ? '' : `; ${markWords[fact.mark]}`}`
                  : `${fact.origin === 'own' ? say('Your own') : say('Your records')}${fact.source === '' ? '' : `: ${fact.source}`}`}
              {fact.origin !== null && fact.origin !== 'library' && (fact.libraryNumber !== null || fact.libraryWords !== null)
                ? say(' (library: {show})', { show: show(fact.libraryNumber, fact.libraryWords, fact.name) })
                : ''}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
