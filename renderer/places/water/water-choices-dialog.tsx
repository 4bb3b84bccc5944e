import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { Form } from '../../fields/form.tsx';
import { CountField, QuantityField, ShareField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import type { Overview } from './demand-data.ts';

type Choices = Overview['choices'];

/** What the grower sets for the water of the whole farm. */
export function WaterChoicesDialog({ choices, onClose }: { readonly choices: Choices; readonly onClose: () => void }) {
  const change = useChange(api.waterDemand.setChoices);
  const [draft, setDraft] = useState(choices);
  const set = <Key extends keyof Choices>(key: Key, value: Choices[Key] | null): void => {
    if (value !== null) setDraft({ ...draft, [key]: value });
  };
  const save = async (): Promise<void> => {
    if ((await change.run(draft, say('The water choices are kept.'))) !== undefined) onClose();
  };
  return (
    <Dialog title={say('How the farm’s water is reckoned')} onClose={onClose}>
      <Form
        onSave={() => void save()}
        failure={change.failure}
        paths={['exposure', 'wallFactor', 'shadeShare', 'confidence', 'standing_days', 'run_h_per_day']}
      >
        <QuantityField
          label={say('Exposure')}
          path="exposure"
          unit=""
          value={draft.exposure}
          onChange={(value) => set('exposure', value)}
          hint={say('1.0 sheltered or in a field, 1.2 open, up to 1.5 on paving or a roof’s edge (common practice, no source)')}
        />
        <QuantityField
          label={say('Loss through fabric walls')}
          path="wallFactor"
          unit=""
          value={draft.wallFactor}
          onChange={(value) => set('wallFactor', value)}
          hint={say(
            'Share of the reference on the wall’s area, 0 to 0.5; 0.3 until you have weighed a bag (common practice, no source)',
          )}
        />
        <ShareField
          label={say('Shade cloth')}
          path="shadeShare"
          value={draft.shadeShare}
          onChange={(value) => set('shadeShare', value)}
        />
        <ShareField
          label={say('Confidence')}
          path="confidence"
          value={draft.confidence}
          onChange={(value) => set('confidence', value)}
          hint={say('Share of the spells of the record that must pass without a crop going short')}
        />
        <div className="form-pair">
          <CountField
            label={say('Water may stand, days')}
            path="standing_days"
            value={draft.standing_days}
            onChange={(value) => set('standing_days', value)}
          />
          <QuantityField
            label={say('A line may run, a day')}
            path="run_h_per_day"
            unit="h"
            value={draft.run_h_per_day}
            onChange={(value) => set('run_h_per_day', value)}
          />
        </div>
        <Button type="submit" weight="main" disabled={change.busy}>
          {say('Save')}
        </Button>
      </Form>
    </Dialog>
  );
}
