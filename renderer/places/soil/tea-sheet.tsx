import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { say } from '../../words/say.ts';
import { clockText } from './clock-text.ts';
import type { TeaRow } from './soil-types.ts';

/** One tea batch: what went in, by when it is used, how much for each bed. */
export function TeaSheet({
  tea,
  today,
  onClose,
}: {
  readonly tea: TeaRow;
  readonly today: IsoDate;
  readonly onClose: () => void;
}) {
  const reader = useReader();
  const applied = useChange(api.compost.teaApplied);
  return (
    <Sheet title={say('Tea {tea}', { tea: tea.code })} onClose={onClose}>
      <dl className="facts">
        <dt>{say('Air on')}</dt>
        <dd>{clockText(tea.startedAt, reader)}</dd>
        <dt>{say('Use by')}</dt>
        <dd>{clockText(tea.useByAt, reader)}</dd>
        <dt>{say('Compost')}</dt>
        <dd>
          {reader.print(tea.compost_kg, 'kg')} {tea.compost === '' ? '' : say('of heap {compost}', { compost: tea.compost })}
        </dd>
        <dt>{say('Diluted')}</dt>
        <dd>{say('1 to {dilution}', { dilution: tea.dilution })}</dd>
        <dt>{say('Additives')}</dt>
        <dd>{tea.additives === '' ? say('none') : tea.additives}</dd>
        <dt>{say('Water')}</dt>
        <dd>{tea.waterSource === '' ? '–' : tea.waterSource}</dd>
        <dt>{say('Applied')}</dt>
        <dd>{tea.appliedDate === null ? say('not yet') : reader.date(tea.appliedDate)}</dd>
      </dl>
      <Cautions ids={['compost-tea']} />
      <table className="lines">
        <caption>{say('For each bed, diluted')}</caption>
        <tbody>
          {tea.beds.map((bed) => (
            <tr key={bed.bedId}>
              <td>{bed.code}</td>
              <td className="number">{reader.print(bed.volume_L, 'L')}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {tea.appliedDate === null ? (
        <Button
          weight="main"
          icon="check"
          disabled={applied.busy}
          onClick={() => void applied.run({ teaId: tea.teaId, appliedDate: today }, say('Tea recorded as applied.'))}
        >
          {say('Applied today')}
        </Button>
      ) : null}
    </Sheet>
  );
}
