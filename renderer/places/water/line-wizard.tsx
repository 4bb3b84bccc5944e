import { useState } from 'react';
import { convert } from '../../../planner/units/convert.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Caution } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { CountField, QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { BoreField } from './bore-field.tsx';
import type { LineList } from './line-data.ts';

const arrangements = [
  { value: 'snake', text: say('One tube past all beds') },
  { value: 'comb', text: say('A header with a branch for each row') },
] as const;

const NO_BLOCK = '';

/** Round figures to begin with, in the reader's own units. */
const usualOf = {
  metric: {
    spacing_m: 1.2,
    rowSpacing_m: 1.5,
    lateral_m: 0.3,
    tee_m: 0.0095,
    outlet_m: 0.3,
    riser_m: 2,
    reservoir_L: 200,
    low_m: -0.6,
    rated_L_per_h: 1500,
    shutoff_m: 2.2,
  },
  us: {
    spacing_m: convert(4, 'ft', 'm'),
    rowSpacing_m: convert(5, 'ft', 'm'),
    lateral_m: convert(1, 'ft', 'm'),
    tee_m: convert(3 / 8, 'in', 'm'),
    outlet_m: convert(1, 'ft', 'm'),
    riser_m: convert(6, 'ft', 'm'),
    reservoir_L: convert(55, 'us_gal', 'L'),
    low_m: convert(-2, 'ft', 'm'),
    rated_L_per_h: convert(400, 'us_gal_per_h', 'L_per_h'),
    shutoff_m: convert(7, 'ft', 'm'),
  },
} as const;

