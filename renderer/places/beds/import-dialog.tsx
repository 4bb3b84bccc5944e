import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { api, client } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { useRead } from '../../client/use-read.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { Form } from '../../fields/form.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { FaultList } from '../../imports/fault-list.tsx';
import { FileField } from '../../imports/file-field.tsx';
import { useLook } from '../../imports/use-look.ts';
import { say } from '../../words/say.ts';
import type { DesignRow, Site } from './bed-types.ts';
import { type BlockEntry, BlockFields, blockInput } from './block-fields.tsx';

/** Brings beds and a site outline in from a GeoJSON file; all of it is checked before anything is written. */
export function ImportDialog(props: {
  readonly designs: readonly DesignRow[];
  readonly site: Site;
  readonly today: IsoDate;
  readonly onClose: () => void;
}) {
  const reader = useReader();
  const bring = useChange(api.beds.importGeoJson);
  const farm = useRead(api.farm.get, undefined);
  const setFarm = useChange(api.farm.set);
  const [firstCode, setCode] = useState('G-01');
  const [designId, setDesign] = useState(props.designs[0]?.designId ?? '');
  const [block, setBlock] = useState<BlockEntry>({ blockId: props.site.blocks[0]?.blockId ?? null, code: '', name: '' });
  const { text, found, refused, into } = useLook((read) => client.beds.checkGeoJson.query({ text: read, firstCode }));
  const save = async (): Promise<void> => {
    const made = await bring.run(
      { text, firstCode, designId, block: blockInput(block), builtDate: props.today },
      say('{beds, plural, one {One bed} other {# beds}} brought in.', { beds: found?.beds.length ?? 0 }),
    );
    if (made !== undefined) props.onClose();
  };
  const takeOutline = (): void => {
    if (found?.outline_m == null || farm.state !== 'ready') return;
    void setFarm.run(
      { values: { siteOutline_m: found.outline_m.map(([x, y]): [number, number] => [x, y]) }, revision: farm.data.revision },
      say('The site outline is kept.'),
    );
  };
  return (
    <Dialog title={say('Bring in a site from GeoJSON')} onClose={props.onClose} wide>
      <p className="soft">
        {say(
          'Polygons become beds; one with the property “kind”: “site” is the site’s outline. Degrees are laid about the farm’s place.',
        )}
      </p>
      <FileField
        label={say('GeoJSON file')}
        accept=".geojson,.json,application/geo+json,application/json"
        onText={(read) => void into(read)}
      />
      {refused === undefined ? null : (
        <p className="failed" role="alert">
          {refused.message}
        </p>
      )}
      {found === undefined ? null : (
        <Form onSave={() => void save()} failure={bring.failure} paths={['firstCode', 'newBlock.code']} label={say('Bring in')}>
          <p>
            {say('Found {beds, plural, one {one bed} other {# beds}} of {area} in all{more}.', {
              beds: found.beds.length,
              area: reader.print(
                found.beds.reduce((sum, bed) => sum + bed.area_m2, 0),
                'm2',
              ),
              more: found.outline_m === null ? '' : say(' and a site outline'),
            })}
          </p>
          <FaultList
            lead={say('Nothing is brought in while these are not mended:')}
            faults={found.faults.map((fault) => fault.message)}
          />
          <div className="form-pair">
            <ChoiceField
              label={say('Built after the design')}
              value={designId}
              choices={props.designs.map((each) => ({ value: each.designId, text: each.name }))}
              onChange={setDesign}
            />
            <TextField label={say('First code for beds without one')} path="firstCode" value={firstCode} onChange={setCode} />
          </div>
          <BlockFields blocks={props.site.blocks} value={block} onChange={setBlock} />
          <div className="row">
            <Button type="submit" weight="main" disabled={bring.busy || found.faults.length > 0 || found.beds.length === 0}>
              {say('Bring in {beds, plural, one {one bed} other {# beds}}', { beds: found.beds.length })}
            </Button>
            {found.outline_m === null ? null : (
              <Button onClick={takeOutline} disabled={setFarm.busy}>
                {say('Take the site outline')}
              </Button>
            )}
          </div>
        </Form>
      )}
    </Dialog>
  );
}
