import { useState } from 'react';
import { Button } from '../../../app/button.tsx';
import type { Failure } from '../../../client/failure.ts';
import { Form } from '../../../fields/form.tsx';
import { CountField, QuantityField, ShareField } from '../../../fields/quantity-field.tsx';
import { say } from '../../../words/say.ts';
import type { Overview, OwnFigures } from './proposal-types.ts';

/** Limits and habits that a proposal keeps to. */
export function LimitFields({
  overview,
  onSave,
  busy,
  failure,
}: {
  readonly overview: Overview;
  readonly onSave: (own: OwnFigures) => Promise<unknown>;
  readonly busy: boolean;
  readonly failure: Failure | undefined;
}) {
  const [own, setOwn] = useState(overview.own);
  const set = (change: Partial<OwnFigures>): void => setOwn({ ...own, ...change });
  return (
    <section className="panel" aria-label={say('Limits')}>
      <h2>{say('Limits')}</h2>
      <Form
        onSave={() => void onSave(own)}
        failure={failure}
        paths={['labour_h_per_week', 'overtime_h_per_week', 'overtimePremium_share', 'pump_h_per_day', 'caution', 'mostCrops']}
      >
        <div className="columns">
          <QuantityField
            label={say('Hours you have each week')}
            name="labour_h_per_week"
            value={own.labour_h_per_week}
            onChange={(value) => set({ labour_h_per_week: value })}
            hint={
              overview.labour_h_per_week === null
                ? say('Empty: no limit')
                : say('Empty: those of the season ({labour})', { labour: overview.labour_h_per_week })
            }
          />
          <QuantityField
            label={say('Overtime at most, each week')}
            name="overtime_h_per_week"
            value={own.overtime_h_per_week}
            onChange={(value) => set({ overtime_h_per_week: value ?? 0 })}
          />
          <ShareField
            label={say('Overtime costs more by')}
            path="overtimePremium_share"
            value={own.overtimePremium_share}
            onChange={(value) => set({ overtimePremium_share: value ?? 0 })}
          />
          <QuantityField
            label={say('A pump may run each day')}
            name="pump_h_per_day"
            value={own.pump_h_per_day}
            onChange={(value) => set({ pump_h_per_day: value ?? 0 })}
          />
          <ShareField
            label={say('Caution')}
            path="caution"
            value={own.caution}
            onChange={(value) => set({ caution: value ?? 0 })}
            hint={say('0 % counts on the typical yield; 50 % is usual')}
          />
          <CountField
            label={say('Crops at most')}
            path="mostCrops"
            value={own.mostCrops}
            onChange={(value) => set({ mostCrops: value })}
            hint={say('Empty: no limit')}
          />
        </div>
        <div className="row">
          <Button type="submit" weight="main" disabled={busy}>
            {say('Keep these limits')}
          </Button>
        </div>
      </Form>
    </section>
  );
}
