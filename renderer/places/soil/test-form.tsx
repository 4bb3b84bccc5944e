import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { unlikelyValue } from '../../../planner/fertility/test-value.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { faultsAt } from '../../client/failure.ts';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField, ShareField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { BedChooser } from './bed-chooser.tsx';
import type { SoilTestRow } from './soil-types.ts';
import { bufferChoices, kindChoices, methodChoices, textureChoices, unitChoices } from './soil-words.ts';
import { emptyEntry, entryOf, inputOf, type TestEntry } from './test-entry.ts';

/** Enter a laboratory sheet, or change one. */
export function TestForm({
  test,
  today,
  onClose,
}: {
  readonly test: SoilTestRow | null;
  readonly today: IsoDate;
  readonly onClose: () => void;
}) {
  const [entry, setEntry] = useState<TestEntry>(() => (test === null ? emptyEntry(today) : entryOf(test)));
  const add = useChange(api.soilTests.add);
  const change = useChange(api.soilTests.save);
  const failure = add.failure ?? change.failure;
  const set = (part: Partial<TestEntry>) => setEntry({ ...entry, ...part });
  const save = async (): Promise<void> => {
    const done =
      test === null
        ? await add.run(inputOf(entry), say('Soil test kept.'))
        : await change.run({ testId: test.testId, revision: test.revision, test: inputOf(entry) }, say('Soil test changed.'));
    if (done !== undefined) onClose();
  };
  return (
    <Dialog title={test === null ? say('Enter a soil test') : say('Change soil test')} onClose={onClose} wide>
      <Form
        onSave={() => void save()}
        failure={failure}
        paths={[
          'date',
          'ph',
          'bufferPh',
          'bufferMethod',
          'organicMatterShare',
          'cec_meq_per_100g',
          'ec_dS_per_m',
          'lead_mg_per_kg',
          'depth_m',
          'values',
          'bedIds',
        ]}
        label={say('Soil test')}
      >
        <div className="form-pair">
          <DateField label={say('Sampled')} path="date" value={entry.date} onChange={(date) => set({ date })} needed />
          <TextField label={say('Sample')} path="sample" value={entry.sample ?? ''} onChange={(sample) => set({ sample })} />
        </div>
        <div className="form-pair">
          <TextField
            label={say('Laboratory')}
            path="laboratory"
            value={entry.laboratory ?? ''}
            onChange={(laboratory) => set({ laboratory })}
          />
          <ChoiceField
            label={say('Of')}
            value={entry.kind}
            choices={kindChoices}
            onChange={(kind) => set({ kind, method: kind === 'media' ? 'saturated-paste' : 'mehlich-3' })}
          />
        </div>
        <div className="form-pair">
          <ChoiceField
            label={say('Extraction method')}
            hint={say('Figures of two methods are never compared')}
            value={entry.method}
            choices={methodChoices}
            onChange={(method) => set({ method })}
          />
          <QuantityField
            label={say('Depth of the sample')}
            name="depth_m"
            unit="m_short"
            path="depth_m"
            value={entry.depth_m}
            onChange={(depth_m) => set({ depth_m })}
          />
        </div>
        <div className="form-pair">
          <QuantityField label={say('pH')} unit="" path="ph" value={entry.ph} onChange={(ph) => set({ ph })} />
          <ChoiceField
            label={say('Texture')}
            value={entry.texture ?? ''}
            choices={textureChoices}
            onChange={(texture) => set({ texture: texture === '' ? null : texture })}
          />
        </div>
        <div className="form-pair">
          <QuantityField
            label={say('Buffer pH')}
            unit=""
            path="bufferPh"
            value={entry.bufferPh}
            onChange={(bufferPh) => set({ bufferPh })}
          />
          <ChoiceField
            label={say('Buffer')}
            path="bufferMethod"
            hint={say('The sheet names it; each has its own lime table')}
            value={entry.bufferMethod ?? ''}
            choices={bufferChoices}
            onChange={(method) => set({ bufferMethod: method === '' ? null : method })}
          />
        </div>
        <div className="form-pair">
          <ShareField
            label={say('Organic matter')}
            path="organicMatterShare"
            value={entry.organicMatterShare}
            onChange={(organicMatterShare) => set({ organicMatterShare })}
          />
          <QuantityField
            label={say('CEC, meq/100 g')}
            unit=""
            path="cec_meq_per_100g"
            value={entry.cec_meq_per_100g}
            onChange={(cec_meq_per_100g) => set({ cec_meq_per_100g })}
          />
        </div>
        <div className="form-pair">
          <QuantityField
            label={say('EC, soluble salts')}
            unit="dS_per_m"
            path="ec_dS_per_m"
            value={entry.ec_dS_per_m}
            onChange={(ec_dS_per_m) => set({ ec_dS_per_m })}
          />
          <QuantityField
            label={say('Lead, mg/kg')}
            unit=""
            path="lead_mg_per_kg"
            value={entry.lead_mg_per_kg}
            onChange={(lead_mg_per_kg) => set({ lead_mg_per_kg })}
          />
        </div>
        {(entry.lead_mg_per_kg ?? 0) > 0 ? <Cautions ids={['lead-in-soil']} /> : null}
        <Figures entry={entry} set={set} fault={(at) => faultsAt(failure?.faults ?? [], `values.${at}`)[0]?.message} />
        <BedChooser
          chosen={entry.bedIds}
          onChange={(bedIds) => set({ bedIds: [...bedIds] })}
          fault={failure?.faults.find((each) => each.path === 'bedIds')?.message}
        />
        <TextField label={say('Note')} path="note" lines={2} value={entry.note ?? ''} onChange={(note) => set({ note })} />
        <div className="row">
          <Button type="submit" weight="main" disabled={add.busy || change.busy}>
            {say('Save')}
          </Button>
          <Button onClick={onClose}>{say('Cancel')}</Button>
        </div>
      </Form>
    </Dialog>
  );
}

