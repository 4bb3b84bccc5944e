import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { QuantityField } from '../../fields/quantity-field.tsx';
import { say } from '../../words/say.ts';
import { BoreField } from './bore-field.tsx';
import type { LineData } from './line-data.ts';

const NO_BED = '';

/** What can be done at the chosen place: branch off, draw on, take it away. */
export function PlaceTools({
  data,
  chosen,
  onChoose,
}: {
  readonly data: LineData;
  readonly chosen: string | undefined;
  readonly onChoose: (nodeId: string | undefined) => void;
}) {
  const reader = useReader();
  const [branching, setBranching] = useState(false);
  const remove = useChange(api.waterLines.removePlace);
  const node = data.plan.nodes.find((each) => each.id === chosen);
  if (node === undefined)
    return (
      <p className="soft small no-print">
        {say('Choose a place on the drawing to branch off or to take it away. Drag a place to move it; the lengths follow.')}
      </p>
    );
  const into = data.plan.runs.find((run) => run.toNodeId === node.id);
  return (
    <div className="row no-print">
      <strong>{node.name}</strong>
      <span className="soft small">
        {say('{elevation} high, zone {zone}', { elevation: reader.print(node.elevation_m, 'm'), zone: node.zone })}
      </span>
      <Button icon="add" onClick={() => setBranching(true)}>
        {say('Branch off here')}
      </Button>
      {node.kind === 'source' ? null : (
        <Button
          icon="bin"
          weight="harm"
          disabled={remove.busy}
          onClick={() => {
            onChoose(undefined);
            void remove.run(
              { lineId: data.line.id, nodeId: node.id },
              say('Took {node} and what is behind it away.', { node: node.name }),
            );
          }}
        >
          {say('Take away, with all behind it')}
        </Button>
      )}
      {branching ? (
        <BranchDialog
          data={data}
          fromNodeId={node.id}
          insideDiameter_m={into?.insideDiameter_m ?? data.plan.runs[0]?.insideDiameter_m ?? null}
          at={{ x_m: node.x_m, y_m: node.y_m, outlet_m: node.elevation_m }}
          onClose={() => setBranching(false)}
          onDone={onChoose}
        />
      ) : null}
    </div>
  );
}

const ends = [
  { value: 'outlet', text: say('A bed’s outlet') },
  { value: 'tee', text: say('A tee to draw on from') },
] as const;

function BranchDialog(props: {
  readonly data: LineData;
  readonly fromNodeId: string;
  readonly insideDiameter_m: number | null;
  readonly at: { readonly x_m: number; readonly y_m: number; readonly outlet_m: number };
  readonly onClose: () => void;
  readonly onDone: (nodeId: string) => void;
}) {
  const add = useChange(api.waterLines.addBranch);
  const served = new Set(props.data.plan.outlets.map((outlet) => outlet.bedId));
  const free = props.data.beds.filter((bed) => !served.has(bed.bedId));
  const [to, setTo] = useState<'outlet' | 'tee'>('outlet');
  const [bedId, setBedId] = useState<string>(NO_BED);
  const [east_m, setEast] = useState<number | null>(1);
  const [north_m, setNorth] = useState<number | null>(0);
  const [inside_m, setInside] = useState<number | null>(props.insideDiameter_m);
  const [outlet_m, setOutlet] = useState<number | null>(props.at.outlet_m);
  const save = async (): Promise<void> => {
    const bed = to === 'outlet' ? free.find((each) => each.bedId === bedId) : undefined;
    const added = await add.run(
      {
        lineId: props.data.line.id,
        fromNodeId: props.fromNodeId,
        to,
        bedId: bed?.bedId ?? null,
        x_m: bed?.x_m ?? props.at.x_m + (east_m ?? 0),
        y_m: bed?.y_m ?? props.at.y_m + (north_m ?? 0),
        insideDiameter_m: inside_m ?? 0,
        outlet_m: outlet_m ?? 0,
      },
      say('Added a branch.'),
    );
    if (added === undefined) return;
    props.onDone(added.nodeId);
    props.onClose();
  };
  return (
    <Dialog title={say('Branch off')} onClose={props.onClose}>
      <Form onSave={() => void save()} failure={add.failure} label={say('A new branch')} paths={['insideDiameter_m', 'outlet_m']}>
        <ChoiceField label={say('To')} value={to} choices={ends} onChange={setTo} />
        {to === 'outlet' ? (
          <ChoiceField
            label={say('Bed')}
            value={bedId}
            choices={[
              { value: NO_BED, text: say('None of the farm’s beds') },
              ...free.map((bed) => ({ value: bed.bedId as string, text: bed.code })),
            ]}
            onChange={setBedId}
          />
        ) : null}
        {to === 'outlet' && bedId !== NO_BED ? null : (
          <div className="form-pair">
            <QuantityField label={say('To the east')} unit="m" value={east_m} onChange={setEast} />
            <QuantityField label={say('To the north')} unit="m" value={north_m} onChange={setNorth} />
          </div>
        )}
        <BoreField label={say('Inside diameter of the tube')} path="insideDiameter_m" value_m={inside_m} onChange={setInside} />
        <QuantityField label={say('Height of its end')} unit="m" path="outlet_m" value={outlet_m} onChange={setOutlet} />
        <Button type="submit" weight="main" disabled={add.busy}>
          {say('Add the branch')}
        </Button>
      </Form>
    </Dialog>
  );
}
