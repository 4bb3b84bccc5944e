import { type ReactNode, useState } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useChange } from '../../client/use-change.ts';
import { type InputOf, useRead } from '../../client/use-read.ts';
import { editsByRow } from '../../table/edits-by-row.ts';
import { Grid } from '../../table/grid.tsx';
import type { Edit } from '../../table/paste-block.ts';
import { say } from '../../words/say.ts';
import { AddMaterial } from './add-material.tsx';
import { type MaterialRow, materialColumns } from './material-columns.ts';
import { MaterialSheet } from './material-sheet.tsx';

const idOf = (row: MaterialRow): string => row.id;

type Values = InputOf<typeof api.materials.setMany>['edits'][number]['values'];

/** Everything bought, dug or used, with its analysis. */
export function MaterialsTab({ tabs }: { readonly tabs: ReactNode }) {
  const materials = useRead(api.materials.list, undefined);
  const change = useChange(api.materials.setMany);
  const [materialId, setMaterialId] = useQueryValue('material');
  const [adding, setAdding] = useState(false);
  const edit = (edits: readonly Edit<MaterialRow>[]) =>
    change.run({
      edits: editsByRow(edits).map(({ row, values }) => ({
        materialId: row.id,
        revision: row.revision,
        values: values as Values,
      })),
    });
  const open = materials.state === 'ready' ? materials.data.find((row) => row.id === materialId) : undefined;
  return (
    <Page
      title={say('Library')}
      tabs={tabs}
      actions={
        <Button weight="main" icon="add" onClick={() => setAdding(true)}>
          {say('Add a material')}
        </Button>
      }
      sheet={open === undefined ? null : <MaterialSheet key={open.id} material={open} onClose={() => setMaterialId(undefined)} />}
    >
      <Shown reading={materials}>
        {(rows) => (
          <Grid
            name="Materials"
            rows={rows}
            columns={materialColumns}
            rowId={idOf}
            onOpen={(row) => setMaterialId(row.id)}
            onEdit={edit}
            failure={change.failure}
          />
        )}
      </Shown>
      {adding ? <AddMaterial onClose={() => setAdding(false)} onAdded={setMaterialId} /> : null}
    </Page>
  );
}
