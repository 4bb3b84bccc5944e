import { useState } from 'react';
import { useQueryValue } from '../../app/address.ts';
import { Button } from '../../app/button.tsx';
import { Page } from '../../app/page.tsx';
import { tabsOf } from '../../app/place-tabs.ts';
import { Empty, Shown } from '../../app/states.tsx';
import { Tabs } from '../../app/tabs.tsx';
import { api } from '../../client/api.ts';
import { farmOfAddress } from '../../client/farm-of-address.ts';
import { useRead } from '../../client/use-read.ts';
import { BedLabels } from '../../labels/bed-labels.tsx';
import { say } from '../../words/say.ts';
import { BedSheet } from './bed-sheet.tsx';
import type { BedRow, DesignRow, Site } from './bed-types.ts';
import { BuildDialog } from './build-dialog.tsx';
import { CardsTab } from './cards-tab.tsx';
import { DesignSheet } from './design-sheet.tsx';
import { DesignsTab } from './designs-tab.tsx';
import { EndDialog } from './end-dialog.tsx';
import { ImportDialog } from './import-dialog.tsx';
import { NeedsTab } from './needs-tab.tsx';
import { RetiredTab } from './retired-tab.tsx';
import { SiteTab } from './site-tab.tsx';
import { siteExtent } from './site-view.ts';
import { TakeDownDialog } from './take-down-dialog.tsx';
import { WholeFarmTab } from './whole-farm-tab.tsx';

const tabs = tabsOf.beds;

type TabName = (typeof tabs)[number]['name'];

type Doing =
  | { readonly what: 'build'; readonly designId: string | undefined }
  | { readonly what: 'import' }
  | { readonly what: 'end'; readonly bedIds: readonly string[] }
  | { readonly what: 'take-down'; readonly bedId: string };

/** Room between the beds that are there and the first new one. */
const APART_M = 2;

export function BedsPage() {
  const beds = useRead(api.beds.list, undefined);
  const site = useRead(api.beds.site, undefined);
  const designs = useRead(api.designs.list, undefined);
  return (
    <Shown reading={beds}>
      {(rows) => (
        <Shown reading={site}>
          {(ground) => <Shown reading={designs}>{(all) => <Beds beds={rows} site={ground} designs={all} />}</Shown>}
        </Shown>
      )}
    </Shown>
  );
}

