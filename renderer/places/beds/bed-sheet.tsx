import { useState } from 'react';
import type { IsoDate } from '../../../planner/calendar.ts';
import { Button } from '../../app/button.tsx';
import { Sheet } from '../../app/sheet.tsx';
import { Shown } from '../../app/states.tsx';
import { type Tab, Tabs } from '../../app/tabs.tsx';
import { Cautions } from '../../cautions/caution.tsx';
import { api } from '../../client/api.ts';
import { useRead } from '../../client/use-read.ts';
import { say } from '../../words/say.ts';
import { bedCautions } from './bed-cautions.ts';
import { BedFigures } from './bed-figures.tsx';
import { BedFill } from './bed-fill.tsx';
import { BedForm } from './bed-form.tsx';
import { BedParts } from './bed-parts.tsx';
import { BedPlants } from './bed-plants.tsx';
import { BedShares } from './bed-shares.tsx';
import { SectionDrawing } from './section-drawing.tsx';

const tabs = [
  { name: 'bed', title: say('Bed') },
  { name: 'fill', title: say('Fill') },
  { name: 'plants', title: say('Plants') },
  { name: 'parts', title: say('Parts') },
  { name: 'change', title: say('Change') },
] as const satisfies readonly Tab<string>[];
type TabName = (typeof tabs)[number]['name'];

/** The sheet of one bed: how it is built, what it holds and weighs, what it wants. */
export function BedSheet(props: {
  readonly bedId: string;
  readonly today: IsoDate;
  readonly onClose: () => void;
  readonly onEnd: (bedId: string) => void;
  readonly onTakeDown: (bedId: string) => void;
}) {
  const reading = useRead(api.beds.one, { bedId: props.bedId });
  const [tab, setTab] = useState<TabName>('bed');
  return (
    <Shown reading={reading}>
      {(bed) => (
        <Sheet
          title={
            <>
              {bed.row.code} {bed.row.name === '' ? null : <span className="soft">{bed.row.name}</span>}
            </>
          }
          onClose={props.onClose}
          foot={
            bed.row.retiredDate === null ? (
              <>
                <Button onClick={() => props.onTakeDown(bed.row.bedId)}>{say('Take down…')}</Button>
                <Button weight="quiet" onClick={() => props.onEnd(bed.row.bedId)}>
                  {say('Retire…')}
                </Button>
              </>
            ) : undefined
          }
        >
          <p className="soft">{say('{design}, block {block}', { design: bed.row.design, block: bed.row.block })}</p>
          <Tabs tabs={tabs} chosen={tab} onChoose={setTab} label={say('Of this bed')} />
          {bed.row.fault === null ? null : (
            <p className="failed" role="alert">
              {bed.row.fault}
            </p>
          )}
          {tab === 'bed' ? (
            <>
              <SectionDrawing bed={{ ...bed, label: bed.row.code }} />
              <BedFigures bed={bed} />
              <Cautions ids={bedCautions(bed)} folded />
            </>
          ) : null}
          {tab === 'fill' ? <BedFill bed={bed} today={props.today} /> : null}
          {tab === 'plants' ? <BedPlants bed={bed} /> : null}
          {tab === 'parts' ? <BedParts bed={bed} today={props.today} /> : null}
          {tab === 'change' ? (
            <>
              <BedForm key={JSON.stringify(bed.row)} bed={bed} />
              <BedShares key={JSON.stringify(bed.shares)} bed={bed} />
            </>
          ) : null}
        </Sheet>
      )}
    </Shown>
  );
}
