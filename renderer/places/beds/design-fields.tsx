import { Caution } from '../../cautions/caution.tsx';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { QuantityField, ShareField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import { kindChoices, outlineChoices, wateringChoices } from './bed-words.ts';
import { CornersField } from './corners-field.tsx';
import type { DesignEntry } from './design-sheet.tsx';

type Values = DesignEntry['values'];
type Numeric = { [Key in keyof Values]: Values[Key] extends number | null ? Key : never }[keyof Values];

/** Outline, walls, watering and cover of a design. Only the measures that its shape has are asked. */
export function DesignFields({ values, onChange }: { readonly values: Values; readonly onChange: (values: Values) => void }) {
  const set = (change: Partial<Values>): void => onChange({ ...values, ...change });
  const size = (key: Numeric, label: string, hint?: string) => (
    <QuantityField
      label={label}
      name={key}
      value={values[key]}
      onChange={(value) => set({ [key]: value })}
      {...(hint === undefined ? {} : { hint })}
    />
  );
  const { outline, watering } = values;
  const isMound = outline === 'half-ellipsoid' || outline === 'ridge';
  return (
    <>
      <TextField label={say('Name')} path="name" value={values.name} onChange={(name) => set({ name })} needed />
      <div className="form-pair">
        <ChoiceField label={say('Kind')} value={values.kind} choices={kindChoices} onChange={(kind) => set({ kind })} />
        <ChoiceField
          label={say('Outline')}
          value={outline}
          choices={outlineChoices}
          onChange={(next) => set(withOutline(values, next))}
        />
      </div>
      {outline === 'polygon' ? (
        <CornersField corners={values.polygon_m ?? []} onChange={(polygon_m) => set({ polygon_m })} />
      ) : outline === 'round' ? (
        <QuantityField
          label={say('Diameter')}
          name="length_m"
          value={values.length_m}
          onChange={(d) => set({ length_m: d ?? Number.NaN, width_m: d ?? Number.NaN })}
        />
      ) : outline === 'hexagon' ? (
        <QuantityField
          label={say('Across flats')}
          name="width_m"
          value={values.width_m}
          onChange={(d) => set({ length_m: d ?? Number.NaN, width_m: d ?? Number.NaN })}
        />
      ) : (
        <div className="form-pair">
          {size('length_m', say('Length'))}
          {size('width_m', say('Width'))}
        </div>
      )}
      {outline === 'ridge'
        ? size('topWidth_m', say('Width of the crown'), say('Flat top; the ends slope as the sides do'))
        : null}
      <div className="form-pair">
        {size('depth_m', isMound ? say('Height') : say('Wall'))}
        {size('fillDepth_m', say('Fill depth'), say('Surface above the floor'))}
      </div>
      {isMound || outline === 'polygon' ? null : (
        <div className="form-pair">
          {size('bottomLength_m', outline === 'round' ? say('Floor diameter') : say('Floor length'), say('Empty: upright walls'))}
          {outline === 'round' ? null : size('bottomWidth_m', say('Floor width'))}
        </div>
      )}
      <ChoiceField
        label={say('Watering')}
        value={watering}
        choices={wateringChoices}
        onChange={(next) => set({ watering: next })}
      />
      {watering === 'basin' ? (
        <>
          <div className="form-pair">
            {outline === 'round' ? (
              <QuantityField
                label={say('Basin diameter')}
                name="basinLength_m"
                value={values.basinLength_m}
                onChange={(d) => set({ basinLength_m: d, basinWidth_m: d })}
              />
            ) : (
              size('basinLength_m', say('Basin length'))
            )}
            {outline === 'round' ? null : size('basinWidth_m', say('Basin width'))}
          </div>
          <div className="form-pair">
            {size('basinDepth_m', say('Basin rim'))}
            {size('basinFill_m', say('Water level'), say('When filled'))}
          </div>
          <Caution id="standing-water-children" folded />
          <Caution id="mosquitoes" folded />
        </>
      ) : null}
      {watering === 'reservoir' ? (
        <>
          <div className="form-pair">
            {size('reservoirDepth_m', say('Reservoir'))}
            {size('overflow_m', say('Overflow above the floor'))}
          </div>
          <ShareField
            label={say('Void')}
            path="reservoirVoid_share"
            value={values.reservoirVoid_share}
            onChange={(reservoirVoid_share) => set({ reservoirVoid_share })}
            hint={say('Gravel about 40 % (practice); from 80 % on a void former, and the fill begins above it')}
          />
          <Caution id="food-grade-containers" folded />
        </>
      ) : null}
      <div className="form-pair">
        {size('mulchDepth_m', say('Mulch'))}
        {size('barrierOverlap_m', say('Weed barrier beyond the edge'), say('Empty: none'))}
      </div>
      <div className="form-pair">
        <TextField
          label={say('Walls of')}
          path="wallMaterial"
          value={values.wallMaterial}
          onChange={(wallMaterial) => set({ wallMaterial })}
        />
        <QuantityField
          label={say('Life of the fill')}
          name="fillLife_years"
          unit="years"
          value={values.fillLife_years}
          onChange={(life) => set({ fillLife_years: life ?? Number.NaN })}
        />
      </div>
      {values.kind === 'framed' ? <Caution id="treated-wood-tyres-pallets" folded /> : null}
    </>
  );
}

/** Measures that the new outline has not are left empty; a round bed gets one size. */
function withOutline(values: Values, outline: Values['outline']): Partial<Values> {
  const isOneSize = outline === 'round' || outline === 'hexagon';
  const isMound = outline === 'half-ellipsoid' || outline === 'ridge';
  return {
    outline,
    ...(isOneSize ? { length_m: values.width_m } : {}),
    ...(isMound ? { kind: 'mound' as const, fillDepth_m: values.depth_m } : {}),
    polygon_m:
      outline === 'polygon'
        ? (values.polygon_m ?? [
            [0, 0],
            [values.length_m, 0],
            [values.length_m, values.width_m],
            [0, values.width_m],
          ])
        : null,
    bottomLength_m: null,
    bottomWidth_m: null,
    topWidth_m: outline === 'ridge' ? values.width_m / 2 : null,
  };
}
