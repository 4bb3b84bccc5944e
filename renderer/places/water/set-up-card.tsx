import { useMemo, useState } from 'react';
import { InputError } from '../../../planner/errors.ts';
import { networkOf, outletLossK, pipedOutlets } from '../../../planner/irrigation/line-plan.ts';
import type { LineReport } from '../../../planner/irrigation/line-report.ts';
import { readyLine } from '../../../planner/irrigation/line-solution.ts';
import { branchByBranch, CATCH_S, type CardStep, nearToFar, setUpCard } from '../../../planner/irrigation/setup-card.ts';
import { turnsFor } from '../../../planner/irrigation/valve-calibration.ts';
import { useReader } from '../../client/reader.tsx';
import { ChoiceField } from '../../fields/choice-field.tsx';
import type { LineData } from './line-data.ts';

export type Walk = 'near-to-far' | 'by-branch';

const walks = [
  { value: 'near-to-far', text: 'Near to far over the whole line' },
  { value: 'by-branch', text: 'Branch by branch, less walking' },
] as const;

export type CardRow = CardStep & {
  readonly code: string;
  readonly zone: number;
  readonly turns: number | null;
  readonly missing_m: number;
};

/** Turns for a wanted coefficient where this very valve was read at three settings; else null. */
function turnsOf(readings: LineData['facts'][number]['readings'], wantedK: number): number | null {
  if (!Number.isFinite(wantedK)) return null;
  try {
    return turnsFor(readings, wantedK);
  } catch (error) {
    if (error instanceof InputError) return null;
    throw error;
  }
}

/**
 * The card's rows in walking order, zone after zone: each outlet's flow to see now, while those before it are set and those
 * after it stand as they do.
 */
export function cardRows(data: LineData, report: LineReport, walk: Walk = 'near-to-far'): readonly CardRow[] {
  const line = readyLine(networkOf(data.plan, 'full'));
  const byId = new Map(report.outlets.map((outlet) => [outlet.id, outlet]));
  const facts = new Map(data.facts.map((fact) => [fact.outletId, fact]));
  const outlets = pipedOutlets(data.plan);
  return report.zones.flatMap((zone) => {
    const inZone = (id: string): boolean => byId.get(id)?.zone === zone.zone;
    const shut = Number.POSITIVE_INFINITY;
    const designK = new Map(
      outlets.map((outlet) => [
        outlet.id,
        inZone(outlet.id) ? outletLossK(outlet, byId.get(outlet.id)?.designValveK ?? shut) : shut,
      ]),
    );
    const presentK = new Map(
      outlets.map((outlet) => [outlet.id, inZone(outlet.id) ? outletLossK(outlet, outlet.setK ?? outlet.openK) : shut]),
    );
    return setUpCard({
      line,
      order: (walk === 'near-to-far' ? nearToFar(line) : branchByBranch(line)).filter(inZone),
      designK,
      presentK,
    }).map(
      (step): CardRow => ({
        ...step,
        code: facts.get(step.id)?.code ?? '',
        zone: zone.zone,
        missing_m: byId.get(step.id)?.missing_m ?? 0,
        turns: turnsOf(facts.get(step.id)?.readings ?? [], byId.get(step.id)?.designValveK ?? shut),
      }),
    );
  });
}

/** The card to take along the line, near to far. */
export function SetUpCard({ data, report }: { readonly data: LineData; readonly report: LineReport }) {
  const reader = useReader();
  const [walk, setWalk] = useState<Walk>('near-to-far');
  const rows = useMemo(() => cardRows(data, report, walk), [data, report, walk]);
  const zones = report.zones.length > 1;
  const turns = rows.some((row) => row.turns !== null);
  return (
    <section className="panel set-up-card">
      <h3>Set-up card: {data.line.name}</h3>
      <p className="soft small">
        Reservoir full, pump running. Walk near to far. At each bed hold a jug under the outlet for {CATCH_S} seconds and turn its
        valve until the jug shows this card’s figure, then go on and leave it. An early bed reads less than it will give at the
        end: the beds share one tube.
      </p>
      <div className="no-print card-walk">
        <ChoiceField label="Walk" value={walk} choices={walks} onChange={setWalk} />
      </div>
      <table className="plain-table">
        <thead>
          <tr>
            <th scope="col">Step</th>
            <th scope="col">Bed</th>
            {zones ? <th scope="col">Zone</th> : null}
            <th scope="col" className="number">
              See now in {CATCH_S} s
            </th>
            <th scope="col" className="number">
              That is
            </th>
            <th scope="col" className="number">
              In the end
            </th>
            {turns ? (
              <th scope="col" className="number">
                Turns of this valve
              </th>
            ) : null}
            <th scope="col" className="print-only">
              Measured
            </th>
          </tr>
        </thead>
        <tbody>
          {rows.map((row, at) => (
            <tr key={row.id}>
              <td className="number">{at + 1}</td>
              <th scope="row">{row.code}</th>
              {zones ? <td>{row.zone}</td> : null}
              {row.missing_m > 0 ? (
                <td colSpan={3}>
                  Not reached: {reader.print(row.missing_m, 'm', 2)} of head is missing. Lower the outlet or raise the water.
                </td>
              ) : (
                <>
                  <td className="number">{reader.print(row.catch_mL, 'mL', 2)}</td>
                  <td className="number">{reader.print(row.seeNow_L_per_h, 'L_per_h', 2)}</td>
                  <td className="number">{reader.print(row.final_L_per_h, 'L_per_h', 2)}</td>
                </>
              )}
              {turns ? <td className="number">{row.turns === null ? '–' : row.turns.toFixed(1)}</td> : null}
              <td className="print-only">______</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}
