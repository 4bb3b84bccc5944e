import { type ReactNode, useState } from 'react';
import { Button } from '../app/button.tsx';
import { Empty, Failed, Waiting } from '../app/states.tsx';
import { useReader } from '../client/reader.tsx';
import { CellEditor } from '../table/cell-editor.tsx';
import { Grid } from '../table/grid.tsx';
import { refused } from './refused.ts';
import { made, type SampleRow, sampleColumns, sampleId } from './sample-rows.ts';

const few = made(6);
const none: readonly SampleRow[] = [];
const readOnly = sampleColumns.map((column) => ({ ...column, edit: false }));
const ignored = async (): Promise<void> => undefined;

/** The grid: over many rows to be sorted, edited and scrolled, and in each of its states. */
export function PartGrid() {
  const [rows, setRows] = useState(() => made(5000));
  return (
    <>
      <State name="5,000 rows, edited in place, totals" height="20rem">
        <Grid
          name="Sample of 5,000 rows"
          rows={rows}
          columns={sampleColumns}
          rowId={sampleId}
          onEdit={async (edits) =>
            setRows((before) => {
              const byId = Map.groupBy(edits, (edit) => edit.row.id);
              return before.map((row) => ({
                ...row,
                ...Object.fromEntries((byId.get(row.id) ?? []).map((edit) => [edit.key, edit.value])),
              }));
            })
          }
        />
      </State>
      <div className="columns">
        <State name="Being read">
          <Waiting />
        </State>
        <State name="Could not be read">
          <Failed message="The program did not answer. Nothing was changed." retry={() => undefined} />
        </State>
        <State name="Empty">
          <Grid
            name="Sample without rows"
            rows={none}
            columns={sampleColumns}
            rowId={sampleId}
            empty={
              <Empty title="No beds yet" action={<Button weight="main">Build beds</Button>}>
                Make a design, then build beds of it.
              </Empty>
            }
          />
        </State>
        <State name="Being edited, and an entry that cannot be read">
          <Editors />
        </State>
      </div>
      <State name="Several rows selected">
        <Grid
          name="Sample with selected rows"
          rows={few}
          columns={sampleColumns}
          rowId={sampleId}
          selected={['0', '2', '3']}
          onEdit={ignored}
          tools={<Button icon="add">A tool of the page</Button>}
        />
      </State>
      <State name="Read only; rows open">
        <Grid name="Sample to be read" rows={few} columns={readOnly} rowId={sampleId} onOpen={() => undefined} />
      </State>
      <State name="A pasted block that was refused">
        <Grid
          name="Sample with refused entries"
          rows={few}
          columns={sampleColumns}
          rowId={sampleId}
          onEdit={ignored}
          failure={refused}
        />
      </State>
    </>
  );
}

/** Cells as they are while they are being edited: the first was left with something that is no depth. */
function Editors() {
  const reader = useReader();
  const [row] = few;
  if (row === undefined) return null;
  return (
    <div className="grid-scroll">
      <table>
        <tbody>
          {['depth_m', 'sun', 'code']
            .flatMap((key) => sampleColumns.filter((column) => column.key === key))
            .map((column) => (
              <tr key={column.key}>
                <th scope="row">{column.title}</th>
                <td>
                  <CellEditor
                    column={column}
                    value={column.read(row)}
                    start={column.key === 'depth_m' ? 'nine' : undefined}
                    reader={reader}
                    onCommit={() => undefined}
                    onCancel={() => undefined}
                  />
                </td>
              </tr>
            ))}
        </tbody>
      </table>
    </div>
  );
}

function State({ name, height, children }: { readonly name: string; readonly height?: string; readonly children: ReactNode }) {
  return (
    <section className="stack" aria-label={name}>
      <h3>{name}</h3>
      <div style={height === undefined ? {} : { height, display: 'flex' }}>{children}</div>
    </section>
  );
}
