import { useRef, useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { FieldFrame } from '../../fields/field-frame.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { plantingText, readAmount } from './entry-text.ts';
import type { Choices, PlantingChoice } from './harvest-types.ts';
import { PlantingFinder } from './planting-finder.tsx';

const paths = [
  'date',
  'plantingId',
  'bedId',
  'amount',
  'unit',
  'unit_kg',
  'grade',
  'outletId',
  'culls_kg',
  'labour_min',
  'picker',
  'note',
];
const grades = ['first', 'second', 'processing'].map((value) => ({ value, text: value }));

/** One harvest in one line, by keyboard alone: bed or crop, amount, Enter. Day, unit, destination and picker stay for the next line. */
export function EntryLine({
  choices,
  date,
  onDate,
}: {
  readonly choices: Choices;
  readonly date: IsoDate;
  readonly onDate: (date: IsoDate) => void;
}) {
  const reader = useReader();
  const add = useChange(api.harvest.add);
  const finder = useRef<HTMLInputElement>(null);
  const amountField = useRef<HTMLInputElement>(null);
  const [planting, setPlanting] = useState<PlantingChoice | null>(null);
  const [bedId, setBed] = useState('');
  const [amountText, setAmount] = useState('');
  const [unit, setUnit] = useState('');
  const [unit_kg, setUnitWeight] = useState<number | null>(null);
  const [grade, setGrade] = useState('first');
  const [outletId, setOutlet] = useState('');
  const [labour_min, setMinutes] = useState<number | null>(null);
  const [culls_kg, setCulls] = useState<number | null>(null);
  const [picker, setPicker] = useState('');
  const [note, setNote] = useState('');
  const [unread, setUnread] = useState<string>();

  const units = planting === null ? [] : (choices.units[planting.cropId] ?? []);
  const asksWhether = add.failure?.faults.length === 1 && add.failure.faults[0]?.code === 'confirm';
  const asksWeight = add.failure?.faults.some((fault) => fault.code === 'no-weight') === true || unit_kg !== null;
  const choose = (next: PlantingChoice | null): void => {
    setPlanting(next);
    setBed('');
    if (next === null) return;
    const known = choices.units[next.cropId] ?? [];
    if (!known.some((each) => each.unit === unit)) setUnit(next.yieldUnit);
  };

  const save = async (confirmed: boolean): Promise<void> => {
    const read = readAmount(
      amountText,
      units.map((each) => each.unit),
      reader.locale,
    );
    if (planting !== null && read === null) {
      setUnread(
        amountText.trim() === ''
          ? say('Enter an amount.')
          : say('"{amountText}" is not an amount with a unit known for this crop.', { amountText }),
      );
      amountField.current?.focus();
      return;
    }
    setUnread(undefined);
    const chosenUnit = read?.unit ?? unit;
    const done = await add.run(
      {
        date,
        plantingId: planting?.plantingId ?? '',
        bedId: bedId === '' ? null : bedId,
        amount: read?.amount ?? 0,
        unit: chosenUnit === '' ? 'kg' : chosenUnit,
        unit_kg,
        grade,
        outletId: outletId === '' ? null : outletId,
        culls_kg: culls_kg ?? 0,
        labour_min,
        picker,
        note,
        confirmed,
      },
      planting === null
        ? undefined
        : say('Logged {amountText} {more} from {planting}.', {
            amountText,
            more: read?.unit === null ? chosenUnit : '',
            planting: plantingText(planting),
          }),
    );
    if (done === undefined) return;
    setPlanting(null);
    setAmount('');
    setMinutes(null);
    setCulls(null);
    setUnitWeight(null);
    setNote('');
    add.clear();
    finder.current?.focus();
  };

  const { last } = choices;
  const repeat = (): void => {
    if (last === null) return;
    const same = choices.plantings.find((each) => each.plantingId === last.plantingId) ?? null;
    setPlanting(same);
    setUnit(last.unit);
    setGrade(last.grade);
    setOutlet(last.outletId ?? '');
    setAmount(reader.entry(last.amount, ''));
    amountField.current?.focus();
    amountField.current?.select();
  };

  return (
    <section className="entry-line" aria-label={say('Enter a harvest')}>
      <Form onSave={() => void save(false)} failure={add.failure} paths={paths} label={say('Enter a harvest')}>
        <div className="entry-fields">
          <DateField label={say('Day')} path="date" value={date} onChange={(next) => next !== null && onDate(next)} />
          <PlantingFinder
            plantings={choices.plantings}
            chosen={planting}
            onChoose={choose}
            onDone={() => amountField.current?.focus()}
            input={finder}
          />
          <FieldFrame
            label={say('Amount')}
            path="amount"
            fault={unread}
            control={(control) => (
              <input
                {...control}
                ref={amountField}
                type="text"
                inputMode="decimal"
                autoComplete="off"
                value={amountText}
                onChange={(event) => setAmount(event.target.value)}
              />
            )}
          />
          <ChoiceField
            label={say('Unit')}
            path="unit"
            value={unit}
            choices={
              units.length === 0
                ? [{ value: unit, text: unit === '' ? say('as the crop is counted') : unit }]
                : units.map((each) => ({ value: each.unit, text: each.unit }))
            }
            onChange={setUnit}
          />
          {asksWeight ? (
            <QuantityField label={say('One weighs')} path="unit_kg" unit="kg" value={unit_kg} onChange={setUnitWeight} />
          ) : null}
          {planting !== null && planting.beds.length > 1 ? (
            <ChoiceField
              label={say('From bed')}
              path="bedId"
              value={bedId}
              choices={[
                { value: '', text: say('all its beds') },
                ...planting.beds.map((bed) => ({ value: bed.bedId, text: bed.code })),
              ]}
              onChange={setBed}
            />
          ) : null}
          <ChoiceField label={say('Grade')} path="grade" value={grade} choices={grades} onChange={setGrade} />
          <ChoiceField
            label={say('Goes to')}
            path="outletId"
            value={outletId}
            choices={[
              { value: '', text: say('not decided') },
              ...choices.outlets.map((each) => ({ value: each.outletId, text: each.name })),
            ]}
            onChange={setOutlet}
          />
          <QuantityField label={say('Took')} path="labour_min" unit="min" value={labour_min} onChange={setMinutes} />
          <QuantityField label={say('Culls')} path="culls_kg" unit="kg" value={culls_kg} onChange={setCulls} />
          <TextField label={say('Picker')} path="picker" value={picker} onChange={setPicker} />
          <TextField label={say('Note')} path="note" value={note} onChange={setNote} />
        </div>
        <div className="row">
          {asksWhether ? (
            <Button weight="main" autoFocus onClick={() => void save(true)}>
              {say('Yes, log it so')}
            </Button>
          ) : (
            <Button type="submit" weight="main" disabled={add.busy}>
              {say('Log harvest')}
            </Button>
          )}
          {last === null ? null : (
            <Button onClick={repeat}>
              {say('Again: {crop}, {amount} {unit}', { crop: last.crop, amount: last.amount, unit: last.unit })}
            </Button>
          )}
          <span className="soft small">
            {say('Type a bed or a crop, Enter; an amount, Enter. Day, unit and destination stay.')}
          </span>
        </div>
      </Form>
    </section>
  );
}
