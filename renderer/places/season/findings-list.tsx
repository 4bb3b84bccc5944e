import type { Finding } from '../../../planner/season/plan.ts';
import { Button } from '../../app/button.tsx';
import { sayKnown } from '../../words/known.ts';
import { say } from '../../words/say.ts';
import type { BoardData } from './board-data.ts';

const words: Readonly<Record<Finding['weight'], string>> = {
  clash: say('Cannot be done'),
  barred: say('Against a rule'),
  risk: say('Risk'),
  note: say('Note'),
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
    <section className="findings panel" aria-label={say('Against the plan')}>
      {props.findings.length === 0 ? <p>{say('Nothing stands against the plan.')}</p> : null}
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
                  {sayKnown(finding.message)}
                </li>
              ))}
            </ul>
            {list.length > SHOWN ? <p className="soft">{say('and {list} more', { list: list.length - SHOWN })}</p> : null}
          </div>
        );
      })}
    </section>
  );
}
