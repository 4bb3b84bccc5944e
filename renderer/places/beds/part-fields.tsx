import { Button } from '../../app/button.tsx';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import type { DesignEntry } from './design-sheet.tsx';
import type { Materials } from './layer-fields.tsx';

type Part = DesignEntry['parts'][number];
const YEARS = 10;

/** What a bed of this design is built of, with the life of each part. */
export function PartFields({
  parts,
  materials,
  onChange,
}: {
  readonly parts: readonly Part[];
  readonly materials: Materials;
  readonly onChange: (parts: readonly Part[]) => void;
}) {
  const hardware = materials.filter((material) => material.baseUnit !== 'L' && material.baseUnit !== 'kg');
  const set = (at: number, change: Partial<Part>): void =>
    onChange(parts.map((part, each) => (each === at ? { ...part, ...change } : part)));
  const unitOf = (materialId: string): string =>
    materials.find((material) => material.materialId === materialId)?.baseUnit ?? 'count';
  const choices = hardware.map((material) => ({ value: material.materialId, text: material.name }));
  return (
    <fieldset className="stack">
      <legend>{say('Parts')}</legend>
      {parts.map((part, at) => (
        // biome-ignore lint/suspicious/noArrayIndexKey: a part is known by its place in the list
        <div className="panel form-list" key={at}>
          <ChoiceField
            label={say('Part {at}', { at: at + 1 })}
            value={part.materialId}
            choices={choices}
            onChange={(materialId) => set(at, { materialId })}
          />
          <div className="form-pair">
            <QuantityField
              label={say('Amount')}
              path={`parts.${at}.amount`}
              unit={unitOf(part.materialId)}
              value={part.amount}
              onChange={(amount) => set(at, { amount: amount ?? Number.NaN })}
            />
            <QuantityField
              label={say('Life')}
              path={`parts.${at}.life_years`}
              unit="years"
              value={part.life_years}
              onChange={(life) => set(at, { life_years: life ?? Number.NaN })}
            />
          </div>
          <Button name={say('Take out')} icon="bin" onClick={() => onChange(parts.filter((_, each) => each !== at))} />
        </div>
      ))}
      <Button
        icon="add"
        disabled={hardware.length === 0}
        onClick={() =>
          onChange([
            ...parts,
            {
              materialId: hardware[0]?.materialId ?? '',
              amount: 1,
              life_years: hardware[0]?.life_years ?? YEARS,
              salvageShare: 0,
            },
          ])
        }
      >
        {say('One more part')}
      </Button>
    </fieldset>
  );
}
