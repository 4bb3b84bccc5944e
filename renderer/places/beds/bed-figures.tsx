import type { Working } from '../../../planner/working.ts';
import { useReader } from '../../client/reader.tsx';
import { say } from '../../words/say.ts';
import { Figure } from '../../working/figure.tsx';
import type { WholeBed } from './bed-types.ts';
import { placeChoices, textOf, wateringChoices } from './bed-words.ts';

function Headline({ name, of }: { readonly name: string; readonly of: Working | null | undefined }) {
  if (of === null || of === undefined) return null;
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <Figure of={of} />
      </dd>
    </div>
  );
}

/** The headline figures of a bed, each with its working. */
export function BedFigures({ bed }: { readonly bed: WholeBed }) {
  const reader = useReader();
  const { workings, figures, row, spec } = bed;
  if (workings === null || figures === null) return null;
  return (
    <>
      <dl className="figures">
        <Headline name={say('Area')} of={workings.area} />
        <Headline name={say('Fill, settled')} of={workings.volume} />
        <Headline
          name={spec.watering === 'reservoir' ? say('Water in the reservoir') : say('Water in the basin')}
          of={workings.water}
        />
        <Headline name={say('Weight, full of water')} of={workings.weight} />
        <Headline name={say('Load on the floor')} of={workings.load} />
        <Headline name={say('Perimeter')} of={workings.perimeter} />
        <Headline name={say('Walls, inside')} of={workings.walls} />
        <Headline name={say('Weed barrier')} of={workings.barrier} />
      </dl>
      <dl className="facts">
        <dt>{say('Watering')}</dt>
        <dd>{textOf(wateringChoices, spec.watering)}</dd>
        <dt>{say('Weight dry, moist')}</dt>
        <dd>
          {reader.print(figures.dry_kg, 'kg')}, {reader.print(figures.moist_kg, 'kg')}
        </dd>
        <dt>{say('With standing water')}</dt>
        <dd>{reader.print(figures.wet_kg, 'kg')}</dd>
        <dt>{say('Stands on')}</dt>
        <dd>
          {textOf(placeChoices, row.place)}
          {row.floorLimit_kg_per_m2 === null
            ? ''
            : say(', limit entered {floorLimit}', { floorLimit: reader.print(row.floorLimit_kg_per_m2, 'kg_per_m2') })}
        </dd>
        <dt>{say('Built')}</dt>
        <dd>{reader.date(row.builtDate)}</dd>
      </dl>
      {row.isOverLimit ? (
        <p className="failed" role="alert">
          {say('The load is over the limit entered for this floor. A structural engineer must check it before it is loaded.')}
        </p>
      ) : null}
    </>
  );
}
