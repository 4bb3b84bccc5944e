import { Button } from '../../app/button.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';
import { type Column, choice, count, flag, quantity, text } from '../../table/column.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import type { DesignRow } from './bed-types.ts';
import { kindChoices, outlineChoices, wateringChoices } from './bed-words.ts';

const columns: readonly Column<DesignRow>[] = [
  text('name', say('Design'), { width: 240 }),
  choice('kind', say('Kind'), kindChoices, { width: 110 }),
  choice('outline', say('Outline'), outlineChoices),
  choice('watering', say('Watering'), wateringChoices, { width: 150 }),
  quantity('length_m', say('Length'), { width: 84 }),
  quantity('width_m', say('Width'), { width: 84 }),
  quantity('fillDepth_m', say('Fill depth'), { width: 90 }),
  quantity('area_m2', say('Area'), { width: 84 }),
  quantity('fill_L', say('Fill'), { width: 90, hint: say('Settled') }),
  quantity('loose_L', say('To place'), { width: 90, hint: say('Loose') }),
  quantity('wet_kg', say('Wet weight'), { width: 96 }),
  count('beds', say('Beds'), { width: 70, total: 'sum' }),
  flag('retired', say('No longer built'), { width: 70 }),
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
              title={say('No design yet')}
              action={
                <Button weight="main" icon="add" onClick={onNew}>
                  {say('New design')}
                </Button>
              }
            >
              {say('A design says how a bed is built: its outline, walls, watering, parts and fill. Beds are built from it.')}
            </Empty>
          }
        />
      )}
    </Shown>
  );
}
