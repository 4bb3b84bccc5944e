import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { airGap_m } from '../../../planner/irrigation/air-gap.ts';
import { CATCH_SHARE, firstFlush } from '../../../planner/irrigation/rain-catch.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { FlagField } from '../../fields/flag-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField, ShareField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { BoreField } from './bore-field.tsx';
import type { LineData } from './line-data.ts';

type Supply = LineData['line'];

const supplies = [
  { value: 'reservoir', text: say('A barrel, tank or cistern') },
  { value: 'tap', text: say('A tap under pressure') },
] as const;

const sources = [
  { value: 'public', text: say('Drinking-water supply') },
  { value: 'well', text: say('Well') },
  { value: 'surface', text: say('Pond or stream') },
  { value: 'roof', text: say('Roof') },
  { value: 'reuse', text: say('Used water') },
] as const;

const numbers = [
  'reservoir_L',
  'reservoirArea_m2',
  'highLevel_m',
  'lowLevel_m',
  'usableShare',
  'floatTopUp_L_per_day',
  'tapHead_m',
  'tapFlow_L_per_min',
  'ventHole_m',
  'reserveHead_m',
  'water_C',
  'roofArea_m2',
  'roofShare',
  'firstFlush_mm',
  'level_L',
] as const;

/** The source of a line: its size and levels, the roof that fills it, what is in it now. */
export function SupplyDialog({ data, onClose }: { readonly data: LineData; readonly onClose: () => void }) {
  const reader = useReader();
  const set = useChange(api.waterLines.setSupply);
  const [values, setValues] = useState<Supply>(data.line);
  const put = (change: Partial<Supply>): void => setValues({ ...values, ...change });
  const tap = values.supply === 'tap';
  const save = async (): Promise<void> => {
    const { id, revision, reservoirBase_m: _base, ...rest } = values;
    const done = await set.run(
      { lineId: id, values: { ...rest, levelDate: rest.levelDate === '' ? null : rest.levelDate }, revision },
      say('Changed the supply.'),
    );
    if (done !== undefined) onClose();
  };
  return (
    <Dialog title={say('The supply')} onClose={onClose} wide>
      <Form
        onSave={() => void save()}
        failure={set.failure}
        label={say('The supply')}
        paths={['name', 'values.name', ...numbers, ...numbers.map((name) => `values.${name}`)]}
      >
        <TextField label={say('Name of the line')} path="values.name" value={values.name} onChange={(name) => put({ name })} />
        <div className="form-pair">
          <ChoiceField label={say('Kind')} value={values.supply} choices={supplies} onChange={(supply) => put({ supply })} />
          <ChoiceField
            label={say('Water comes from')}
            value={values.supplySource}
            choices={sources}
            onChange={(supplySource) => put({ supplySource })}
          />
        </div>
        {tap ? (
          <div className="form-pair">
            <QuantityField
              label={say('Head at the shut tap')}
              unit="m"
              path="values.tapHead_m"
              value={values.tapHead_m}
              onChange={(tapHead_m) => put({ tapHead_m })}
              hint={say('10 m is about 1 bar (14 psi)')}
            />
            <QuantityField
              label={say('Flow of the open tap')}
              unit="L_per_min"
              path="values.tapFlow_L_per_min"
              value={values.tapFlow_L_per_min}
              onChange={(tapFlow_L_per_min) => put({ tapFlow_L_per_min })}
              hint={say('Time a bucket')}
            />
          </div>
        ) : (
          <>
            <div className="form-pair">
              <QuantityField
                label={say('Holds')}
                unit="L"
                path="values.reservoir_L"
                value={values.reservoir_L}
                onChange={(reservoir_L) => put({ reservoir_L })}
              />
              <ShareField
                label={say('Of it usable')}
                path="values.usableShare"
                value={values.usableShare}
                onChange={(usableShare) => put({ usableShare: usableShare ?? 0 })}
                hint={say('Above the level at which the pump must stop')}
              />
            </div>
            <div className="form-pair">
              <QuantityField
                label={say('Water level when full')}
                unit="m"
                path="values.highLevel_m"
                value={values.highLevel_m}
                onChange={(highLevel_m) => put({ highLevel_m })}
                hint={say('Over the site’s zero level')}
              />
              <QuantityField
                label={say('Lowest water level')}
                unit="m"
                path="lowLevel_m"
                value={values.lowLevel_m}
                onChange={(lowLevel_m) => put({ lowLevel_m })}
              />
            </div>
            <div className="form-pair">
              <QuantityField
                label={say('Area of the water in it')}
                unit="m2"
                path="values.reservoirArea_m2"
                value={values.reservoirArea_m2}
                onChange={(reservoirArea_m2) => put({ reservoirArea_m2 })}
              />
              <QuantityField
                label={say('A float lets in, a day')}
                unit="L_per_day"
                path="values.floatTopUp_L_per_day"
                value={values.floatTopUp_L_per_day}
                onChange={(floatTopUp_L_per_day) => put({ floatTopUp_L_per_day })}
                hint={say('Empty where it is filled by hand')}
              />
            </div>
            <div className="form-pair">
              <QuantityField
                label={say('In it when last looked at')}
                unit="L"
                path="values.level_L"
                value={values.level_L}
                onChange={(level_L) => put({ level_L })}
              />
              <DateField
                label={say('Looked at on')}
                path="values.levelDate"
                value={values.levelDate as IsoDate | null}
                onChange={(levelDate) => put({ levelDate })}
              />
            </div>
            <FlagField
              label={say('The line has a vent above the highest water')}
              value={values.vented}
              onChange={(vented) => put({ vented })}
              hint={say('It lets air in when the pump stops, so that no siphon forms')}
            />
            <BoreField
              label={say('Hole of the vent')}
              path="values.ventHole_m"
              value_m={values.ventHole_m}
              onChange={(ventHole_m) => put({ ventHole_m })}
              hint={say('Empty for a vent that does not leak while pumping')}
            />
            <FlagField
              label={say('The vessel is food grade and its past is known')}
              value={values.foodGrade}
              onChange={(foodGrade) => put({ foodGrade })}
            />
            <fieldset className="form-group">
              <legend>{say('Roof that fills it')}</legend>
              <div className="form-pair">
                <QuantityField
                  label={say('Roof area, seen from above')}
                  unit="m2"
                  path="values.roofArea_m2"
                  value={values.roofArea_m2}
                  onChange={(roofArea_m2) => put({ roofArea_m2 })}
                  hint={say('Empty for none')}
                />
                <ShareField
                  label={say('Of the rain it gives')}
                  path="values.roofShare"
                  value={values.roofShare}
                  onChange={(roofShare) => put({ roofShare })}
                  hint={say('Metal {metal} %, shingle {asphaltShingle} %, tiles {tiles} %', {
                    metal: CATCH_SHARE.metal * 100,
                    asphaltShingle: CATCH_SHARE.asphaltShingle * 100,
                    tiles: CATCH_SHARE.tiles * 100,
                  })}
                />
              </div>
              <QuantityField
                label={say('First flush turned away')}
                unit="mm"
                path="values.firstFlush_mm"
                value={values.firstFlush_mm}
                onChange={(firstFlush_mm) => put({ firstFlush_mm })}
                hint={say('At least {depth} (10 gal per 1000 ft²), more from a dirty roof', {
                  depth: reader.print(firstFlush(1).depth_mm, 'mm', 2),
                })}
              />
            </fieldset>
          </>
        )}
        <div className="form-pair">
          <QuantityField
            label={say('Head kept in hand at every valve')}
            unit="m"
            path="values.reserveHead_m"
            value={values.reserveHead_m}
            onChange={(reserveHead_m) => put({ reserveHead_m: reserveHead_m ?? 0 })}
            hint={say('0.10 m costs 2 to 3 % of the flow')}
          />
          <QuantityField
            label={say('Water temperature')}
            unit="C"
            path="values.water_C"
            value={values.water_C}
            onChange={(water_C) => put({ water_C: water_C ?? 0 })}
          />
        </div>
        {values.supplySource === 'public' ? (
          <p className="soft small">
            {say(
              'Filling from a drinking-water tap: an air gap of {airGap} above the rim for a 3/4 in tap, twice its width and never under 1 in. The local code and the water supplier decide.',
              { airGap: reader.print(airGap_m(0.019), 'm_short') },
            )}
          </p>
        ) : null}
        <Cautions ids={cautionsOf(values)} folded />
        <Button type="submit" weight="main" disabled={set.busy}>
          {say('Save the supply')}
        </Button>
      </Form>
    </Dialog>
  );
}

function cautionsOf(values: Supply): readonly string[] {
  const ids: string[] = [];
  if (values.supplySource === 'public') ids.push('backflow');
  else ids.push('hose-sanitation-and-drinking');
  if (values.supplySource === 'roof' || values.roofArea_m2 !== null) ids.push('rain-water-on-food');
  if (values.supply === 'reservoir') ids.push('standing-water-children', 'mosquitoes', 'food-grade-containers');
  return ids;
}
