import { useState } from 'react';
import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { type InputOf, type OutputOf, useRead } from '../../client/use-read.ts';
import { Form } from '../../fields/form.tsx';
import { say } from '../../words/say.ts';
import { DesignFields } from './design-fields.tsx';
import { DesignPreview } from './design-preview.tsx';
import { LayerFields } from './layer-fields.tsx';
import { PartFields } from './part-fields.tsx';
import { StayFields } from './stay-fields.tsx';

export type DesignEntry = InputOf<typeof api.designs.add>;
type WholeDesign = OutputOf<typeof api.designs.one>;

const fieldPaths = [
  'name',
  'length_m',
  'width_m',
  'bottomLength_m',
  'bottomWidth_m',
  'polygon_m',
  'depth_m',
  'fillDepth_m',
  'topWidth_m',
  'basinLength_m',
  'basinWidth_m',
  'basinDepth_m',
  'basinFill_m',
  'reservoirDepth_m',
  'overflow_m',
  'reservoirVoid_share',
  'mulchDepth_m',
  'barrierOverlap_m',
  'fillLife_years',
  'layers',
  'parts',
];
const paths = [...fieldPaths, ...fieldPaths.map((path) => `values.${path}`)];

/** A frame of a common size, to start a new design from. */
const fresh: DesignEntry = {
  values: {
    name: '',
    kind: 'framed',
    outline: 'rectangle',
    length_m: 2.4,
    width_m: 1.2,
    bottomLength_m: null,
    bottomWidth_m: null,
    polygon_m: null,
    depth_m: 0.3,
    fillDepth_m: 0.28,
    topWidth_m: null,
    watering: 'top',
    basinLength_m: null,
    basinWidth_m: null,
    basinDepth_m: null,
    basinFill_m: null,
    reservoirDepth_m: null,
    overflow_m: null,
    reservoirVoid_share: null,
    mulchMaterialId: null,
    mulchDepth_m: null,
    barrierOverlap_m: null,
    wallMaterial: '',
    fillLife_years: 10,
    notes: '',
  },
  layers: [],
  parts: [],
};

/** The sheet of a design, new or known. */
export function DesignSheet(props: {
  readonly designId: string | undefined;
  readonly onClose: () => void;
  readonly onMade: (designId: string) => void;
  readonly onBuild: (designId: string) => void;
}) {
  return props.designId === undefined ? (
    <NewDesign {...props} />
  ) : (
    <KnownDesign key={props.designId} {...props} designId={props.designId} />
  );
}

function NewDesign(props: { readonly onClose: () => void; readonly onMade: (designId: string) => void }) {
  const add = useChange(api.designs.add);
  const [entry, setEntry] = useState(fresh);
  const save = async (): Promise<void> => {
    const made = await add.run(entry, say('The design {values} is kept.', { values: entry.values.name }));
    if (made !== undefined) props.onMade(made.designId);
  };
  return (
    <Sheet title={say('New design')} onClose={props.onClose}>
      <Form onSave={() => void save()} failure={add.failure} paths={paths} label={say('New design')}>
        <EntryFields entry={entry} onChange={setEntry} />
        <Button type="submit" weight="main" disabled={add.busy}>
          {say('Keep the design')}
        </Button>
      </Form>
    </Sheet>
  );
}

function KnownDesign(props: {
  readonly designId: string;
  readonly onClose: () => void;
  readonly onMade: (designId: string) => void;
  readonly onBuild: (designId: string) => void;
}) {
  const reading = useRead(api.designs.one, { designId: props.designId });
  return <Shown reading={reading}>{(design) => <ChangeDesign key={JSON.stringify(design)} {...props} design={design} />}</Shown>;
}

function ChangeDesign(props: {
  readonly design: WholeDesign;
  readonly onClose: () => void;
  readonly onMade: (designId: string) => void;
  readonly onBuild: (designId: string) => void;
}) {
  const { design } = props;
  const set = useChange(api.designs.set);
  const add = useChange(api.designs.add);
  const retire = useChange(api.designs.retire);
  const [entry, setEntry] = useState<DesignEntry>({ values: design.values, layers: design.layers, parts: design.parts });
  const [stay, setStay] = useState<readonly string[]>([]);
  const save = (): void =>
    void set.run(
      { designId: design.designId, revision: design.revision, ...entry, stay: [...stay] },
      say('The design {values} is changed.', { values: entry.values.name }),
    );
  const copy = async (): Promise<void> => {
    const made = await add.run(
      { ...entry, values: { ...entry.values, name: say('{values}, copy', { values: entry.values.name }) } },
      say('Copied the design.'),
    );
    if (made !== undefined) props.onMade(made.designId);
  };
  return (
    <Sheet
      title={design.values.name}
      onClose={props.onClose}
      foot={
        <>
          <Button icon="add" onClick={() => props.onBuild(design.designId)}>
            {say('Build beds of it')}
          </Button>
          <Button icon="copy" disabled={add.busy} onClick={() => void copy()}>
            {say('Copy')}
          </Button>
          <Button
            weight="quiet"
            disabled={retire.busy}
            onClick={() =>
              void retire.run(
                { designId: design.designId, revision: design.revision, retired: true },
                say('It is no longer offered for new beds.'),
              )
            }
          >
            {say('No longer build it')}
          </Button>
        </>
      }
    >
      <Form
        onSave={save}
        failure={set.failure ?? add.failure}
        paths={paths}
        label={say('Change {values}', { values: design.values.name })}
      >
        <EntryFields entry={entry} onChange={setEntry} />
        <StayFields beds={design.beds} stay={stay} onChange={setStay} />
        <Button type="submit" weight="main" disabled={set.busy}>
          {say('Save the design')}
        </Button>
      </Form>
    </Sheet>
  );
}

function EntryFields({ entry, onChange }: { readonly entry: DesignEntry; readonly onChange: (entry: DesignEntry) => void }) {
  const materials = useRead(api.designs.materials, undefined);
  return (
    <Shown reading={materials}>
      {(all) => (
        <>
          <DesignPreview entry={entry} materials={all} />
          <DesignFields values={entry.values} onChange={(values) => onChange({ ...entry, values })} />
          <LayerFields layers={entry.layers} materials={all} onChange={(layers) => onChange({ ...entry, layers: [...layers] })} />
          <PartFields parts={entry.parts} materials={all} onChange={(parts) => onChange({ ...entry, parts: [...parts] })} />
        </>
      )}
    </Shown>
  );
}
