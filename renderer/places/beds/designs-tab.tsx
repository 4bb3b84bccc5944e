import { Button } from '../../app/button.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';
import { type Column, choice, count, flag, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import type { DesignRow } from './bed-types.ts';
import { kindChoices, outlineChoices, wateringChoices } from './bed-words.ts';

const columns: readonly Column<DesignRow>[] = [
  text('name', 'Design', { width: 240 }),
  choice('kind', 'Kind', kindChoices, { width: 110 }),
  choice('outline', 'Outline', outlineChoices),
  choice('watering', 'Watering', wateringChoices, { width: 150 }),
  quantity('length_m', 'Length', { width: 84 }),
  quantity('width_m', 'Width', { width: 84 }),
  quantity('fillDepth_m', 'Fill depth', { width: 90 }),
  quantity('area_m2', 'Area', { width: 84 }),
  quantity('fill_L', 'Fill', { width: 90, hint: 'Settled' }),
  quantity('loose_L', 'To place', { width: 90, hint: 'Loose' }),
  quantity('wet_kg', 'Wet weight', { width: 96 }),
  count('beds', 'Beds', { width: 70, total: 'sum' }),
  flag('retired', 'No longer built', { width: 70 }),
];
const rowId = (row: DesignRow): string => row.designId;

/** The ways in which this farm builds a bed. */
export function DesignsTab({ onOpen, onNew }: { readonly onOpen: (designId: string) => void; readonly onNew: () => void }) {
  const designs = useRead(api.designs.list, undefined);
  return (
    <Shown reading={designs}>
      {(rows) => (
        <Grid
          name="Designs"
          rows={rows}
          columns={columns}
          rowId={rowId}
          onOpen={(row) => onOpen(row.designId)}
          empty={
            <Empty
              title="No design yet"
              action={
                <Button weight="main" icon="add" onClick={onNew}>
                  New design
                </Button>
              }
            >
              A design says how a bed is built: its outline, walls, watering, parts and fill. Beds are built from it.
            </Empty>
          }
        />
      )}
    </Shown>
  );
}
