import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { M_PER_FOOT } from '../../../planner/units/constants.ts';
import { Button } from '../../app/button.tsx';
import { Dialog } from '../../app/dialog.tsx';
import { Caution } from '../../cautions/caution.tsx';
import { announce } from '../../client/announce.ts';
import { api } from '../../client/api.ts';
import { useReader } from '../../client/reader.tsx';
import { useChange } from '../../client/use-change.ts';
import { ChoiceField } from '../../fields/choice-field.tsx';
import { DateField } from '../../fields/date-field.tsx';
import { Form } from '../../fields/form.tsx';
import { CountField, QuantityField } from '../../fields/quantity-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { say } from '../../words/say.ts';
import type { DesignRow, Site } from './bed-types.ts';
import { type BlockEntry, BlockFields, blockInput } from './block-fields.tsx';
import { LayOutPreview } from './lay-out-preview.tsx';

const paths = [
  'designId',
  'firstCode',
  'count',
  'perRow',
  'endPath_m',
  'sidePath_m',
  'x_m',
  'y_m',
  'turn_deg',
  'builtDate',
  'newBlock.code',
];
/** A path that a barrow passes: 2 ft, or 60 cm. Common practice, no source. */
const path_m = { us: 2 * M_PER_FOOT, metric: 0.6 } as const;

/** Builds any number of beds of one design at once, laid out in rows with their paths. */
export function BuildDialog(props: {
  readonly designs: readonly DesignRow[];
  readonly site: Site;
  readonly today: IsoDate;
  readonly at: { readonly x_m: number; readonly y_m: number };
  readonly designId: string | undefined;
  readonly onClose: () => void;
  readonly onBuilt: (bedIds: readonly string[]) => void;
}) {
  const build = useChange(api.beds.build);
  const { system } = useReader();
  const usable = props.designs.filter((design) => !design.retired);
  const [designId, setDesign] = useState(props.designId ?? usable[0]?.designId ?? '');
  const [block, setBlock] = useState<BlockEntry>({ blockId: props.site.blocks[0]?.blockId ?? null, code: '', name: '' });
  const [firstCode, setCode] = useState('');
  const [count, setCount] = useState<number | null>(10);
  const [perRow, setPerRow] = useState<number | null>(5);
  const [endPath_m, setEnd] = useState<number | null>(path_m[system]);
  const [sidePath_m, setSide] = useState<number | null>(path_m[system]);
  const [x_m, setX] = useState<number | null>(props.at.x_m);
  const [y_m, setY] = useState<number | null>(props.at.y_m);
  const [turn_deg, setTurn] = useState<number | null>(0);
  const [builtDate, setBuilt] = useState<IsoDate | null>(props.today);
  const design = usable.find((each) => each.designId === designId);
  const ready = {
    count: count ?? 0,
    perRow: perRow ?? 0,
    endPath_m: endPath_m ?? Number.NaN,
    sidePath_m: sidePath_m ?? Number.NaN,
    x_m: x_m ?? Number.NaN,
    y_m: y_m ?? Number.NaN,
    turn_deg: turn_deg ?? Number.NaN,
  };
  const save = async (): Promise<void> => {
    const made = await build.run({ ...ready, designId, block: blockInput(block), firstCode, builtDate: builtDate ?? '' });
    if (made === undefined) return;
    announce(
      made.offPlan === 0
        ? say('Built {count} beds.', { count })
        : say('Built {count} beds, {offPlan} of them off the beds to build.', { count, offPlan: made.offPlan }),
    );
    props.onBuilt(made.bedIds);
  };
  return (
    <Dialog title={say('Build beds')} onClose={props.onClose} wide>
      <Form onSave={() => void save()} failure={build.failure} paths={paths} label={say('Build beds')}>
        <div className="columns">
          <div className="stack">
            <ChoiceField
              label={say('Design')}
              path="designId"
              value={designId}
              choices={usable.map((each) => ({ value: each.designId, text: each.name }))}
              onChange={setDesign}
            />
            <BlockFields blocks={props.site.blocks} value={block} onChange={setBlock} />
            <div className="form-pair">
              <TextField
                label={say('First code')}
                path="firstCode"
                value={firstCode}
                onChange={setCode}
                hint={say('F-01 counts on: F-02, F-03 …')}
                needed
              />
              <DateField label={say('Built')} path="builtDate" value={builtDate} onChange={setBuilt} />
            </div>
            <div className="form-pair">
              <CountField label={say('Beds')} path="count" value={count} onChange={setCount} />
              <CountField label={say('In a row')} path="perRow" value={perRow} onChange={setPerRow} />
            </div>
            <div className="form-pair">
              <QuantityField label={say('Path between ends')} name="endPath_m" value={endPath_m} onChange={setEnd} />
              <QuantityField label={say('Path between rows')} name="sidePath_m" value={sidePath_m} onChange={setSide} />
            </div>
            <div className="form-pair">
              <QuantityField
                label={say('From the west')}
                name="x_m"
                value={x_m}
                onChange={setX}
                hint={say('First bed’s lower left corner')}
              />
              <QuantityField label={say('From the south')} name="y_m" value={y_m} onChange={setY} />
            </div>
            <QuantityField
              label={say('Turn, counter-clockwise')}
              path="turn_deg"
              unit="deg"
              value={turn_deg}
              onChange={setTurn}
            />
          </div>
          <div className="stack">
            {design === undefined ? null : <LayOutPreview design={design} layOut={ready} />}
            <Caution id="dig-call-first" folded />
            {design?.watering === 'basin' ? <Caution id="standing-water-children" folded /> : null}
          </div>
        </div>
        <div className="row">
          <Button type="submit" weight="main" disabled={build.busy || design === undefined}>
            {say('Build {count} beds', { count: count ?? 0 })}
          </Button>
          <Button onClick={props.onClose}>{say('Leave it')}</Button>
        </div>
      </Form>
    </Dialog>
  );
}