function Figures({
  entry,
  set,
  fault,
}: {
  readonly entry: TestEntry;
  readonly set: (part: Partial<TestEntry>) => void;
  readonly fault: (sentAs: number) => string | undefined;
}) {
  const [more, setMore] = useState('');
  const change = (at: number, part: Partial<TestEntry['values'][number]>) =>
    set({ values: entry.values.map((each, index) => (index === at ? { ...each, ...part } : each)) });
  // empty figures are not sent: the fault of a figure stands at its place among those that are
  const sentAs = (at: number) => entry.values.slice(0, at).filter((each) => each.value !== null).length;
  const symbol = more.trim();
  return (
    <fieldset className="test-figures">
      <legend>{say('Nutrients')}</legend>
      {entry.values.map((each, at) => {
        const warning =
          each.value === null || each.unit === 'lb/acre' || each.unit === 'kg/ha'
            ? null
            : unlikelyValue(each.nutrient, plainValue(each.value, each.unit, each.nutrient), each.unit);
        return (
          <div className="test-figure" key={each.nutrient}>
            <QuantityField
              label={each.nutrient}
              unit=""
              value={each.value}
              fault={each.value === null ? undefined : fault(sentAs(at))}
              hint={warning?.message}
              onChange={(value) => change(at, { value })}
            />
            <ChoiceField
              label={say('Unit of {nutrient}', { nutrient: each.nutrient })}
              value={each.unit}
              choices={unitChoices}
              onChange={(unit) => change(at, { unit })}
            />
          </div>
        );
      })}
      <div className="row">
        <TextField label={say('Another, by its symbol')} value={more} onChange={setMore} placeholder={say('NO3N, B, Zn …')} />
        <Button
          icon="add"
          disabled={symbol === '' || entry.values.some((each) => each.nutrient === symbol)}
          onClick={() => {
            set({ values: [...entry.values, { nutrient: symbol, value: null, unit: 'ppm' }] });
            setMore('');
          }}
        >
          {say('Add figure')}
        </Button>
      </div>
    </fieldset>
  );
}

/** For the warning only: what a figure would be in mg/kg. */
function plainValue(value: number, unit: string, nutrient: string): number {
  if (unit === '%') return value * 10_000;
  return unit === 'meq/100g' ? value * ({ Ca: 200.4, Mg: 121.5, K: 391 }[nutrient] ?? 230) : value;
}
