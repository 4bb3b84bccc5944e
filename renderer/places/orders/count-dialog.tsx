import { Fragment, useState } from 'react';
import { tradeUnit } from '../../../planner/units/trade-unit.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import type { StockRow } from './stock-tab.tsx';

/** `worth_minor`: what all of it cost, asked where the books know no price of it. */
type Counted = { readonly materialId: string; readonly counted: number | null; readonly worth_minor: number | null };

/** The count sheet: what lies in the shed of each material. Lines left empty are not counted. */
export function CountDialog({ rows, onClose }: { readonly rows: readonly StockRow[]; readonly onClose: () => void }) {
  const reader = useReader();
  const today = useRead(api.soilTests.today, undefined);
  const materials = useRead(api.materials.list, undefined);
  const count = useChange(api.stock.count);
  const [who, setWho] = useState('');
  const [reason, setReason] = useState('');
  const [counts, setCounts] = useState<readonly Counted[]>(() =>
    rows.map((row) => ({ materialId: row.materialId, counted: null, worth_minor: null })),
  );
  const [more, setMore] = useState('');
  const set = (materialId: string, change: Partial<Counted>) =>
    setCounts(counts.map((each) => (each.materialId === materialId ? { ...each, ...change } : each)));
  // faults name a line by its place among those that are sent
  const done = counts.flatMap((each) =>
    each.counted === null
      ? []
      : [
          {
            materialId: each.materialId,
            counted: each.counted,
            unitCost_minor: each.worth_minor === null || each.counted === 0 ? null : each.worth_minor / each.counted,
          },
        ],
  );
  const pathOf = (materialId: string, field: 'counted' | 'unitCost_minor'): string =>
    `counts.${done.findIndex((each) => each.materialId === materialId)}.${field}`;
  const save = async (): Promise<void> => {
    if (today.state !== 'ready') return;
    const saved = await count.run(
      { date: today.data.today, who, reason, counts: done },
      say('Counted {done} materials.', { done: done.length }),
    );
    if (saved !== undefined) onClose();
  };
  return (
    <Dialog title={say('Count')} onClose={onClose} wide>
      <Shown reading={materials}>
        {(all) => {
          const byId = new Map(all.map((each) => [each.id, each]));
          return (
            <Form
              label={say('Count')}
              failure={count.failure}
              paths={['who', 'reason', ...done.flatMap((_, at) => [`counts.${at}.counted`, `counts.${at}.unitCost_minor`])]}
              onSave={() => void save()}
            >
              <div className="form-pair">
                <TextField label={say('Counted by')} path="who" value={who} onChange={setWho} needed />
                <TextField label={say('Why it differs, where it does')} path="reason" value={reason} onChange={setReason} />
              </div>
              <div className="count-lines">
                {counts.map((each) => {
                  const material = byId.get(each.materialId);
                  const books = rows.find((row) => row.materialId === each.materialId)?.onHand ?? 0;
                  const inBooks = rows.some((row) => row.materialId === each.materialId);
                  return (
                    <Fragment key={each.materialId}>
                      <QuantityField
                        label={material?.name ?? each.materialId}
                        path={pathOf(each.materialId, 'counted')}
                        hint={say('In the books {books}', { books: reader.print(books, tradeUnit(material?.baseUnit ?? '')) })}
                        unit={tradeUnit(material?.baseUnit ?? '')}
                        value={each.counted}
                        onChange={(counted) => set(each.materialId, { counted })}
                      />
                      {inBooks ? null : (
                        <MoneyField
                          label={say('What all of it cost: {material}', { material: material?.name ?? '' })}
                          path={pathOf(each.materialId, 'unitCost_minor')}
                          value={each.worth_minor}
                          onChange={(worth_minor) => set(each.materialId, { worth_minor })}
                          hint={say('0 where it cost nothing; empty where it is not known')}
                        />
                      )}
                    </Fragment>
                  );
                })}
              </div>
              <div className="row">
                <ChoiceField
                  label={say('Something else')}
                  value={more}
                  choices={[
                    { value: '', text: say('Choose a material') },
                    ...all
                      .filter((each) => !counts.some((known) => known.materialId === each.id))
                      .map((each) => ({ value: each.id, text: each.name })),
                  ]}
                  onChange={(id) => {
                    setMore('');
                    if (id !== '') setCounts([...counts, { materialId: id, counted: null, worth_minor: null }]);
                  }}
                />
              </div>
              <div className="row">
                <Button type="submit" weight="main" disabled={count.busy || counts.every((each) => each.counted === null)}>
                  {say('Take the counts')}
                </Button>
                <Button onClick={() => window.print()}>{say('Print the sheet')}</Button>
              </div>
            </Form>
          );
        }}
      </Shown>
    </Dialog>
  );
}
