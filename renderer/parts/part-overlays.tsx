import { type ReactNode, useState } from 'react';
import { Button } from '../app/button.tsx';
import { Dialog } from '../app/dialog.tsx';
import { Sheet } from '../app/sheet.tsx';
import { Tabs } from '../app/tabs.tsx';
import { ThemeSwitch } from '../app/theme-switch.tsx';
import { announce } from '../client/announce.ts';
import { Form } from '../fields/form.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { ColumnChooser } from '../table/column-chooser.tsx';
import { EditMany } from '../table/edit-many.tsx';
import { useTableModel } from '../table/table-model.ts';
import { refused } from './refused.ts';
import { made, sampleColumns, sampleId } from './sample-rows.ts';

const few = made(6);
const kinds = ['Short', 'Wide', 'Long', 'Refused', 'Columns', 'Edit many'] as const;
type Kind = (typeof kinds)[number];
const tabs = [
  { name: 'site', title: 'Site' },
  { name: 'designs', title: 'Designs' },
  { name: 'labels', title: 'Labels' },
] as const;

/** What opens over a page or beside it, and where results are told. */
export function PartOverlays() {
  const [open, setOpen] = useState<Kind>();
  const [tab, setTab] = useState<(typeof tabs)[number]['name']>('designs');
  const model = useTableModel({ name: 'Sample of a chooser', rows: few, columns: sampleColumns, rowId: sampleId });
  const close = () => setOpen(undefined);
  return (
    <>
      <Tabs tabs={tabs} chosen={tab} onChoose={setTab} label="Sample tabs" />
      <div className="row">
        {kinds.map((kind) => (
          <Button key={kind} onClick={() => setOpen(kind)}>
            {`Dialog: ${kind.toLowerCase()}`}
          </Button>
        ))}
        <ThemeSwitch />
      </div>
      <div className="row">
        <Button onClick={() => announce('Moved 12 beds.')}>Tell a result</Button>
        <Button onClick={() => announce('Nothing was changed: one entry needs a look.', 'now')}>Tell a refusal</Button>
        <span className="soft">Both are told in the line at the foot of the window.</span>
      </div>
      <div style={{ display: 'flex', height: '16rem', maxWidth: '100%' }}>
        <Sheet title="A sheet at the side" onClose={() => undefined} foot={<Button weight="main">Save</Button>}>
          <p>The selected row in full. It scrolls inside itself and keeps its head and foot.</p>
          <dl className="facts">
            <dt>Bed</dt>
            <dd>B-14</dd>
            <dt>Fill</dt>
            <dd>302 L</dd>
          </dl>
        </Sheet>
      </div>
      {open === 'Columns' ? <ColumnChooser model={model} columns={sampleColumns} onClose={close} /> : null}
      {open === 'Edit many' ? <EditMany columns={sampleColumns} rows={few} onEdit={() => undefined} onClose={close} /> : null}
      {open === 'Short' || open === 'Wide' || open === 'Long' ? (
        <Dialog title={`A ${open.toLowerCase()} dialog`} wide={open === 'Wide'} onClose={close} foot={<Foot onClose={close} />}>
          {Array.from({ length: open === 'Long' ? 40 : 1 }, (_, at) => `line ${at + 1}`).map((line) => (
            <p key={line}>A dialog asks for one thing, says what follows from it, and can be left by Escape ({line}).</p>
          ))}
        </Dialog>
      ) : null}
      {open === 'Refused' ? (
        <Dialog title="A dialog whose entries were refused" onClose={close}>
          <Form onSave={() => undefined} failure={refused} paths={['depth_m']} label="Refused entries">
            <TextField label="Name" value="Trough by the wall" onChange={() => undefined} />
            <QuantityField label="Depth" name="depth_m" value={9} onChange={() => undefined} />
            <Foot onClose={close} />
          </Form>
        </Dialog>
      ) : null}
    </>
  );
}

function Foot({ onClose }: { readonly onClose: () => void }): ReactNode {
  return (
    <div className="row">
      <Button onClick={onClose}>Leave it</Button>
      <Button weight="main" onClick={onClose}>
        Save
      </Button>
    </div>
  );
}
