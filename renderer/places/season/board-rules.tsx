import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { FlagField } from '../../fields/flag-field.tsx';
import { Form } from '../../fields/form.tsx';
import { CountField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import type { BoardData } from './board-data.ts';

const risks = [
  { value: '0.5', text: say('Frost after this date in 5 years of 10') },
  { value: '0.3', text: say('Frost after this date in 3 years of 10') },
  { value: '0.1', text: say('Frost after this date in 1 year of 10') },
] as const;

/** The chance of frost that dates are held against, and the years that families rest. */
export function BoardRules({ data, onClose }: { readonly data: BoardData; readonly onClose: () => void }) {
  const rules = useRead(api.seasons.rules, undefined);
  return (
    <Dialog title={say('Rules of the board')} onClose={onClose}>
      <Shown reading={rules}>{(kept) => <RulesForm kept={kept} data={data} onClose={onClose} />}</Shown>
    </Dialog>
  );
}

function RulesForm(props: {
  readonly kept: OutputOf<typeof api.seasons.rules>;
  readonly data: BoardData;
  readonly onClose: () => void;
}) {
  const reader = useReader();
  const save = useChange(api.seasons.setRules);
  const { frost } = props.data;
  const [risk, setRisk] = useState<(typeof risks)[number]['value']>(
    risks.find((each) => Number(each.value) === props.kept.frostRisk)?.value ?? '0.5',
  );
  const [mayRepeatCrop, setMayRepeat] = useState(props.kept.mayRepeatCrop);
  const [gapYears, setGapYears] = useState<Readonly<Record<string, number>>>(props.kept.gapYears);
  const families = [...new Set(props.data.plantings.map((planting) => planting.crop.family))].sort();
  const submit = async (): Promise<void> => {
    const done = await save.run({ frostRisk: Number(risk), gapYears, mayRepeatCrop }, say('The rules hold from now on.'));
    if (done !== undefined) props.onClose();
  };
  return (
    <Form label={say('Rules of the board')} failure={save.failure} paths={['frostRisk']} onSave={() => void submit()}>
      <ChoiceField label={say('Frost')} path="frostRisk" value={risk} choices={risks} onChange={setRisk} />
      <p className="small soft">
        {frost.from === 'not-known'
          ? say('No frost dates are known: read in a weather record, or enter dates in Farm.')
          : say('Now: last frost {lastFrost}, first frost {firstFrost}, {more}.', {
              lastFrost: reader.date(frost.lastFrost),
              firstFrost: reader.date(frost.firstFrost),
              more:
                frost.from === 'entered'
                  ? say('as entered in Farm')
                  : say('{years} years at {stationName}', {
                      years: frost.years,
                      stationName: frost.stationName ?? say('the station'),
                    }),
            })}
      </p>
      <FlagField
        label={say('Cuts of one crop may follow each other in a bed within the season')}
        value={mayRepeatCrop}
        onChange={setMayRepeat}
      />
      <fieldset>
        <legend>{say('Years until a family may come back')}</legend>
        <p className="small soft">
          {say('Empty means the usual 3 (grasses 1). With a known disease take its years without a host, and one more.')}
        </p>
        <div className="rule-years">
          {families.map((family) => (
            <CountField
              key={family}
              label={family}
              value={gapYears[family] ?? null}
              onChange={(value) => {
                const { [family]: _, ...rest } = gapYears;
                setGapYears(value === null ? rest : { ...rest, [family]: value });
              }}
            />
          ))}
        </div>
      </fieldset>
      <Button type="submit" weight="main" disabled={save.busy}>
        {say('Save')}
      </Button>
    </Form>
  );
}
