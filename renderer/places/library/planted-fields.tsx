import { api } from '../../client/api.ts';
import { type InputOf, useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { CountField, QuantityField, ShareField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import type { MaterialRow } from './material-columns.ts';

type Values = InputOf<typeof api.materials.setMany>['edits'][number]['values'];

/** What links seed and starts to their crop, and what a tray holds: by these the needs of a season find what to buy. */
export function PlantedFields(props: {
  readonly material: MaterialRow;
  readonly path: (name: string) => string;
  readonly onChange: (values: Values) => void;
}) {
  const { material, path, onChange } = props;
  const crops = useRead(api.crops.list, undefined);
  if (material.kind === 'tray')
    return (
      <CountField
        label={say('Cells in a tray')}
        path={path('cells')}
        value={material.cells}
        onChange={(cells) => onChange({ cells })}
      />
    );
  if (material.kind !== 'seed' && material.kind !== 'start') return null;
  const choices = crops.state === 'ready' ? crops.data.map((each) => ({ value: each.cropId, text: each.name })) : [];
  return (
    <>
      <ChoiceField
        label={say('Of the crop')}
        path={path('cropId')}
        value={material.cropId ?? ''}
        choices={[{ value: '', text: say('Choose a crop') }, ...choices]}
        onChange={(cropId) => onChange({ cropId: cropId === '' ? null : cropId })}
      />
      <div className="form-pair">
        <QuantityField
          label={say('Pieces in a gram')}
          path={path('seedsPer_g')}
          unit=""
          value={material.seedsPer_g}
          onChange={(seedsPer_g) => onChange({ seedsPer_g })}
        />
        {material.kind === 'seed' ? (
          <ShareField
            label={say('Germination')}
            path={path('germinationShare')}
            value={material.germinationShare}
            onChange={(germinationShare) => onChange({ germinationShare })}
          />
        ) : null}
      </div>
    </>
  );
}
