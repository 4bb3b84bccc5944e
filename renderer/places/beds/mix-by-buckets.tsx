import { useState } from 'react';
import { InputError } from '../../../planner/errors.ts';
import { blendParts_L, blendShrinkByMix, explainBlend, measuresOf } from '../../../planner/soil/blend.ts';
import { L_PER_CUBIC_YARD } from '../../../planner/units/constants.ts';
import { Button } from '../../app/button.tsx';
import { Caution } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say, sayWith } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import { quarters } from './quarters.ts';

type Part = { readonly name: string; readonly part: number | null };
const shrinks = [
  { value: 'soil-compost', text: say('Soil and compost') },
  { value: 'bark-sand', text: say('Bark and sand') },
  { value: 'peat-perlite', text: say('Peat and perlite') },
] as const;
/** To begin with: a cubic yard, or a cubic metre. */
const firstMix_L = { us: L_PER_CUBIC_YARD, metric: 1000 } as const;

/** A mix by its ratio: how many buckets of each part make the volume wanted. */
export function MixByBuckets() {
  const reader = useReader();
  const farm = useRead(api.farm.get, undefined);
  const [mix_L, setMix] = useState<number | null>(firstMix_L[reader.system]);
  const [kind, setKind] = useState<(typeof shrinks)[number]['value']>('soil-compost');
  const [parts, setParts] = useState<readonly Part[]>([
    { name: say('Soil'), part: 3 },
    { name: say('Compost'), part: 2 },
    { name: say('Bark'), part: 1 },
  ]);
  const shrink = blendShrinkByMix[kind];
  const set = (at: number, change: Partial<Part>): void =>
    setParts(parts.map((part, each) => (each === at ? { ...part, ...change } : part)));
  const given = parts.map((part) => ({ name: part.name, part: part.part ?? 0 }));
  const volumes = volumesOrFault(
    mix_L ?? 0,
    given.map((part) => part.part),
    shrink,
  );
  const bucket_L = farm.state === 'ready' ? farm.data.bucket_L : null;
  return (
    <section className="panel stack" aria-label={say('Mix by buckets')}>
      <h2>{say('Mix by buckets')}</h2>
      <div className="form-pair">
        <QuantityField label={say('Mix wanted, loose')} unit="bulk_L" value={mix_L} onChange={setMix} />
        <ChoiceField
          label={say('Made of')}
          value={kind}
          choices={shrinks}
          onChange={setKind}
          hint={say('Loses {shrink} when mixed (practice)', { shrink: reader.print(shrink, 'share') })}
        />
      </div>
      <table className="lines">
        <thead>
          <tr>
            <th scope="col">{say('Part')}</th>
            <th scope="col" className="number">
              {say('Loose')}
            </th>
            <th scope="col" className="number">
              {say('Buckets')}
            </th>
          </tr>
        </thead>
        <tbody>
          {parts.map((part, at) => {
            const volume_L = typeof volumes === 'string' ? undefined : volumes[at];
            return (
              // biome-ignore lint/suspicious/noArrayIndexKey: a part is known by its place in the ratio
              <tr key={at}>
                <td>
                  <div className="form-pair">
                    <TextField
                      label={say('Part {at}', { at: at + 1 })}
                      value={part.name}
                      onChange={(name) => set(at, { name })}
                    />
                    <QuantityField
                      label={say('Parts')}
                      unit=""
                      value={part.part}
                      onChange={(value) => set(at, { part: value })}
                    />
                  </div>
                </td>
                <td className="number">{volume_L === undefined ? '–' : reader.print(volume_L, 'bulk_L')}</td>
                <td className="number">
                  {volume_L === undefined || bucket_L === null ? '–' : quarters(measuresOf(volume_L, bucket_L).quarters)}
                </td>
              </tr>
            );
          })}
        </tbody>
      </table>
      {typeof volumes === 'string' ? (
        <p className="field-fault" role="alert">
          {volumes}
        </p>
      ) : (
        <p className="small soft">
          {sayWith('Before mixing, all parts: {figure}{more}', {
            figure: (
              <Figure
                value={volumes.reduce((sum, volume) => sum + volume, 0)}
                unit="bulk_L"
                name={say('All parts')}
                explain={() => explainBlend(mix_L ?? 0, given, shrink)}
              />
            ),
            more:
              bucket_L === null
                ? ''
                : say('. A bucket of {bucket}, rounded to quarters.', { bucket: reader.print(bucket_L, 'L') }),
          })}
        </p>
      )}
      <div className="row">
        <Button onClick={() => setParts([...parts, { name: '', part: 1 }])}>{say('One more part')}</Button>
        <Button weight="quiet" disabled={parts.length < 2} onClick={() => setParts(parts.slice(0, -1))}>
          {say('One less')}
        </Button>
      </div>
      <Caution id="dust-perlite-silica" folded />
    </section>
  );
}

function volumesOrFault(mix_L: number, parts: readonly number[], shrink: number): readonly number[] | string {
  try {
    return blendParts_L(mix_L, parts, shrink);
  } catch (error) {
    if (error instanceof InputError) return error.message;
    throw error;
  }
}
