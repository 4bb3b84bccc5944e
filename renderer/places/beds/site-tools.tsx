import { type AlignTo, alignBeds, type Placed, type Shift, spaceEvenly } from '../../../planner/beds/arrange.ts';
import { M_PER_FOOT, M_PER_INCH } from '../../../planner/units/constants.ts';
import type { Reader } from '../../../planner/units/reader.ts';
import type { UnitSystem } from '../../../planner/units/system.ts';
import { Button } from '../../app/button.tsx';
import { useReader } from '../../client/reader.tsx';
import { say } from '../../words/say.ts';
import { type SiteTool, siteTools } from './site-tool.ts';
import { gapBetween_m } from './site-view.ts';

/** Steps of the snapping grid, in whole units of the reader. */
export const gridSteps_m: Readonly<Record<UnitSystem, readonly number[]>> = {
  us: [3 * M_PER_INCH, 6 * M_PER_INCH, M_PER_FOOT, 2 * M_PER_FOOT],
  metric: [0.05, 0.1, 0.25, 0.5],
};

const aligns: readonly { readonly value: AlignTo; readonly text: string }[] = [
  { value: 'west', text: say('Left edges') },
  { value: 'east', text: say('Right edges') },
  { value: 'north', text: say('Upper edges') },
  { value: 'south', text: say('Lower edges') },
  { value: 'middle-x', text: say('Middles, upright') },
  { value: 'middle-y', text: say('Middles, level') },
];

/** The tools of the site drawing, and what can be done with the chosen beds. */
export function SiteTools(props: {
  readonly tool: SiteTool;
  readonly onTool: (tool: SiteTool) => void;
  readonly grid_m: number | null;
  readonly onGrid: (grid_m: number | null) => void;
  readonly chosen: readonly Placed[];
  readonly onShift: (shifts: readonly Shift[], what: string) => void;
  readonly onDuplicate: () => void;
  readonly onEnd: () => void;
}) {
  const reader = useReader();
  const { chosen } = props;
  return (
    <div className="site-tools row no-print">
      <div className="site-switch" role="radiogroup" aria-label={say('Tool')}>
        {siteTools.map((tool) => (
          <label key={tool.value}>
            <input type="radio" name="site-tool" checked={props.tool === tool.value} onChange={() => props.onTool(tool.value)} />
            <span>{tool.text}</span>
          </label>
        ))}
      </div>
      <label className="site-pick">
        {say('Snap')}
        <select
          value={props.grid_m ?? ''}
          onChange={(event) => props.onGrid(event.target.value === '' ? null : Number(event.target.value))}
        >
          <option value="">{say('Edges only')}</option>
          {gridSteps_m[reader.system].map((step) => (
            <option key={step} value={step}>
              {reader.print(step, 'm')}
            </option>
          ))}
        </select>
      </label>
      <label className="site-pick">
        <span className="heard-only">{say('Align the chosen beds')}</span>
        <select
          value=""
          disabled={chosen.length < 2}
          onChange={(event) => {
            const to = aligns.find((each) => each.value === event.target.value);
            if (to !== undefined)
              props.onShift(alignBeds(chosen, to.value), say('Align {chosen} beds', { chosen: chosen.length }));
          }}
        >
          <option value="">{say('Align…')}</option>
          {aligns.map((each) => (
            <option key={each.value} value={each.value}>
              {each.text}
            </option>
          ))}
        </select>
      </label>
      <label className="site-pick">
        <span className="heard-only">{say('Space the chosen beds evenly')}</span>
        <select
          value=""
          disabled={chosen.length < 3}
          onChange={(event) => {
            const along = event.target.value;
            if (along === 'x' || along === 'y')
              props.onShift(spaceEvenly(chosen, along), say('Space {chosen} beds', { chosen: chosen.length }));
          }}
        >
          <option value="">{say('Space…')}</option>
          <option value="x">{say('Equal paths across')}</option>
          <option value="y">{say('Equal paths up')}</option>
        </select>
      </label>
      <Button icon="copy" onClick={props.onDuplicate} disabled={chosen.length === 0}>
        {say('Duplicate')}
      </Button>
      <Button weight="quiet" onClick={props.onEnd} disabled={chosen.length === 0}>
        {say('Retire…')}
      </Button>
      <span className="soft small">{chosenText(chosen, reader)}</span>
    </div>
  );
}

function chosenText(chosen: readonly Placed[], reader: Reader): string {
  const [a, b] = chosen;
  if (a === undefined) return say('None chosen');
  if (b === undefined) return say('1 chosen');
  return chosen.length === 2
    ? say('2 chosen, {gapBetween} apart', { gapBetween: reader.print(gapBetween_m(a, b), 'm') })
    : say('{chosen} chosen', { chosen: chosen.length });
}
