import { useState } from 'react';
import { readNumber } from '../../planner/units/parse-number.ts';
import { Caution } from '../cautions/caution.tsx';
import { say } from '../words/say.ts';
import { entryKey } from './entry-key.ts';
import { localToday } from './field-tasks.tsx';
import type { FieldEntry, FieldWeek } from './field-types.ts';

/** One pick: what, from which bed, how much. */
export function FieldHarvest({
  week,
  onLog,
}: {
  readonly week: FieldWeek;
  readonly onLog: (entry: FieldEntry, text: string) => void;
}) {
  const [plantingId, setPlantingId] = useState('');
  const [bedId, setBedId] = useState('');
  const [amount, setAmount] = useState('');
  const [unit, setUnit] = useState('');
  const [fault, setFault] = useState<string>();
  const planting = week.plantings.find((each) => each.plantingId === plantingId);

  const save = (): void => {
    const read = readNumber(amount, navigator.language);
    if (planting === undefined || read === undefined || read <= 0) {
      setFault(planting === undefined ? say('Choose what was picked.') : say('Write how much was picked.'));
      return;
    }
    const of = unit === '' ? planting.unit : unit;
    const bed = planting.beds.find((each) => each.bedId === bedId);
    onLog(
      {
        kind: 'harvest',
        id: entryKey(),
        date: localToday(),
        plantingId,
        bedId: bed?.bedId ?? null,
        amount: read,
        unit: of,
        note: '',
        confirmed: false,
      },
      say('{read} {of} of {planting}{more}', {
        read,
        of,
        planting: planting.name,
        more: bed === undefined ? '' : say(' from {bed}', { bed: bed.code }),
      }),
    );
    setAmount('');
    setFault(undefined);
  };

  return (
    <form
      className="field-card"
      aria-label={say('Harvest')}
      onSubmit={(event) => {
        event.preventDefault();
        save();
      }}
    >
      <label>
        {say('Picked')}
        <select
          value={plantingId}
          onChange={(event) => {
            setPlantingId(event.target.value);
            setBedId('');
            setUnit('');
          }}
        >
          <option value="">{say('Choose a planting')}</option>
          {week.plantings.map((each) => (
            <option key={each.plantingId} value={each.plantingId}>
              {each.name}
              {each.inWindow ? '' : say(' (out of its harvest window)')}
            </option>
          ))}
        </select>
      </label>
      {planting === undefined || planting.beds.length < 2 ? null : (
        <label>
          {say('Bed')}
          <select value={bedId} onChange={(event) => setBedId(event.target.value)}>
            <option value="">{say('all of its beds')}</option>
            {planting.beds.map((each) => (
              <option key={each.bedId} value={each.bedId}>
                {each.code}
              </option>
            ))}
          </select>
        </label>
      )}
      <div className="field-pair">
        <label>
          {say('How much')}
          <input inputMode="decimal" value={amount} onChange={(event) => setAmount(event.target.value)} />
        </label>
        <label>
          {say('Unit')}
          <select value={unit === '' ? (planting?.unit ?? '') : unit} onChange={(event) => setUnit(event.target.value)}>
            {(planting?.units ?? ['']).map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        </label>
      </div>
      {fault === undefined ? null : (
        <p className="field-fault" role="alert">
          {fault}
        </p>
      )}
      <button type="submit" className="field-main">
        {say('Log the harvest')}
      </button>
      <Caution id="animals-flood-contamination" folded />
    </form>
  );
}
