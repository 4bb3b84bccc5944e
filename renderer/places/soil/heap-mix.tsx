import { Button } from '../../app/button.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';

export type MixPart = { readonly materialId: string; readonly amount_kg: number | null };

const readings = {
  best: { tone: 'good', text: say('best range') },
  acceptable: { tone: 'guard', text: say('acceptable') },
  'too-low': { tone: 'stop', text: say('too low') },
  'too-high': { tone: 'stop', text: say('too high') },
} as const;

/** C:N and moisture of what is in the heap, and what two further materials would bring it to. */
export function HeapMix(props: {
  readonly parts: readonly { readonly materialId: string; readonly amount_kg: number }[];
  readonly goalCarbonToNitrogen: number;
  readonly goalMoistureShare: number;
  readonly secondId: string | null;
  readonly thirdId: string | null;
  readonly onTake: (parts: readonly MixPart[]) => void;
}) {
  const reader = useReader();
  const { onTake, ...input } = props;
  const mix = useRead(api.compost.mix, { ...input, parts: [...input.parts] });
  return (
    <Shown reading={mix}>
      {(found) => {
        const { suggestion } = found;
        return (
          <>
            <dl className="figures">
              <div>
                <dt>C:N</dt>
                <dd>
                  <Figure of={found.working} digits={3} />{' '}
                  <span className="state-mark" data-tone={readings[found.carbonToNitrogen].tone}>
                    {readings[found.carbonToNitrogen].text}
                  </span>
                </dd>
              </div>
              <div>
                <dt>{say('Moisture')}</dt>
                <dd>
                  {reader.print(found.mix.moistureShare, 'share', 2)}{' '}
                  <span className="state-mark" data-tone={readings[found.moisture].tone}>
                    {readings[found.moisture].text}
                  </span>
                </dd>
              </div>
              <div>
                <dt>{say('Heap')}</dt>
                <dd>{reader.print(found.mix.mix_kg, 'kg')}</dd>
              </div>
            </dl>
            {suggestion === null ? null : suggestion.state === 'out-of-reach' ? (
              <p className="failed" role="alert">
                {suggestion.because}
              </p>
            ) : (
              <div className="row">
                <p>
                  {say(
                    'To C:N {goalCarbonToNitrogen} and {goalMoistureShare}: add {second} of the first and {third} of the second.',
                    {
                      goalCarbonToNitrogen: props.goalCarbonToNitrogen,
                      goalMoistureShare: reader.print(props.goalMoistureShare, 'share', 2),
                      second: reader.print(suggestion.second_kg, 'kg'),
                      third: reader.print(suggestion.third_kg, 'kg'),
                    },
                  )}
                </p>
                <Button
                  onClick={() =>
                    onTake([
                      { materialId: props.secondId ?? '', amount_kg: suggestion.second_kg },
                      { materialId: props.thirdId ?? '', amount_kg: suggestion.third_kg },
                    ])
                  }
                >
                  {say('Add them')}
                </Button>
              </div>
            )}
          </>
        );
      }}
    </Shown>
  );
}
