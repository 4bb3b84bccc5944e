import type { Finding, PlanBed, PlanPlanting } from '../../../planner/season/plan.ts';
import { Button } from '../../app/button.tsx';
import { useReader } from '../../client/reader.tsx';
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
        Drag a strip to move it, its ends to stretch it; Ctrl copies. Keys: arrows go about, <kbd>Space</kbd> lifts, <kbd>[</kbd>{' '}
        <kbd>]</kbd> the ends, <kbd>C</kbd> copies, <kbd>G</kbd> gaps, <kbd>Enter</kbd> opens, <kbd>Delete</kbd> removes.
      </p>
    );
  const planting = props.plantings.find((each) => each.id === (lifted.asCopy ? COPY_ID : lifted.plantingId));
  if (planting === undefined)
    return (
      <div className="board-lifted" role="status" data-weight="clash">
        The harvest would end before it begins.
      </div>
    );
  const codes = [...new Set(planting.spans.map((span) => props.beds.find((bed) => bed.id === span.bedId)?.code ?? ''))];
  const worst = against.find((each) => each.weight === 'clash') ?? against.find((each) => each.weight === 'barred') ?? against[0];
  return (
    <div className="board-lifted no-print" role="status" data-weight={worst?.weight}>
      <p>
        <strong>
          {planting.crop.cropName} {lifted.asCopy ? '(copy) ' : ''}in {codes.length === 0 ? 'no bed' : codes.join(', ')}
        </strong>
        {': '}
        in the bed {reader.date(planting.inBed)}, first harvest {reader.date(planting.firstHarvest)}, last{' '}
        {reader.date(planting.lastHarvest)}, free {reader.date(planting.free)}
        {lifted.days === 0 ? '' : ` (${lifted.days > 0 ? '+' : '−'}${Math.abs(lifted.days)} d)`}
      </p>
      {against.length === 0 ? (
        <p className="soft">Nothing against it.</p>
      ) : (
        <ul>
          {against.map((finding) => (
            <li key={`${finding.code} ${finding.bedId} ${finding.otherId}`} data-weight={finding.weight}>
              {finding.message}
            </li>
          ))}
        </ul>
      )}
      <div className="row">
        <Button weight="main" onClick={() => props.onPut(lifted)}>
          Put down
        </Button>
        <Button onClick={props.onCancel}>Let go</Button>
      </div>
    </div>
  );
}
