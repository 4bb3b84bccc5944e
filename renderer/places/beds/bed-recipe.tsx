import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { Form } from '../../fields/form.tsx';
import { say } from '../../words/say.ts';
import type { WholeBed } from './bed-types.ts';
import type { DesignEntry } from './design-sheet.tsx';
import { LayerFields } from './layer-fields.tsx';

type Layer = DesignEntry['layers'][number];

/** A fill recipe of one bed, other than its design's. */
export function BedRecipe({ bed }: { readonly bed: WholeBed }) {
  const set = useChange(api.beds.setRecipe);
  const materials = useRead(api.designs.materials, undefined);
  const [layers, setLayers] = useState<readonly Layer[]>(() =>
    bed.layers.map(({ materialId, amount, settlingShare }) => ({
      materialId,
      amountKind: amount.kind,
      amount:
        amount.kind === 'depth'
          ? amount.depth_m
          : amount.kind === 'share'
            ? amount.share
            : amount.kind === 'volume'
              ? amount.settled_L
              : null,
      settlingShare,
    })),
  );
  const { bedId, code } = bed.row;
  return (
    <details>
      <summary>{say('Change the fill of this bed only')}</summary>
      <Form
        onSave={() => void set.run({ bedId, layers: [...layers] }, say('{code} has a fill of its own.', { code }))}
        failure={set.failure}
        paths={['layers']}
        label={say('Fill of {code}', { code })}
      >
        <Shown reading={materials}>{(all) => <LayerFields layers={layers} materials={all} onChange={setLayers} />}</Shown>
        <div className="row">
          <Button type="submit" weight="main" disabled={set.busy}>
            {say('Keep this fill')}
          </Button>
          {bed.hasOwnRecipe ? (
            <Button
              disabled={set.busy}
              onClick={() => void set.run({ bedId, layers: null }, say('{code} is filled as its design again.', { code }))}
            >
              {say('As its design')}
            </Button>
          ) : null}
        </div>
      </Form>
    </details>
  );
}
