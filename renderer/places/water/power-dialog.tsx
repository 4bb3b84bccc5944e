import { useState } from 'react';
import { BATTERY_FACTS } from '../../../planner/irrigation/battery.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField, ShareField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import type { LineData } from './line-data.ts';
import { cautionsOfPower } from './power-cautions.ts';

type Power = Omit<NonNullable<LineData['power']>, 'id' | 'lineId'>;

const kinds = [
  { value: 'mains', text: say('Mains outlet with a timer') },
  { value: 'battery', text: say('Battery or power pack') },
  { value: 'engine', text: say('Engine') },
] as const;

const batteries = [
  { value: 'lithium-iron-phosphate', text: say('Lithium iron phosphate') },
  { value: 'other-lithium', text: say('Other lithium') },
  { value: 'lead-acid', text: say('Lead-acid') },
] as const;

const plain: Power = {
  kind: 'mains',
  battery: null,
  capacity_Wh: null,
  usableShare: null,
  inverterShare: null,
  selfDischarge_share_per_month: null,
  controller_W: 1,
  idle_W: 0,
  idleOff_h: null,
  panel_W: null,
  panelLossShare: null,
  peakSun_h: null,
  limit_W: null,
};

/** The power of a line: what it is, what it holds, and what it takes while nothing runs. */
export function PowerDialog({ data, onClose }: { readonly data: LineData; readonly onClose: () => void }) {
  const set = useChange(api.waterLines.setPower);
  const [values, setValues] = useState<Power>(data.power ?? plain);
  const put = (change: Partial<Power>): void => setValues({ ...values, ...change });
  const battery = values.kind === 'battery';
  const facts = BATTERY_FACTS[values.battery ?? 'lithium-iron-phosphate'];
  const save = async (): Promise<void> => {
    const power = {
      ...plain,
      ...Object.fromEntries(Object.keys(plain).map((key) => [key, values[key as keyof Power]])),
    } as Power;
    const done = await set.run(
      {
        lineId: data.line.id,
        power: battery ? { ...power, battery: power.battery ?? 'lithium-iron-phosphate' } : { ...power, battery: null },
      },
      say('Changed the power.'),
    );
    if (done !== undefined) onClose();
  };
  return (
    <Dialog title={say('The power')} onClose={onClose} wide>
      <Form onSave={() => void save()} failure={set.failure} label={say('The power')} paths={['power']}>
        <ChoiceField label={say('Kind')} value={values.kind} choices={kinds} onChange={(kind) => put({ kind })} />
        {battery ? (
          <>
            <ChoiceField
              label={say('Battery')}
              value={values.battery ?? 'lithium-iron-phosphate'}
              choices={batteries}
              onChange={(kind) =>
                put({
                  battery: kind,
                  usableShare: BATTERY_FACTS[kind].usableShare,
                  selfDischarge_share_per_month: BATTERY_FACTS[kind].selfDischarge_share_per_month,
                })
              }
            />
            <div className="form-pair">
              <QuantityField
                label={say('Rated capacity')}
                unit="Wh"
                path="power.capacity_Wh"
                value={values.capacity_Wh}
                onChange={(capacity_Wh) => put({ capacity_Wh })}
              />
              <ShareField
                label={say('Of it usable')}
                path="power.usableShare"
                value={values.usableShare ?? facts.usableShare}
                onChange={(usableShare) => put({ usableShare })}
              />
            </div>
            <div className="form-pair">
              <ShareField
                label={say('Inverter passes on')}
                path="power.inverterShare"
                value={values.inverterShare ?? 1}
                onChange={(inverterShare) => put({ inverterShare })}
                hint={say('100 % for a direct-current pump; 85 to 90 % for an inverter')}
              />
              <ShareField
                label={say('Loses by itself in a month')}
                path="power.selfDischarge_share_per_month"
                value={values.selfDischarge_share_per_month ?? facts.selfDischarge_share_per_month}
                onChange={(selfDischarge_share_per_month) => put({ selfDischarge_share_per_month })}
              />
            </div>
            <div className="form-pair">
              <QuantityField
                label={say('Inverter takes while idle')}
                unit="W"
                path="power.idle_W"
                value={values.idle_W}
                onChange={(idle_W) => put({ idle_W: idle_W ?? 0 })}
                hint={say('5 to 22 W is seen on portable packs')}
              />
              <QuantityField
                label={say('Switches itself off after')}
                unit="h"
                path="power.idleOff_h"
                value={values.idleOff_h}
                onChange={(idleOff_h) => put({ idleOff_h })}
                hint={say('Hours without load; empty when it never does. A pack that sleeps also stops its timer')}
              />
            </div>
            <div className="form-pair">
              <QuantityField
                label={say('Panel')}
                unit="W"
                path="power.panel_W"
                value={values.panel_W}
                onChange={(panel_W) => put({ panel_W })}
                hint={say('Empty for none')}
              />
              <QuantityField
                label={say('Peak-sun hours')}
                unit="h"
                path="power.peakSun_h"
                value={values.peakSun_h}
                onChange={(peakSun_h) => put({ peakSun_h })}
                hint={say('Of the month of use, not the year’s mean')}
              />
            </div>
            <ShareField
              label={say('Lost between panel and battery')}
              path="power.panelLossShare"
              value={values.panelLossShare ?? 0.3}
              onChange={(panelLossShare) => put({ panelLossShare })}
            />
          </>
        ) : null}
        <div className="form-pair">
          <QuantityField
            label={say('Controller or timer takes')}
            unit="W"
            path="power.controller_W"
            value={values.controller_W}
            onChange={(controller_W) => put({ controller_W: controller_W ?? 0 })}
            hint={say('All day')}
          />
          <QuantityField
            label={say('Most at once')}
            unit="W"
            path="power.limit_W"
            value={values.limit_W}
            onChange={(limit_W) => put({ limit_W })}
            hint={say('Empty where it does not matter')}
          />
        </div>
        <Cautions ids={cautionsOfPower({ power: { ...values, id: '', lineId: '' } })} folded />
        <Button type="submit" weight="main" disabled={set.busy}>
          {say('Save the power')}
        </Button>
      </Form>
    </Dialog>
  );
}