/** One source, one pump, rows of beds: a whole line from a dozen figures. */
export function LineWizard(props: {
  readonly beds: LineList['beds'];
  readonly onClose: () => void;
  readonly onDrawn: (lineId: string) => void;
}) {
  const create = useChange(api.waterLines.create);
  const blocks = [...new Set(props.beds.map((bed) => bed.blockId as string))];
  const [name, setName] = useState(say('Line'));
  const [block, setBlock] = useState<string>(NO_BLOCK);
  const [rows, setRows] = useState<number | null>(1);
  const [bedsInRow, setBedsInRow] = useState<number | null>(8);
  const usual = usualOf[useReader().system];
  const [spacing_m, setSpacing] = useState<number | null>(usual.spacing_m);
  const [rowSpacing_m, setRowSpacing] = useState<number | null>(usual.rowSpacing_m);
  const [arrangement, setArrangement] = useState<'snake' | 'comb'>('snake');
  const [main_m, setMain] = useState<number | null>(0.0127);
  const [lateral_m, setLateral] = useState<number | null>(usual.lateral_m);
  const [tee_m, setTee] = useState<number | null>(usual.tee_m);
  const [outlet_m, setOutlet] = useState<number | null>(usual.outlet_m);
  const [riser_m, setRiser] = useState<number | null>(usual.riser_m);
  const [reservoir_L, setReservoir] = useState<number | null>(usual.reservoir_L);
  const [high_m, setHigh] = useState<number | null>(0);
  const [low_m, setLow] = useState<number | null>(usual.low_m);
  const [rated_L_per_h, setRated] = useState<number | null>(usual.rated_L_per_h);
  const [shutoff_m, setShutoff] = useState<number | null>(usual.shutoff_m);
  const [power_W, setPower] = useState<number | null>(25);

  const save = async (): Promise<void> => {
    const bedIds = block === NO_BLOCK ? [] : props.beds.filter((bed) => bed.blockId === block).map((bed) => bed.bedId as string);
    const drawn = await create.run(
      {
        name,
        supply: { supply: 'reservoir', reservoir_L, highLevel_m: high_m, lowLevel_m: low_m },
        pump: {
          name: say('Pump'),
          materialId: null,
          curveKind: 'rated',
          power_W: power_W ?? 0,
          inletHeight_m: low_m === null ? 0 : low_m - 0.05,
          count: 1,
          points: [
            { flow_L_per_h: 0, head_m: shutoff_m ?? 0 },
            { flow_L_per_h: rated_L_per_h ?? 0, head_m: 0 },
          ],
        },
        layout: {
          bedIds,
          rows: rows ?? 0,
          bedsInRow: bedsInRow ?? 0,
          spacing_m: spacing_m ?? 0,
          rowSpacing_m: rowSpacing_m ?? 0,
          arrangement,
          mainDiameter_m: main_m ?? 0,
          lateralDiameter_m: main_m ?? 0,
          lateral_m: lateral_m ?? 0,
          teeBore_m: tee_m,
          outlet_m: outlet_m ?? 0,
          riser_m: riser_m ?? 0,
        },
      },
      say('Drew the line {name}.', { name }),
    );
    if (drawn !== undefined) props.onDrawn(drawn.lineId);
  };

  return (
    <Dialog title={say('Draw a line')} onClose={props.onClose} wide>
      <Form onSave={() => void save()} failure={create.failure} label={say('A new water line')} paths={['name']}>
        <TextField label={say('Name')} path="name" value={name} onChange={setName} />
        <fieldset className="form-group">
          <legend>{say('Beds')}</legend>
          <ChoiceField
            label={say('Which beds')}
            value={block}
            choices={[
              { value: NO_BLOCK, text: say('Rows of equal beds, not yet in the farm') },
              ...blocks.map((each) => ({
                value: each,
                text: say('All beds of {block}', { block: blockName(props.beds, each) }),
              })),
            ]}
            onChange={setBlock}
          />
          {block === NO_BLOCK ? (
            <>
              <div className="form-pair">
                <CountField label={say('Rows')} path="layout.rows" value={rows} onChange={setRows} />
                <CountField label={say('Beds in a row')} path="layout.bedsInRow" value={bedsInRow} onChange={setBedsInRow} />
              </div>
              <div className="form-pair">
                <QuantityField
                  label={say('Between beds')}
                  unit="m"
                  path="layout.spacing_m"
                  value={spacing_m}
                  onChange={setSpacing}
                />
                <QuantityField
                  label={say('Between rows')}
                  unit="m"
                  path="layout.rowSpacing_m"
                  value={rowSpacing_m}
                  onChange={setRowSpacing}
                />
              </div>
            </>
          ) : null}
        </fieldset>
        <fieldset className="form-group">
          <legend>{say('Tubing')}</legend>
          <ChoiceField label={say('Arrangement')} value={arrangement} choices={arrangements} onChange={setArrangement} />
          <div className="form-pair">
            <BoreField
              label={say('Tube’s inside diameter')}
              path="layout.mainDiameter_m"
              value_m={main_m}
              onChange={setMain}
              hint={say('Measure it: “half-inch” is sold from 0.50 to 0.62 in (12.7 to 15.7 mm), a factor of 3 in loss')}
            />
            <BoreField
              label={say('Bore of the tees')}
              path="layout.teeBore_m"
              value_m={tee_m}
              onChange={setTee}
              hint={say('Of the barb inside the tube; empty where it does not narrow')}
            />
          </div>
          <div className="form-pair">
            <QuantityField
              label={say('Tube from the tee to the bed')}
              unit="m"
              path="layout.lateral_m"
              value={lateral_m}
              onChange={setLateral}
            />
            <QuantityField
              label={say('Tube inside the source')}
              unit="m"
              path="layout.riser_m"
              value={riser_m}
              onChange={setRiser}
            />
          </div>
          <QuantityField
            label={say('Height of the outlets')}
            unit="m"
            path="layout.outlet_m"
            value={outlet_m}
            onChange={setOutlet}
            hint={say('Over the site’s zero level')}
          />
        </fieldset>
        <fieldset className="form-group">
          <legend>{say('Source and pump')}</legend>
          <div className="form-pair">
            <QuantityField
              label={say('Reservoir holds')}
              unit="L"
              path="supply.reservoir_L"
              value={reservoir_L}
              onChange={setReservoir}
            />
            <QuantityField label={say('Pump takes')} unit="W" path="pump.power_W" value={power_W} onChange={setPower} />
          </div>
          <div className="form-pair">
            <QuantityField
              label={say('Water level when full')}
              unit="m"
              path="supply.highLevel_m"
              value={high_m}
              onChange={setHigh}
            />
            <QuantityField label={say('Lowest water level')} unit="m" path="supply.lowLevel_m" value={low_m} onChange={setLow} />
          </div>
          <div className="form-pair">
            <QuantityField
              label={say('Flow on the pump’s box')}
              unit="L_per_h"
              path="pump.points"
              value={rated_L_per_h}
              onChange={setRated}
              hint={say('At no height. The line never gets it; enter the pump’s table afterwards')}
            />
            <QuantityField
              label={say('Greatest height')}
              unit="m"
              value={shutoff_m}
              onChange={setShutoff}
              hint={say('Where the pump’s flow is nothing')}
            />
          </div>
        </fieldset>
        <Caution id="electricity-near-water" folded />
        <Button type="submit" weight="main" disabled={create.busy}>
          {say('Draw it')}
        </Button>
      </Form>
    </Dialog>
  );
}

/** A block as its beds' codes show it: `B-1 to B-24`. */
function blockName(beds: LineList['beds'], blockId: string): string {
  const codes = beds.filter((bed) => bed.blockId === blockId).map((bed) => bed.code);
  return codes.length === 1
    ? (codes[0] ?? '')
    : say('{codes} to {codes2} ({codes3})', { codes: codes[0], codes2: codes.at(-1), codes3: codes.length });
}