function Beds({
  beds,
  site,
  designs,
}: {
  readonly beds: readonly BedRow[];
  readonly site: Site;
  readonly designs: readonly DesignRow[];
}) {
  const [tabName, setTab] = useQueryValue('view');
  const [bedId, setBed] = useQueryValue('bed');
  const [designId, setDesign] = useQueryValue('design');
  const [chosen, setChosen] = useState<readonly string[]>([]);
  const [doing, setDoing] = useState<Doing>();
  const tab: TabName = tabs.find((each) => each.name === tabName)?.name ?? 'site';
  const open = (id: string): void => {
    setDesign(undefined);
    setBed(id);
  };
  const openDesign = (id: string): void => {
    setBed(undefined);
    setDesign(id);
  };
  const close = (): void => {
    setBed(undefined);
    setDesign(undefined);
  };
  const build = (of?: string): void => setDoing({ what: 'build', designId: of });
  const cardBeds = chosen.length > 0 ? chosen : beds.map((bed) => bed.bedId);
  return (
    <Page
      title={say('Beds')}
      lead={
        beds.length === 0
          ? undefined
          : say('{beds} beds in {blocks, plural, one {one block} other {# blocks}}.', {
              beds: beds.length,
              blocks: site.blocks.length,
            })
      }
      actions={
        tab === 'designs' ? (
          <Button weight="main" icon="add" onClick={() => openDesign('new')}>
            {say('New design')}
          </Button>
        ) : (
          <>
            <Button weight="main" icon="add" onClick={() => build()} disabled={designs.length === 0}>
              {say('Build beds')}
            </Button>
            <Button onClick={() => setDoing({ what: 'import' })}>{say('Bring in GeoJSON')}</Button>
            <a className="button" href={exportAddress()} download>
              {say('Site as GeoJSON')}
            </a>
          </>
        )
      }
      tabs={<Tabs tabs={tabs} chosen={tab} onChoose={(name) => setTab(name === 'site' ? undefined : name)} label={say('Beds')} />}
      sheet={
        bedId !== undefined ? (
          <BedSheet
            key={bedId}
            bedId={bedId}
            today={site.today}
            onClose={close}
            onEnd={(id) => setDoing({ what: 'end', bedIds: [id] })}
            onTakeDown={(id) => setDoing({ what: 'take-down', bedId: id })}
          />
        ) : designId !== undefined ? (
          <DesignSheet designId={designId === 'new' ? undefined : designId} onClose={close} onMade={openDesign} onBuild={build} />
        ) : null
      }
    >
      <div className="beds-place">
        {tab === 'site' && beds.length === 0 ? (
          <NoBeds hasDesigns={designs.length > 0} onBuild={() => build()} onDesign={() => openDesign('new')} />
        ) : null}
        {tab === 'site' && beds.length > 0 ? (
          <SiteTab
            beds={beds}
            site={site}
            today={site.today}
            chosen={chosen}
            onChoose={setChosen}
            onOpen={open}
            onEnd={(bedIds) => setDoing({ what: 'end', bedIds })}
          />
        ) : null}
        {tab === 'designs' ? <DesignsTab onOpen={openDesign} onNew={() => openDesign('new')} /> : null}
        {tab === 'needs' ? <NeedsTab today={site.today} onOpen={open} /> : null}
        {tab === 'cards' ? <CardsTab bedIds={cardBeds} /> : null}
        {tab === 'labels' ? <BedLabels bedIds={chosen} /> : null}
        {tab === 'farm' ? <WholeFarmTab /> : null}
        {tab === 'retired' ? <RetiredTab onOpen={open} /> : null}
      </div>
      {doing?.what === 'build' ? (
        <BuildDialog
          designs={designs}
          site={site}
          today={site.today}
          at={freeGround(beds, site)}
          designId={doing.designId}
          onClose={() => setDoing(undefined)}
          onBuilt={(ids) => {
            setDoing(undefined);
            setTab(undefined);
            setChosen(ids);
          }}
        />
      ) : null}
      {doing?.what === 'import' ? (
        <ImportDialog designs={designs} site={site} today={site.today} onClose={() => setDoing(undefined)} />
      ) : null}
      {doing?.what === 'end' ? (
        <EndDialog bedIds={doing.bedIds} today={site.today} onClose={() => setDoing(undefined)} onDone={close} />
      ) : null}
      {doing?.what === 'take-down' ? (
        <TakeDownDialog bedId={doing.bedId} today={site.today} onClose={() => setDoing(undefined)} onDone={close} />
      ) : null}
    </Page>
  );
}

function NoBeds({
  hasDesigns,
  onBuild,
  onDesign,
}: {
  readonly hasDesigns: boolean;
  readonly onBuild: () => void;
  readonly onDesign: () => void;
}) {
  return hasDesigns ? (
    <Empty
      title={say('No beds yet')}
      action={
        <Button weight="main" icon="add" onClick={onBuild}>
          {say('Build beds')}
        </Button>
      }
    >
      {say('Choose a design and say how many; they are laid out in rows and can then be dragged to their places.')}
    </Empty>
  ) : (
    <Empty
      title={say('No beds yet')}
      action={
        <Button weight="main" icon="add" onClick={onDesign}>
          {say('New design')}
        </Button>
      }
    >
      {say('Make a design first: its outline, walls, watering, parts and fill. Then build beds of it.')}
    </Empty>
  );
}

function exportAddress(): string {
  const farm = farmOfAddress(window.location.search);
  return farm === undefined ? '/export/site' : `/export/site?farm=${encodeURIComponent(farm)}`;
}

/** A place for new beds: north of all that is there, or the site's corner. */
function freeGround(beds: readonly BedRow[], site: Site): { readonly x_m: number; readonly y_m: number } {
  if (beds.length === 0) return { x_m: site.outline_m?.[0]?.[0] ?? 0, y_m: site.outline_m?.[0]?.[1] ?? 0 };
  const extent = siteExtent(beds, null);
  return { x_m: Math.round(extent.minX_m * 10) / 10, y_m: Math.round((extent.maxY_m + APART_M) * 10) / 10 };
}
