import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Shown } from '../../app/states.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { type OutputOf, useRead } from '../../client/use-read.ts';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField, ShareField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';

const LOSS = 0.1;

/** Takes a bed down: it is retired, its parts come out, and soil and rotted wood go to stock. */
export function TakeDownDialog(props: {
  readonly bedId: string;
  readonly today: IsoDate;
  readonly onClose: () => void;
  /** The bed is gone from the drawing, and so is its sheet. */
  readonly onDone: () => void;
}) {
  const [loss, setLoss] = useState<number | null>(LOSS);
  const won = useRead(api.beds.dismantleYield, { bedId: props.bedId, lossShare: loss ?? LOSS });
  return (
    <Dialog title={say('Take a bed down')} onClose={props.onClose}>
      <Cautions ids={['mould-and-old-mounds', 'saturated-weight-lifting']} folded />
      <ShareField
        label={say('Lost in digging and screening')}
        value={loss}
        onChange={setLoss}
        hint={say('Common practice, no source: 10 %')}
      />
      <Shown reading={won}>{(lines) => <Lines key={JSON.stringify(lines)} {...props} won={lines} />}</Shown>
    </Dialog>
  );
}

function Lines(props: {
  readonly bedId: string;
  readonly today: IsoDate;
  readonly onClose: () => void;
  readonly onDone: () => void;
  readonly won: OutputOf<typeof api.beds.dismantleYield>;
}) {
  const dismantle = useChange(api.beds.dismantle);
  const [date, setDate] = useState<IsoDate | null>(props.today);
  const [because, setBecause] = useState('');
  const [volumes, setVolumes] = useState<Readonly<Record<string, number | null>>>(() =>
    Object.fromEntries(props.won.lines.map((line) => [line.materialId, line.loose_L])),
  );
  const save = async (): Promise<void> => {
    const lines = props.won.lines.map((line) => ({ materialId: line.materialId, loose_L: volumes[line.materialId] ?? 0 }));
    if (
      (await dismantle.run(
        { bedId: props.bedId, date: date ?? '', because, lines },
        say('The bed is taken down; its fill is in stock.'),
      )) !== undefined
    ) {
      props.onClose();
      props.onDone();
    }
  };
  return (
    <Form onSave={() => void save()} failure={dismantle.failure} paths={['date', 'because']} label={say('Take down')}>
      <div className="form-pair">
        <DateField label={say('On')} path="date" value={date} onChange={setDate} />
        <TextField label={say('Why')} path="because" value={because} onChange={setBecause} needed />
      </div>
      {props.won.lines.map((line) => (
        <QuantityField
          key={line.materialId}
          label={say('{material}, loose, to stock', { material: line.material })}
          unit="bulk_L"
          value={volumes[line.materialId] ?? null}
          onChange={(value) => setVolumes({ ...volumes, [line.materialId]: value })}
        />
      ))}
      <div className="row">
        <Button type="submit" weight="harm" disabled={dismantle.busy}>
          {say('Take down')}
        </Button>
        <Button onClick={props.onClose}>{say('Leave it')}</Button>
      </div>
    </Form>
  );
}
