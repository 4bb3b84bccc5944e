import { Button } from '../../app/button.tsx';
import type { api } from '../../client/api.ts';
import type { OutputOf } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { useFaultAt } from '../../fields/form.tsx';
import { QuantityField, ShareField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import { amountChoices } from './bed-words.ts';
import type { DesignEntry } from './design-sheet.tsx';

type Layer = DesignEntry['layers'][number];
export type Materials = OutputOf<typeof api.designs.materials>;

const units = { depth: 'm_short', share: 'share', volume: 'bulk_L', rest: '' } as const;

/** The fill recipe, written top down as it is seen; kept bottom up. */
export function LayerFields({
  layers,
  materials,
  onChange,
}: {
  readonly layers: readonly Layer[];
  readonly materials: Materials;
  readonly onChange: (layers: readonly Layer[]) => void;
}) {
  const fills = materials.filter((material) => material.baseUnit === 'L');
  const set = (at: number, change: Partial<Layer>): void =>
    onChange(layers.map((layer, each) => (each === at ? { ...layer, ...change } : layer)));
  const add = (): void => {
    const [first] = fills;
    if (first === undefined) return;
    const hasRest = layers.some((layer) => layer.amountKind === 'rest');
    onChange([
      ...layers,
      {
        materialId: first.materialId,
        amountKind: hasRest ? 'depth' : 'rest',
        amount: hasRest ? 0.05 : null,
        settlingShare: null,
      },
    ]);
  };
  const swap = (at: number, to: number): void => {
    const [a, b] = [layers[at], layers[to]];
    if (a !== undefined && b !== undefined) onChange(layers.map((layer, each) => (each === at ? b : each === to ? a : layer)));
  };
  return (
    <fieldset className="stack">
      <legend>{say('Fill, top down')}</legend>
      {layers
        .map((layer, at) => ({ layer, at }))
        .toReversed()
        .map(({ layer, at }) => (
          <div className="panel form-list" key={at}>
            <ChoiceField
              label={say('Layer {at}', { at: at + 1 })}
              value={layer.materialId}
              choices={choicesWith(fills, materials, layer.materialId)}
              onChange={(materialId) => set(at, { materialId })}
            />
            <div className="form-pair">
              <ChoiceField
                label={say('How much')}
                value={layer.amountKind}
                choices={amountChoices}
                onChange={(amountKind) => set(at, { amountKind, amount: null })}
              />
              {layer.amountKind === 'rest' ? (
                <LayerFault at={at} />
              ) : (
                <QuantityField
                  label={say('Amount')}
                  path={`layers.${at}.amount`}
                  unit={units[layer.amountKind]}
                  value={layer.amount}
                  onChange={(amount) => set(at, { amount })}
                />
              )}
            </div>
            <div className="form-pair">
              <ShareField
                label={say('Settles in the first season by')}
                path={`layers.${at}.settlingShare`}
                value={layer.settlingShare}
                onChange={(settlingShare) => set(at, { settlingShare })}
                hint={libraryText(materials, layer.materialId)}
              />
              <div className="row">
                <Button name={say('Higher')} icon="up" disabled={at === layers.length - 1} onClick={() => swap(at, at + 1)} />
                <Button name={say('Lower')} icon="down" disabled={at === 0} onClick={() => swap(at, at - 1)} />
                <Button name={say('Take out')} icon="bin" onClick={() => onChange(layers.filter((_, each) => each !== at))} />
              </div>
            </div>
          </div>
        ))}
      <Button icon="add" onClick={add}>
        {say('A layer on top')}
      </Button>
    </fieldset>
  );
}

function LayerFault({ at }: { readonly at: number }) {
  const fault = useFaultAt(`layers.${at}`);
  return fault === undefined ? null : (
    <p className="field-fault" role="alert">
      {fault}
    </p>
  );
}

const libraryText = (materials: Materials, materialId: string): string => {
  const share = materials.find((material) => material.materialId === materialId)?.settlingFirstShare;
  return share === null || share === undefined
    ? say('Empty: none known')
    : say('Empty: library, {share} % (practice)', { share: Math.round(share * 100) });
};

/** The choices, with what is chosen among them even where it is no fill. */
function choicesWith(fills: Materials, all: Materials, chosen: string) {
  const list = fills.some((material) => material.materialId === chosen)
    ? fills
    : [...fills, ...all.filter((material) => material.materialId === chosen)];
  return list.map((material) => ({ value: material.materialId, text: material.name }));
}
