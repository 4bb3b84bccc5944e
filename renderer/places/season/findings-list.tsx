import type { Finding } from '../../../planner/season/plan.ts';
import { Button } from '../../app/button.tsx';
import type { BoardData } from './board-data.ts';

const words: Readonly<Record<Finding['weight'], string>> = {
  clash: 'Cannot be done',
  barred: 'Against a rule',
  risk: 'Risk',
  note: 'Note',
};
const SHOWN = 200;

/** Everything against the plan, the weightiest first; each opens its planting. */
export function FindingsList(props: {
  readonly findings: readonly Finding[];
  readonly data: BoardData;
  readonly onOpen: (plantingId: string) => void;
}) {
  const codes = new Map(props.data.beds.map((bed) => [bed.id, bed.code]));
  const names = new Map(props.data.plantings.map((planting) => [planting.id, planting.crop.cropName]));
  return (
    <section className="findings panel" aria-label="Against the plan">
      {props.findings.length === 0 ? <p>Nothing stands against the plan.</p> : null}
      {(['clash', 'barred', 'risk'] as const).map((weight) => {
        const list = props.findings.filter((finding) => finding.weight === weight);
        return list.length === 0 ? null : (
          <div key={weight}>
            <h3>
              {words[weight]} ({list.length})
            </h3>
            <ul>
              {list.slice(0, SHOWN).map((finding) => (
                <li
                  key={`${finding.plantingId} ${finding.code} ${finding.bedId} ${finding.otherId}`}
                  data-weight={finding.weight}
                >
                  <Button weight="quiet" onClick={() => props.onOpen(finding.plantingId)}>
                    {names.get(finding.plantingId)} {finding.bedId === null ? '' : codes.get(finding.bedId)}
                  </Button>{' '}
                  {finding.message}
                </li>
              ))}
            </ul>
            {list.length > SHOWN ? <p className="soft">and {list.length - SHOWN} more</p> : null}
          </div>
        );
      })}
    </section>
  );
}
