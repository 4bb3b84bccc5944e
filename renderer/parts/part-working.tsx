import { computed, entry, source, type Working } from '../../planner/working.ts';
import { Figure } from '../working/figure.tsx';
import { WorkingView } from '../working/working-view.tsx';

const sample: Working = {
  title: 'Water used in a day',
  formula: 'V = Kc * ETo * A',
  symbols: [
    {
      symbol: 'Kc',
      name: 'crop coefficient of the stage',
      figure: { value: 1.05, unit: '' },
      origin: source('FAO Paper 56, table 12'),
    },
    {
      symbol: 'ETo',
      name: 'reference evapotranspiration',
      figure: { value: 5.2, unit: 'mm_per_day' },
      origin: computed('from the weather record'),
    },
    { symbol: 'A', name: 'planted area', figure: { value: 2.88, unit: 'm2' }, origin: entry() },
  ],
  steps: [
    {
      text: 'One millimetre over one square metre is one litre',
      figures: '1.05 * 5.2 * 2.88',
      result: { value: 15.7, unit: 'L_per_day' },
    },
  ],
  result: { value: 15.7, unit: 'L_per_day' },
  sources: ['FAO Irrigation and Drainage Paper 56 (1998), eq. 58'],
  notes: ['Not for a bed short of water.'],
};

/** Headline figures that open their working, and the working itself. */
export function PartWorking() {
  return (
    <>
      <dl className="figures">
        <div>
          <dt>Water in a day</dt>
          <dd>
            <Figure of={sample} />
          </dd>
        </div>
        <div>
          <dt>Wet weight</dt>
          <dd>
            <Figure value={412} unit="kg" name="Wet weight" explain={() => sample} />
          </dd>
        </div>
        <div>
          <dt>Nothing known</dt>
          <dd>–</dd>
        </div>
      </dl>
      <WorkingView working={sample} />
    </>
  );
}
