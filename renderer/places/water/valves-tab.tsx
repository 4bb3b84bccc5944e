import { useMemo, useState } from 'react';
import { catchOf_mL, flowOfCatch_L_per_h } from '../../../planner/irrigation/setup-card.ts';
import { Button } from '../../app/button.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { type Column, derived, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import type { Edit } from '../../table/paste-block.ts';
import { say } from '../../words/say.ts';
import type { LineData } from './line-data.ts';
import { LineFigures } from './line-figures.tsx';
import { LineFrame } from './line-frame.tsx';
import { solved } from './line-solve.ts';
import { SetUpCard } from './set-up-card.tsx';
import { ValveReadings } from './valve-readings.tsx';

/** Valves: the card to set them by, the flows measured after, and what each valve is then known to be. */
export function ValvesTab() {
  return <LineFrame>{(data) => <ValvesBody data={data} />}</LineFrame>;
}

type MeasuredRow = {
  readonly outletId: string;
  readonly code: string;
  readonly expected_mL: number;
  readonly measured_mL: number | null;
  readonly measured_L_per_h: number | null;
  readonly design_L_per_h: number;
  readonly setK: number | null;
  readonly state: string;
};

/** The month whose need shares the flow (common practice, no source). */
const HOTTEST_MONTH = 7;

const rowId = (row: MeasuredRow): string => row.outletId;

const columns: readonly Column<MeasuredRow>[] = [
  text('code', say('Bed'), { width: 90 }),
  quantity('expected_mL', say('Expected in 30 s'), { digits: 2, width: 130, hint: say('As the valves are believed to stand') }),
  quantity('measured_mL', say('Measured in 30 s'), { edit: true, mayBeEmpty: false, width: 130 }),
  quantity('measured_L_per_h', say('That is'), { digits: 2 }),
  quantity('design_L_per_h', say('Wanted'), { digits: 2 }),
  derived('quantity', 'setK', say('K of the valve'), (row) => row.setK, {
    digits: 2,
    width: 110,
    hint: say('Its loss coefficient, fitted to the measured flow'),
  }),
  text('state', say('Known from'), { width: 140 }),
];

function ValvesBody({ data }: { readonly data: LineData }) {
  const lineId = data.line.id;
  const setValves = useChange(api.waterLines.setValves);
  const openValves = useChange(api.waterLines.openValves);
  const measured = useChange(api.waterLines.measured);
  const byNeed = useChange(api.waterLines.sharesByNeed);
  const equal = useChange(api.waterLines.equalShares);
  const [calibrating, setCalibrating] = useState(false);
  const { report, fault } = useMemo(() => solved(data.plan), [data.plan]);
  const rows = useMemo((): readonly MeasuredRow[] => {
    const facts = new Map(data.facts.map((fact) => [fact.outletId, fact]));
    const outlets = new Map(data.plan.outlets.map((outlet) => [outlet.id, outlet]));
    return (report?.outlets ?? []).map((outlet) => {
      const fact = facts.get(outlet.id);
      const flow = fact?.measured_L_per_h ?? null;
      const setK = outlets.get(outlet.id)?.setK ?? null;
      return {
        outletId: outlet.id,
        code: fact?.code ?? '',
        expected_mL: catchOf_mL(Math.max(0, outlet.full.flow_L_per_h)),
        measured_mL: flow === null ? null : catchOf_mL(flow),
        measured_L_per_h: flow,
        design_L_per_h: outlet.design_L_per_h,
        setK,
        state:
          fact?.calibrated === true
            ? say('measured {measuredDate}', { measuredDate: fact.measuredDate ?? '' })
            : setK === null
              ? say('fully open')
              : say('set by the card'),
      };
    });
  }, [data, report]);
  if (report === null) return <p className="failed">{fault}</p>;
  const enter = (edits: readonly Edit<MeasuredRow>[]): Promise<unknown> =>
    measured.run(
      {
        lineId,
        date: data.today,
        flows: edits.flatMap((edit) =>
          typeof edit.value === 'number' ? [{ outletId: edit.row.outletId, flow_L_per_h: flowOfCatch_L_per_h(edit.value) }] : [],
        ),
      },
      say('Fitted the valves to the measured flows; the card is redone from there.'),
    );
  return (
    <div className="stack">
      <LineFigures report={report} plan={data.plan} supply={data.line.supply} />
      <div className="row no-print">
        <Button
          weight="main"
          disabled={setValves.busy}
          onClick={() => void setValves.run({ lineId }, say('The valves stand as the card says.'))}
        >
          {say('The valves stand as the card says')}
        </Button>
        <Button
          disabled={openValves.busy}
          onClick={() => void openValves.run({ lineId }, say('All valves are taken as fully open.'))}
        >
          {say('All valves are fully open')}
        </Button>
        <Button
          disabled={byNeed.busy}
          onClick={() => void byNeed.run({ lineId, month: HOTTEST_MONTH }, say('Shares follow what each bed needs in July.'))}
        >
          {say('Shares by need in July')}
        </Button>
        <Button disabled={equal.busy} onClick={() => void equal.run({ lineId }, say('Equal shares.'))}>
          {say('Equal shares')}
        </Button>
        <Button icon="print" onClick={() => window.print()}>
          {say('Print the card')}
        </Button>
        <Button aria-pressed={calibrating} onClick={() => setCalibrating(!calibrating)}>
          {say('Turns of a valve')}
        </Button>
      </div>
      {byNeed.failure === undefined ? null : <p className="failed">{byNeed.failure.message}</p>}
      <SetUpCard data={data} report={report} />
      {calibrating ? <ValveReadings data={data} today={data.today} /> : null}
      <section className="stack no-print">
        <h2>{say('Measured after one round')}</h2>
        <p className="soft small">
          {say(
            'Type what the jug showed in 30 seconds with all valves as they stand, best at every bed at once (a block can be pasted). Each valve is fitted to its flow, and the card above is redone from what the valves are then known to be.',
          )}
        </p>
        <Grid name="Measured flows" rows={rows} columns={columns} rowId={rowId} onEdit={enter} failure={measured.failure} />
      </section>
      <Cautions ids={['estimate-limits', 'aerosols-legionella']} folded />
    </div>
  );
}
