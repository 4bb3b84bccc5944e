import { useState } from 'react';
import type { PumpCurveKind } from '../../../planner/irrigation/pump-curve.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Caution } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { CountField, QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import type { LineData } from './line-data.ts';

const kinds: readonly { readonly value: PumpCurveKind; readonly text: string }[] = [
  { value: 'points', text: say('The maker’s table, two points or more') },
  { value: 'three-points', text: say('Three points: no flow, a middle, the most') },
  { value: 'one-point', text: say('One working point') },
  { value: 'rated', text: say('Only the figures on the box (a guess)') },
];

const wanted: Readonly<Record<PumpCurveKind, number>> = { points: 4, 'three-points': 3, 'one-point': 1, rated: 2 };

type Row = { readonly flow_L_per_h: number | null; readonly head_m: number | null };

/** The pump: its curve by points, watts, how many side by side, and where its inlet lies. */
export function PumpDialog({ data, onClose }: { readonly data: LineData; readonly onClose: () => void }) {
  const set = useChange(api.waterLines.setPump);
  const pump = data.pump;
  const [name, setName] = useState(pump?.name ?? say('Pump'));
  const [kind, setKind] = useState<PumpCurveKind>(pump?.curveKind ?? 'rated');
  const [rows, setRows] = useState<readonly Row[]>(
    data.plan.pump?.points ?? [
      { flow_L_per_h: 0, head_m: null },
      { flow_L_per_h: null, head_m: 0 },
    ],
  );
  const [power_W, setPower] = useState<number | null>(pump?.power_W ?? 25);
  const [count, setCount] = useState<number | null>(pump?.count ?? 1);
  const [inlet_m, setInlet] = useState<number | null>(pump?.inletHeight_m ?? data.line.lowLevel_m ?? 0);
  const shown =
    kind === 'points'
      ? rows
      : Array.from({ length: wanted[kind] }, (_, at): Row => rows[at] ?? { flow_L_per_h: null, head_m: null });
  const change = (at: number, values: Partial<Row>): void =>
    setRows(shown.map((row, index) => (index === at ? { ...row, ...values } : row)));
  const save = async (): Promise<void> => {
    const done = await set.run(
      {
        lineId: data.line.id,
        pump: {
          name,
          materialId: pump?.materialId ?? null,
          curveKind: kind,
          power_W: power_W ?? 0,
          inletHeight_m: inlet_m ?? 0,
          count: count ?? 1,
          points: shown.flatMap((row) =>
            row.flow_L_per_h === null || row.head_m === null ? [] : [{ flow_L_per_h: row.flow_L_per_h, head_m: row.head_m }],
          ),
        },
      },
      say('Changed {name}.', { name }),
    );
    if (done !== undefined) onClose();
  };
  return (
    <Dialog title={say('The pump')} onClose={onClose} wide>
      <Form onSave={() => void save()} failure={set.failure} label={say('The pump')} paths={['name']}>
        <TextField label={say('Name')} path="pump.name" value={name} onChange={setName} />
        <ChoiceField label={say('What is known of its curve')} value={kind} choices={kinds} onChange={setKind} />
        {shown.map((row, at) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: the points are told apart by their place in the list alone
          <div className="form-pair" key={at}>
            <QuantityField
              label={say('Flow, point {at}', { at: at + 1 })}
              unit="L_per_h"
              path={`points.${at}.flow_L_per_h`}
              value={row.flow_L_per_h}
              onChange={(flow_L_per_h) => change(at, { flow_L_per_h })}
            />
            <QuantityField
              label={say('Height, point {at}', { at: at + 1 })}
              unit="m"
              path={`points.${at}.head_m`}
              value={row.head_m}
              onChange={(head_m) => change(at, { head_m })}
            />
          </div>
        ))}
        {kind === 'points' ? (
          <div className="row">
            <Button icon="add" onClick={() => setRows([...shown, { flow_L_per_h: null, head_m: null }])}>
              {say('Another point')}
            </Button>
            {shown.length > 2 ? (
              <Button weight="quiet" onClick={() => setRows(shown.slice(0, -1))}>
                {say('Take the last one away')}
              </Button>
            ) : null}
          </div>
        ) : null}
        <div className="form-pair">
          <QuantityField
            label={say('Takes')}
            unit="W"
            path="pump.power_W"
            value={power_W}
            onChange={setPower}
            hint={say('The rated watts; they hardly change with the flow')}
          />
          <CountField label={say('How many side by side')} path="pump.count" value={count} onChange={setCount} />
        </div>
        <QuantityField
          label={say('Height of its inlet')}
          unit="m"
          path="pump.inletHeight_m"
          value={inlet_m}
          onChange={setInlet}
          hint={say('It must stay 5 cm (2 in) under water')}
        />
        <Caution id="electricity-near-water" folded />
        <Button type="submit" weight="main" disabled={set.busy}>
          {say('Save the pump')}
        </Button>
      </Form>
    </Dialog>
  );
}
