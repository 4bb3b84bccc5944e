import { useMemo, useState } from 'react';
import { packingBound } from '../../../planner/beds/packing-bound.ts';
import { explainPlants, type PlantCountInput, plantsInBed, type Spacing } from '../../../planner/beds/plant-count.ts';
import { InputError } from '../../../planner/errors.ts';
import { M_PER_INCH } from '../../../planner/units/constants.ts';
import { faultText } from '../../client/failure.ts';
import { useReader } from '../../client/reader.tsx';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import type { WholeBed } from './bed-types.ts';
import { PlanDrawing } from './plan-drawing.tsx';

const patterns = [
  { value: 'staggered', text: say('Staggered') },
  { value: 'square', text: say('Square') },
  { value: 'rows', text: say('Rows') },
] as const;
const layouts = [
  { value: 'most', text: say('As many as fit') },
  { value: 'centred', text: say('Laid out from the middle') },
] as const;
/** To begin with: 8 in, or 20 cm. */
const firstSpacing_m = { us: 8 * M_PER_INCH, metric: 0.2 } as const;

/** How many plants stand in the bed, and where: exact, in any outline. */
export function BedPlants({ bed }: { readonly bed: WholeBed }) {
  const { system } = useReader();
  const [pattern, setPattern] = useState<(typeof patterns)[number]['value']>('staggered');
  const [layout, setLayout] = useState<(typeof layouts)[number]['value']>('most');
  const [spacing_m, setSpacing] = useState<number | null>(firstSpacing_m[system]);
  const [row_m, setRow] = useState<number | null>(firstSpacing_m[system]);
  const [margin_m, setMargin] = useState<number | null>(null);
  const { outline } = bed.row;
  const counted = useMemo(() => {
    const spacing: Spacing =
      pattern === 'rows'
        ? { pattern, inRow_m: spacing_m ?? 0, rowSpacing_m: row_m ?? 0 }
        : { pattern, spacing_m: spacing_m ?? 0 };
    const input: PlantCountInput = { outline, spacing, layout, ...(margin_m === null ? {} : { edgeMargin_m: margin_m }) };
    try {
      return { input, ...plantsInBed(input), fault: null };
    } catch (error) {
      if (error instanceof InputError)
        return { input, points_m: [], plants: 0, isOneInTheMiddle: false, fault: error.faults[0] ?? null };
      throw error;
    }
  }, [outline, pattern, layout, spacing_m, row_m, margin_m]);
  const fault = (path: string): string | undefined =>
    counted.fault?.path === path ? faultText(counted.fault, system) : undefined;
  return (
    <>
      <div className="form-pair">
        <ChoiceField label={say('Pattern')} value={pattern} choices={patterns} onChange={setPattern} />
        {pattern === 'rows' ? (
          <QuantityField
            label={say('Row distance')}
            unit="m_short"
            value={row_m}
            onChange={setRow}
            fault={fault('rowSpacing_m')}
          />
        ) : (
          <ChoiceField label={say('Layout')} value={layout} choices={layouts} onChange={setLayout} />
        )}
      </div>
      <div className="form-pair">
        <QuantityField
          label={pattern === 'rows' ? say('In the row') : say('Spacing')}
          unit="m_short"
          value={spacing_m}
          onChange={setSpacing}
          fault={fault('spacing_m') ?? fault('inRow_m')}
        />
        <QuantityField
          label={say('Margin to the edge')}
          unit="m_short"
          value={margin_m}
          onChange={setMargin}
          hint={say('Empty: half the spacing')}
          fault={fault('edgeMargin_m')}
        />
      </div>
      {counted.fault === null ? (
        <>
          <dl className="figures">
            <div>
              <dt>{say('Plants')}</dt>
              <dd>
                <Figure value={counted.plants} unit="plants" name={say('Plants')} explain={() => explainPlants(counted.input)} />
              </dd>
            </div>
            {outline.shape === 'polygon' || spacing_m === null || pattern === 'rows' ? null : (
              <div>
                <dt>{say('No layout can have more than')}</dt>
                <dd>{packingBound(outline, spacing_m)}</dd>
              </div>
            )}
          </dl>
          {counted.isOneInTheMiddle ? (
            <p className="soft">{say('Nothing fits with this margin: one plant in the middle is shown.')}</p>
          ) : null}
          <PlanDrawing
            outline={outline}
            points_m={counted.points_m}
            spacing_m={spacing_m ?? 0}
            shares={bed.shares}
            label={say('{row} from above with {plants} plants', { row: bed.row.code, plants: counted.plants })}
          />
        </>
      ) : null}
    </>
  );
}
