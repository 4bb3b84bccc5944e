import { type ReactNode, useMemo, useState } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { Empty, Shown } from '../../app/states.tsx';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { Grid } from '../../table/grid.tsx';
import { say } from '../../words/say.ts';
import { AddCrop } from './add-crop.tsx';
import { type CropLine, cropColumns, factOfKey } from './crop-columns.ts';
import { CropSheet } from './crop-sheet.tsx';

const rowId = (row: CropLine): string => row.cropId;

/** Crops with the figures they are planned by; the grower's own lie over the library's. */
export function CropsTab({ tabs }: { readonly tabs: ReactNode }) {
  const crops = useRead(api.crops.list, undefined);
  const [cropId, setCropId] = useQueryValue('crop');
  const reader = useReader();
  const columns = useMemo(() => cropColumns(reader), [reader]);
  const [adding, setAdding] = useState(false);
  const set = useChange(api.crops.setFact);
  return (
    <Page
      title={say('Library')}
      lead={say("Blank means not known. A figure you enter here is your own and goes before the library's.")}
      tabs={tabs}
      actions={
        <Button weight="main" icon="add" onClick={() => setAdding(true)}>
          {say('Add crop')}
        </Button>
      }
      sheet={cropId === undefined ? null : <CropSheet key={cropId} cropId={cropId} onClose={() => setCropId(undefined)} />}
    >
      <Shown reading={crops}>
        {(rows) => (
          <Grid
            name="Crops"
            rows={rows}
            columns={columns}
            rowId={rowId}
            onOpen={(row) => setCropId(row.cropId)}
            onEdit={async (edits) => {
              for (const edit of edits) {
                const name = factOfKey(edit.key);
                if (name === null) continue;
                const number = typeof edit.value === 'number' ? edit.value : null;
                const words = typeof edit.value === 'string' ? edit.value : null;
                const done = await set.run({
                  cropId: edit.row.cropId,
                  varietyId: null,
                  name,
                  number,
                  words,
                  source: say('own figure'),
                });
                if (done === undefined) return;
              }
            }}
            failure={set.failure}
            empty={<Empty title={say('No crops')}>{say('Add a crop of your own.')}</Empty>}
          />
        )}
      </Shown>
      {adding ? <AddCrop onClose={() => setAdding(false)} onMade={setCropId} /> : null}
    </Page>
  );
}
