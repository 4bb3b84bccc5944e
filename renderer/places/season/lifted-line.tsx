import type { Finding, PlanBed, PlanPlanting } from '../../../planner/season/plan.ts';
import { Button } from '../../app/button.tsx';
import { useReader } from '../../client/reader.tsx';
import { sayKnown } from '../../words/known.ts';
import { say, sayWith } from '../../words/say.ts';
import { COPY_ID, type Lifted } from './lifted.ts';

/** What is held, where it would stand, and what stands against it: said as it moves. */
export function LiftedLine(props: {
  readonly lifted: Lifted | null;
  readonly plantings: readonly PlanPlanting[];
  readonly beds: readonly PlanBed[];
  readonly against: readonly Finding[];
  readonly onPut: (lifted: Lifted) => void;
  readonly onCancel: () => void;
}) {
  const reader = useReader();
  const { lifted, against } = props;
  if (lifted === null)
    return (
      <p className="board-help small soft no-print">
        {sayWith(
          'Drag a strip to move it, its ends to stretch it; Ctrl copies. Keys: arrows go about, <kbd>Space</kbd> lifts, {kbd2} {kbd3} the ends, {kbd4} copies, {kbd5} gaps, <kbd>Enter</kbd> opens, <kbd>Delete</kbd> removes.',
          { kbd: (words) => <kbd>{words}</kbd>, kbd2: <kbd>[</kbd>, kbd3: <kbd>]</kbd>, kbd4: <kbd>C</kbd>, kbd5: <kbd>G</kbd> },
        )}
      </p>
    );
  const planting = props.plantings.find((each) => each.id === (lifted.asCopy ? COPY_ID : lifted.plantingId));
  if (planting === undefined)
    return (
      <div className="board-lifted" role="status" data-weight="clash">
        {say('The harvest would end before it begins.')}
      </div>
    );
  const codes = [...new Set(planting.spans.map((span) => props.beds.find((bed) => bed.id === span.bedId)?.code ?? ''))];
  const worst = against.find((each) => each.weight === 'clash') ?? against.find((each) => each.weight === 'barred') ?? against[0];
  return (
    <div className="board-lifted no-print" role="status" data-weight={worst?.weight}>
      <p>
        {sayWith('{strong}: in the bed {inBed}, first harvest {firstHarvest}, last {lastHarvest}, free {free}{more}', {
          strong: (
            <strong>
              {say('{cropName} {more}in {more2}', {
                cropName: planting.crop.cropName,
                more: lifted.asCopy ? say('(copy) ') : '',
                more2: codes.length === 0 ? say('no bed') : codes.join(', '),
              })}
            </strong>
          ),
          inBed: reader.date(planting.inBed),
          firstHarvest: reader.date(planting.firstHarvest),
          lastHarvest: reader.date(planting.lastHarvest),
          free: reader.date(planting.free),
          more: lifted.days === 0 ? '' : ` (${lifted.days > 0 ? '+' : '−'}${Math.abs(lifted.days)} d)`,
        })}
      </p>
      {against.length === 0 ? (
        <p className="soft">{say('Nothing against it.')}</p>
      ) : (
        <ul>
          {against.map((finding) => (
            <li key={`${finding.code} ${finding.bedId} ${finding.otherId}`} data-weight={finding.weight}>
              {reader.datesIn(sayKnown(finding.message))}
            </li>
          ))}
        </ul>
      )}
      <div className="row">
        <Button weight="main" onClick={() => props.onPut(lifted)}>
          {say('Put down')}
        </Button>
        <Button onClick={props.onCancel}>{say('Let go')}</Button>
      </div>
    </div>
  );
}
