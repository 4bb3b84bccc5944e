import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField, ShareField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { HeapMix, type MixPart } from './heap-mix.tsx';
import type { Feedstock } from './soil-types.ts';
import { heapMethodChoices } from './soil-words.ts';

/** Mix feedstocks to a C:N and moisture, and start the heap. */
export function HeapDialog({ today, onClose }: { readonly today: IsoDate; readonly onClose: () => void }) {
  const stocks = useRead(api.compost.feedstocks, undefined);
  return (
    <Dialog title={say('Mix a compost heap')} onClose={onClose} wide>
      <Shown reading={stocks}>{(list) => <MixForm stocks={list} today={today} onClose={onClose} />}</Shown>
    </Dialog>
  );
}

function MixForm({
  stocks,
  today,
  onClose,
}: {
  readonly stocks: readonly Feedstock[];
  readonly today: IsoDate;
  readonly onClose: () => void;
}) {
  const reader = useReader();
  const start = useChange(api.compost.start);
  const [parts, setParts] = useState<readonly MixPart[]>([{ materialId: stocks[0]?.materialId ?? '', amount_kg: null }]);
  const [goalCN, setGoalCN] = useState<number | null>(30);
  const [goalMoisture, setGoalMoisture] = useState<number | null>(0.55);
  const [second, setSecond] = useState('');
  const [third, setThird] = useState('');
  const [startedDate, setStarted] = useState<IsoDate | null>(today);
  const [method, setMethod] = useState<(typeof heapMethodChoices)[number]['value']>('turned-windrow');
  const [place, setPlace] = useState('');
  const choices = stocks.map((each) => ({
    value: each.materialId,
    text: say('{each} (C:N {carbonToNitrogen}, {moistureShare} wet)', {
      each: each.name,
      carbonToNitrogen: reader.number(each.carbonToNitrogen, '', 2),
      moistureShare: reader.print(each.moistureShare, 'share', 2),
    }),
  }));
  const known = parts.flatMap((part) =>
    part.amount_kg === null || part.amount_kg <= 0 ? [] : [{ materialId: part.materialId, amount_kg: part.amount_kg }],
  );
  const save = async (): Promise<void> => {
    const made = await start.run({ startedDate: startedDate ?? '', method, place, parts: known }, say('The heap is started.'));
    if (made !== undefined) onClose();
  };
  return (
    <Form
      onSave={() => void save()}
      failure={start.failure}
      paths={['startedDate', 'method', 'place', 'parts']}
      label={say('Heap')}
    >
      {parts.map((part, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: lines of a list that is only added to and edited in place
        <div className="heap-part" key={at}>
          <ChoiceField
            label={say('Material {at}', { at: at + 1 })}
            value={part.materialId}
            choices={choices}
            onChange={(materialId) => setParts(parts.map((each, index) => (index === at ? { ...each, materialId } : each)))}
          />
          <QuantityField
            label={say('Amount')}
            unit="kg"
            hint={volumeHint(stocks, part, (value) => reader.print(value, 'bulk_L'))}
            value={part.amount_kg}
            onChange={(amount_kg) => setParts(parts.map((each, index) => (index === at ? { ...each, amount_kg } : each)))}
          />
          <Button
            icon="bin"
            name={say('Leave out material {at}', { at: at + 1 })}
            disabled={parts.length === 1}
            onClick={() => setParts(parts.filter((_, index) => index !== at))}
          />
        </div>
      ))}
      <div className="row">
        <Button icon="add" onClick={() => setParts([...parts, { materialId: stocks[0]?.materialId ?? '', amount_kg: null }])}>
          {say('Another material')}
        </Button>
      </div>
      <div className="form-pair">
        <QuantityField label={say('Wanted C:N')} unit="" hint={say('25 to 35 is best')} value={goalCN} onChange={setGoalCN} />
        <ShareField
          label={say('Wanted moisture')}
          hint={say('45 to 60 % is best')}
          value={goalMoisture}
          onChange={setGoalMoisture}
        />
      </div>
      <div className="form-pair">
        <ChoiceField
          label={say('Balance it with')}
          value={second}
          choices={[{ value: '', text: say('Nothing') }, ...choices]}
          onChange={setSecond}
        />
        <ChoiceField
          label={say('and with')}
          value={third}
          choices={[{ value: '', text: say('Nothing') }, ...choices]}
          onChange={setThird}
        />
      </div>
      {known.length === 0 || goalCN === null || goalMoisture === null ? (
        <p className="soft">{say('Enter an amount to see its C:N and moisture.')}</p>
      ) : (
        <HeapMix
          parts={known}
          goalCarbonToNitrogen={goalCN}
          goalMoistureShare={goalMoisture}
          secondId={second === '' ? null : second}
          thirdId={third === '' ? null : third}
          onTake={(more) => {
            setParts([...known, ...more]);
            setSecond('');
            setThird('');
          }}
        />
      )}
      <Cautions ids={['compost-heat']} folded />
      <div className="form-pair">
        <DateField label={say('Started')} path="startedDate" value={startedDate} onChange={setStarted} needed />
        <ChoiceField label={say('Method')} value={method} choices={heapMethodChoices} onChange={setMethod} />
      </div>
      <TextField label={say('Place')} path="place" value={place} onChange={setPlace} />
      <div className="row">
        <Button type="submit" weight="main" disabled={start.busy || known.length === 0}>
          {say('Start the heap')}
        </Button>
        <Button onClick={onClose}>{say('Cancel')}</Button>
      </div>
    </Form>
  );
}

function volumeHint(stocks: readonly Feedstock[], part: MixPart, print: (volume_L: number) => string): string | undefined {
  const density = stocks.find((each) => each.materialId === part.materialId)?.density_kg_per_m3;
  return density === null || density === undefined || part.amount_kg === null
    ? undefined
    : say('about {amount} loose', { amount: print((1000 * part.amount_kg) / density) });
}
