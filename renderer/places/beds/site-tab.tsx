import { useMemo, useState } from 'react';
import type { Shift } from '../../../planner/beds/arrange.ts';
import type { IsoDate } from '../../../planner/calendar.ts';
import { announce } from '../../client/announce.ts';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { bedColumns } from './bed-columns.tsx';
import { bedEditsOf } from './bed-edits.ts';
import type { BedRow, Site } from './bed-types.ts';
import { type SiteActions, SiteDrawing } from './site-drawing.tsx';
import type { SiteTool } from './site-tool.ts';
import { SiteTools } from './site-tools.tsx';
import { placedBed } from './site-view.ts';

const rowId = (row: BedRow): string => row.bedId;

/** Room between a bed and its duplicate. */
const BESIDE_M = 0.4;

/** The site drawing beside the bed table; what is chosen in one is chosen in the other. */
export function SiteTab(props: {
  readonly beds: readonly BedRow[];
  readonly site: Site;
  readonly today: IsoDate;
  readonly chosen: readonly string[];
  readonly onChoose: (ids: readonly string[]) => void;
  readonly onOpen: (bedId: string) => void;
  readonly onEnd: (ids: readonly string[]) => void;
}) {
  const { beds, site, chosen, onChoose, onOpen } = props;
  const [tool, setTool] = useState<SiteTool>('select');
  const [grid_m, setGrid] = useState<number | null>(null);
  const move = useChange(api.beds.move);
  const order = useChange(api.beds.order);
  const duplicate = useChange(api.beds.duplicate);
  const edit = useChange(api.beds.setMany);

  const rows = useMemo(() => {
    const ids = new Set(chosen);
    return beds.filter((bed) => ids.has(bed.bedId));
  }, [beds, chosen]);
  const boxes = rows.map((bed) => placedBed(bed, bed));

  const place: SiteActions['place'] = async (places, what) => {
    const input = { places: [...places] };
    return (await move.run(what === undefined ? input : { ...input, what })) !== undefined;
  };
  const shift = (shifts: readonly Shift[], what: string): void => {
    const turn = new Map(rows.map((bed) => [bed.bedId, bed.turn_deg]));
    void place(
      shifts.map((each) => ({ ...each, turn_deg: turn.get(each.bedId) ?? 0 })),
      what,
    );
  };
  const copy = async (): Promise<void> => {
    if (rows.length === 0) return;
    const south = Math.min(...boxes.map((box) => box.y_m - box.halfY_m));
    const north = Math.max(...boxes.map((box) => box.y_m + box.halfY_m));
    const made = await duplicate.run(
      { bedIds: rows.map(rowId), dx_m: 0, dy_m: south - north - BESIDE_M, builtDate: props.today },
      say(
        '{rows, plural, one {Duplicated the bed; the new one is chosen.} other {Duplicated # beds; the new ones are chosen.}}',
        { rows: rows.length },
      ),
    );
    if (made !== undefined) onChoose(made.bedIds);
  };
  const end = (): void => {
    if (rows.length === 0) announce(say('Choose the beds first.'));
    else props.onEnd(rows.map(rowId));
  };

  return (
    <div className="site-and-table">
      <div className="site-side">
        <SiteTools
          tool={tool}
          onTool={setTool}
          grid_m={grid_m}
          onGrid={setGrid}
          chosen={boxes}
          onShift={shift}
          onDuplicate={() => void copy()}
          onEnd={end}
        />
        <SiteDrawing
          beds={beds}
          site={site}
          selected={chosen}
          tool={tool}
          grid_m={grid_m}
          actions={{
            select: onChoose,
            open: onOpen,
            place,
            duplicate: () => void copy(),
            end,
            order: (bedIds) =>
              void order.run({ bedIds: [...bedIds] }, say('The order of {bedIds} beds is kept.', { bedIds: bedIds.length })),
          }}
        />
      </div>
      <Grid
        name="Beds"
        rows={beds}
        columns={bedColumns}
        rowId={rowId}
        selected={chosen}
        onSelect={onChoose}
        onOpen={(row) => onOpen(row.bedId)}
        onEdit={(edits) => edit.run(bedEditsOf(edits))}
        failure={edit.failure}
      />
    </div>
  );
}
