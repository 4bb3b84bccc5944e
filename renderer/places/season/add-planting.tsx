import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { convert } from '../../../planner/units/convert.ts';
import type { UnitSystem } from '../../../planner/units/system.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type InputOf, useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { FlagField } from '../../fields/flag-field.tsx';
import { Form } from '../../fields/form.tsx';
import { CountField, QuantityField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import { BedPicks } from './bed-picks.tsx';
import type { BoardData, Choices, CropChoice } from './board-data.ts';
import { EntryPreview } from './entry-preview.tsx';

/** What an entry begins with, e.g. from a gap of the board. */
export type PlantingStart = {
  readonly cropId?: string;
  readonly method?: CropChoice['method'];
  readonly inBed?: IsoDate;
  readonly bedIds?: readonly string[];
};

type Entry = InputOf<typeof api.plantings.add>['entry'];

const intervalText = ([least, most]: readonly [number, number]): string =>
  least === most ? say('{least} days', { least }) : say('{least} to {most} days', { least, most });

/** A published spacing as it is measured out: to the quarter inch or the half centimetre. */
function tidy_m(spacing_m: number, system: UnitSystem): number {
  const step_m = system === 'us' ? convert(0.25, 'in', 'm') : convert(0.5, 'cm', 'm');
  return Number((Math.round(spacing_m / step_m) * step_m).toPrecision(12));
}

const methodTexts = {
  direct: say('Sown in place'),
  transplant: say('Raised and set out'),
  set: say('Set (tuber, bulb, crown)'),
} as const;
const anchors = [
  { value: 'in-bed', text: say('Into the bed on') },
  { value: 'sow', text: say('Sown on') },
  { value: 'first-harvest', text: say('First harvest on') },
] as const;
const layouts = [
  { value: 'staggered', text: say('Staggered') },
  { value: 'square', text: say('Square') },
  { value: 'rows', text: say('Rows') },
] as const;

export function AddPlanting(props: { readonly start: PlantingStart; readonly data: BoardData; readonly onClose: () => void }) {
  const choices = useRead(api.plantings.choices, { seasonId: props.data.season.id });
  return (
    <Dialog title={say('Add a planting or a succession')} onClose={props.onClose} wide>
      <Shown reading={choices}>{(found) => <EntryForm {...props} choices={found} />}</Shown>
    </Dialog>
  );
}

function entryOf(crop: CropChoice, start: PlantingStart, fallback: IsoDate, system: UnitSystem): Entry {
  return {
    cropId: crop.cropId,
    varietyId: null,
    method: start.method ?? crop.method,
    anchor: { at: 'in-bed', date: start.inBed ?? fallback },
    datesBy: 'days',
    window_days: null,
    layout: crop.layout,
    inRow_m: tidy_m(crop.inRow_m ?? 0, system),
    row_m: tidy_m(crop.row_m ?? crop.inRow_m ?? 0, system),
    margin_m: null,
    seedsPerHole: 1,
    cellsPerTray: null,
  };
}

function EntryForm(props: {
  readonly start: PlantingStart;
  readonly data: BoardData;
  readonly choices: Choices;
  readonly onClose: () => void;
}) {
  const { choices, data, start } = props;
  const reader = useReader();
  const fallback = data.rules.lastFrost ?? data.rules.start;
  const first = choices.crops.find((crop) => crop.cropId === start.cropId) ?? choices.crops[0];
  const [entry, setEntry] = useState<Entry | null>(first === undefined ? null : entryOf(first, start, fallback, reader.system));
  const [bedIds, setBedIds] = useState<readonly string[]>(start.bedIds ?? []);
  const [isSuccession, setSuccession] = useState(false);
  const [interval_days, setInterval] = useState<number | null>(first?.succession_days ?? 14);
  const [notAfter, setNotAfter] = useState<IsoDate | null>(data.rules.firstFrost);
  const [by, setBy] = useState<'interval' | 'heat'>('interval');
  const add = useChange(api.plantings.add);
  const crop = choices.crops.find((each) => each.cropId === entry?.cropId);
  if (entry === null || crop === undefined) return <p>{say('There is no crop in the library. Add one in Library, Crops.')}</p>;
  const set = (change: Partial<Entry>) => setEntry({ ...entry, ...change });
  const succession = isSuccession && interval_days !== null && notAfter !== null ? { interval_days, notAfter, by } : null;
  const spans = bedIds.map((bedId) => ({ bedId, fromShare: 0, toShare: 1 }));
  const input = { seasonId: data.season.id, entry, spans, succession };
  const save = async (): Promise<void> => {
    const done = await add.run(
      input,
      isSuccession ? say('Added a succession of {crop}.', { crop: crop.name }) : say('Added {crop}.', { crop: crop.name }),
    );
    if (done !== undefined) props.onClose();
  };
  return (
    <Form
      label={say('Planting')}
      failure={add.failure}
      paths={[
        'cropId',
        'entry.inRow_m',
        'entry.row_m',
        'entry.margin_m',
        'anchor.date',
        'datesBy',
        'notAfter',
        'interval_days',
        'succession.by',
      ]}
      onSave={() => void save()}
    >
      <div className="form-pair">
        <ChoiceField
          label={say('Crop')}
          path="cropId"
          value={entry.cropId}
          choices={choices.crops.map((each) => ({ value: each.cropId, text: each.name }))}
          onChange={(cropId) => {
            const next = choices.crops.find((each) => each.cropId === cropId);
            if (next === undefined) return;
            setEntry({ ...entryOf(next, {}, fallback, reader.system), anchor: entry.anchor });
            setInterval(next.succession_days ?? 14);
          }}
        />
        <ChoiceField
          label={say('Variety')}
          value={entry.varietyId ?? ''}
          choices={[
            { value: '', text: crop.varieties.length === 0 ? say('none in the library') : say('any') },
            ...crop.varieties.map((each) => ({ value: each.varietyId, text: each.name })),
          ]}
          onChange={(varietyId) => set({ varietyId: varietyId === '' ? null : varietyId })}
        />
      </div>
      <div className="form-pair">
        <ChoiceField
          label={say('How')}
          value={entry.method}
          choices={crop.methods.map((method) => ({ value: method, text: methodTexts[method] }))}
          onChange={(method) => set({ method })}
        />
        <ChoiceField
          label={say('Dates by')}
          path="datesBy"
          value={entry.datesBy}
          choices={[
            { value: 'days', text: say('Days with ten hours of light') },
            { value: 'hand', text: say('Plain days') },
            ...(crop.hasHeat ? [{ value: 'heat' as const, text: say('Heat of the place') }] : []),
          ]}
          onChange={(datesBy) => set({ datesBy })}
        />
      </div>
      <div className="form-pair">
        <ChoiceField
          label={say('Known date')}
          value={entry.anchor.at}
          choices={anchors.filter((each) => each.value !== 'sow' || entry.method !== 'set')}
          onChange={(at) => set({ anchor: { ...entry.anchor, at } })}
        />
        <DateField
          label={say('Date')}
          path="anchor.date"
          needed
          value={entry.anchor.date}
          onChange={(date) => (date === null ? undefined : set({ anchor: { ...entry.anchor, date } }))}
        />
      </div>
      <div className="form-pair">
        <ChoiceField label={say('Layout')} value={entry.layout} choices={layouts} onChange={(layout) => set({ layout })} />
        <QuantityField
          label={entry.layout === 'rows' ? say('In the row') : say('Spacing')}
          path="entry.inRow_m"
          unit="m_short"
          needed
          value={entry.inRow_m === 0 ? null : entry.inRow_m}
          onChange={(inRow_m) => set({ inRow_m: inRow_m ?? 0, ...(entry.layout === 'rows' ? {} : { row_m: inRow_m ?? 0 }) })}
        />
      </div>
      <div className="form-pair">
        {entry.layout === 'rows' ? (
          <QuantityField
            label={say('Between rows')}
            path="entry.row_m"
            unit="m_short"
            needed
            value={entry.row_m === 0 ? null : entry.row_m}
            onChange={(row_m) => set({ row_m: row_m ?? 0 })}
          />
        ) : null}
        <QuantityField
          label={say('Margin to the edge')}
          path="entry.margin_m"
          unit="m_short"
          hint={say('Empty: half the spacing')}
          value={entry.margin_m}
          onChange={(margin_m) => set({ margin_m })}
        />
        <CountField
          label={say('Seeds in a hole')}
          value={entry.seedsPerHole}
          onChange={(value) => set({ seedsPerHole: value ?? 1 })}
        />
      </div>
      <FlagField
        label={say('A succession: the same again, until a last date')}
        value={isSuccession}
        onChange={setSuccession}
        {...(crop.published === null
          ? {}
          : { hint: say('Published interval: {interval}', { interval: intervalText(crop.published) }) })}
      />
      {isSuccession ? (
        <div className="form-pair">
          <CountField
            label={by === 'heat' ? say('Days between harvests') : say('Days between sowings')}
            path="interval_days"
            value={interval_days}
            onChange={setInterval}
          />
          <DateField label={say('None after')} path="notAfter" needed value={notAfter} onChange={setNotAfter} />
          {crop.hasHeat ? (
            <ChoiceField
              label={say('Spaced')}
              path="succession.by"
              value={by}
              choices={[
                { value: 'interval', text: say('Evenly') },
                { value: 'heat', text: say('By heat, for even harvests') },
              ]}
              onChange={setBy}
            />
          ) : null}
        </div>
      ) : null}
      <BedPicks
        data={data}
        chosen={bedIds}
        onChange={setBedIds}
        hint={
          isSuccession
            ? say('Each sowing goes to the first of these beds that is free and rested.')
            : say('One planting over all beds chosen. None: it waits without a bed.')
        }
      />
      {entry.inRow_m > 0 && entry.row_m > 0 ? <EntryPreview input={input} /> : null}
      <Button type="submit" weight="main" disabled={add.busy}>
        {say('Add')}
      </Button>
    </Form>
  );
}
