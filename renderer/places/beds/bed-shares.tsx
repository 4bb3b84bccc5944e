import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { Form } from '../../fields/form.tsx';
import { ShareField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import type { WholeBed } from './bed-types.ts';

type Share = { readonly name: string; readonly to: number | null };

/** Splits a bed along its length into named shares, so that two crops can have it at once. */
export function BedShares({ bed }: { readonly bed: WholeBed }) {
  const split = useChange(api.beds.split);
  const [shares, setShares] = useState<readonly Share[]>(() =>
    bed.shares.map((share) => ({ name: share.name, to: share.toShare })),
  );
  const set = (at: number, change: Partial<Share>): void =>
    setShares(shares.map((share, each) => (each === at ? { ...share, ...change } : share)));
  const save = (): void =>
    void split.run(
      { bedId: bed.row.bedId, shares: shares.map((share) => ({ name: share.name, to: share.to ?? Number.NaN })) },
      say('The shares are kept.'),
    );
  const halves = (): void =>
    setShares([
      { name: say('first half'), to: 0.5 },
      { name: say('second half'), to: 1 },
    ]);
  return (
    <section aria-label={say('Shares')}>
      <h3>{say('Shares')}</h3>
      {shares.length === 0 ? (
        <Button onClick={halves}>{say('Split into halves')}</Button>
      ) : (
        <Form
          onSave={save}
          failure={split.failure}
          paths={shares.flatMap((_, at) => [`shares.${at}.name`, `shares.${at}.to`])}
          label={say('Shares')}
        >
          {shares.map((share, at) => (
            // biome-ignore lint/suspicious/noArrayIndexKey: a share is known by its place along the bed
            <div className="form-pair" key={at}>
              <TextField
                label={say('Share {at}', { at: at + 1 })}
                path={`shares.${at}.name`}
                value={share.name}
                onChange={(name) => set(at, { name })}
              />
              <ShareField label={say('Ends at')} path={`shares.${at}.to`} value={share.to} onChange={(to) => set(at, { to })} />
            </div>
          ))}
          <div className="row">
            <Button type="submit" disabled={split.busy}>
              {say('Keep shares')}
            </Button>
            <Button
              weight="quiet"
              onClick={() => setShares([...shares, { name: say('share {shares}', { shares: shares.length + 1 }), to: 1 }])}
            >
              {say('One more')}
            </Button>
            <Button
              weight="quiet"
              onClick={() => void split.run({ bedId: bed.row.bedId, shares: [] }, say('The bed is whole again.'))}
            >
              {say('Undivided')}
            </Button>
          </div>
        </Form>
      )}
    </section>
  );
}
