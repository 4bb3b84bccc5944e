import { useMemo, useState } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { LineBottleneck } from './line-bottleneck.tsx';
import { outletColumns, runColumns } from './line-columns.ts';
import type { LineData } from './line-data.ts';
import { LineDrawing } from './line-drawing.tsx';
import { editsOfOutlets, editsOfRuns } from './line-edits.ts';
import { LineFigures } from './line-figures.tsx';
import { LineFrame } from './line-frame.tsx';
import { lineKey } from './line-marks.ts';
import { LineOptions } from './line-options.tsx';
import { LinePartsList } from './line-parts-list.tsx';
import { PlaceTools } from './line-place-tools.tsx';
import { cautionsOfLine, type OutletRow, outletRows, type RunRow, runRows, withMoved } from './line-rows.ts';
import { solved, systemOf } from './line-solve.ts';
import { LineWear } from './line-wear.tsx';
import { PumpChart } from './pump-chart.tsx';
import { PumpDialog } from './pump-dialog.tsx';
import { SupplyDialog } from './supply-dialog.tsx';

const runId = (row: RunRow): string => row.runId;
const outletId = (row: OutletRow): string => row.outletId;

/** The line drawn and in tables, solved while it changes. */
export function LineTab() {
  return <LineFrame>{(data) => <LineBody data={data} />}</LineFrame>;
}

type Moved = { readonly nodeId: string; readonly to: { readonly x_m: number; readonly y_m: number } };

function LineBody({ data }: { readonly data: LineData }) {
  const lineId = data.line.id;
  const [chosen, setChosen] = useQueryValue('place');
  const [moved, setMoved] = useState<Moved>();
  const [pumpOpen, setPumpOpen] = useState(false);
  const [supplyOpen, setSupplyOpen] = useState(false);
  const remove = useChange(api.waterLines.remove);
  const beds = useRead(api.beds.list, undefined);
  const site = useRead(api.beds.site, undefined);
  const setNodes = useChange(api.waterLines.setNodes);
  const setRuns = useChange(api.waterLines.setRuns);
  const setOutlets = useChange(api.waterLines.setOutlets);
  const plan = useMemo(
    () => (moved === undefined ? data.plan : withMoved(data.plan, moved.nodeId, moved.to)),
    [data.plan, moved],
  );
  const { report, fault } = useMemo(() => solved(plan), [plan]);
  const system = useMemo(() => systemOf(data.plan, solved(data.plan).report), [data.plan]);
  const runs = useMemo(() => runRows(plan, report), [plan, report]);
  const outlets = useMemo(() => outletRows(data, plan, report), [data, plan, report]);
  const codes = useMemo(() => new Map(data.facts.map((fact) => [fact.outletId, fact.code])), [data.facts]);

  const drop = async (nodeId: string, to: Moved['to']): Promise<void> => {
    setMoved({ nodeId, to });
    await setNodes.run({ lineId, edits: [{ id: nodeId, values: to }], relength: true });
    setMoved(undefined);
  };
  const editRuns = async (edits: Parameters<typeof editsOfRuns>[0]): Promise<void> => {
    const { nodes, runs: own } = editsOfRuns(edits);
    if (nodes.length > 0) await setNodes.run({ lineId, edits: nodes, relength: false });
    if (own.length > 0) await setRuns.run({ lineId, edits: own });
  };

  return (
    <div className="stack">
      {fault === null ? null : (
        <div className="failed" role="alert">
          <p>{fault}</p>
        </div>
      )}
      {report === null ? null : <LineFigures report={report} plan={plan} supply={data.line.supply} />}
      {report?.problem === null || report === null ? null : <p className="failed">{report.problem}</p>}
      <LineDrawing
        plan={plan}
        report={report}
        beds={beds.state === 'ready' ? beds.data : []}
        north_deg={site.state === 'ready' ? site.data.north_deg : 0}
        chosen={chosen}
        onChoose={setChosen}
        onDrag={(nodeId, to) => setMoved({ nodeId, to })}
        onDrop={(nodeId, to) => void drop(nodeId, to)}
      />
      <div className="line-key" aria-hidden="true">
        {lineKey.map(({ flow, name }) => (
          <span key={flow}>
            <i data-flow={flow} /> {name}
          </span>
        ))}
      </div>
      <p className="soft small">
        {say(
          'Flows are worth two figures: losses of fittings scatter by a quarter. Those noted “uncertain” come through a tube between smooth and turbulent flow, where they may be off by 30 %.',
        )}
      </p>
      <PlaceTools data={data} chosen={chosen} onChoose={setChosen} />
      <Grid
        name="Outlets to beds"
        rows={outlets}
        columns={outletColumns}
        rowId={outletId}
        onOpen={(row) => setChosen(row.nodeId)}
        onEdit={(edits) => setOutlets.run({ lineId, edits: editsOfOutlets(edits) })}
        failure={setOutlets.failure}
      />
      <Grid
        name="Runs of tube"
        rows={runs}
        columns={runColumns}
        rowId={runId}
        onOpen={(row) => setChosen(row.nodeId)}
        onEdit={editRuns}
        failure={setRuns.failure ?? setNodes.failure}
      />
      {report === null ? null : (
        <div className="columns">
          <section className="stack">
            <PumpChart report={report} system={system} supply={data.line.supply} />
            <div className="row no-print">
              <Button onClick={() => setPumpOpen(true)}>
                {data.pump === null ? say('Enter the pump') : say('Change the pump')}
              </Button>
              <Button onClick={() => setSupplyOpen(true)}>{say('Change the supply')}</Button>
            </div>
          </section>
          <LineBottleneck report={report} codeOf={(id) => codes.get(id) ?? ''} />
        </div>
      )}
      <LineOptions data={data} />
      <LinePartsList data={data} />
      <LineWear data={data} />
      <Cautions ids={cautionsOfLine(data)} folded />
      <div className="row no-print">
        <Button
          icon="bin"
          weight="harm"
          disabled={remove.busy}
          onClick={() =>
            void remove.run({ lineId }, say('Took the line {line} away. Undo brings it back.', { line: data.line.name }))
          }
        >
          {say('Take this line away')}
        </Button>
      </div>
      {pumpOpen ? <PumpDialog data={data} onClose={() => setPumpOpen(false)} /> : null}
      {supplyOpen ? <SupplyDialog data={data} onClose={() => setSupplyOpen(false)} /> : null}
    </div>
  );
}
