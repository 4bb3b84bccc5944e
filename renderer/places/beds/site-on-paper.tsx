import type { PrintedPart } from '../../../api/print/printed-document.ts';
import { useReader } from '../../client/reader.tsx';
import { NorthArrow } from '../../draw/north-arrow.tsx';
import type { Extent_m } from '../../draw/scale.ts';
import { ScaleBar } from '../../draw/scale-bar.tsx';
import { useSize } from '../../draw/use-size.ts';
import { type KeyEntry, sheetOfDrawing } from '../../print/drawn-sheet.tsx';
import { type Paper, roomOn } from '../../print/paper.ts';
import { say } from '../../words/say.ts';
import type { BedRow, Site } from './bed-types.ts';
import {
  type BedTint,
  bedShapes,
  blockShapes,
  carriesCode,
  outlineShapes,
  paperShapes,
  tintOf,
  tintShares,
} from './site-shapes.ts';
import { SiteSvg } from './site-svg.tsx';
import { cameraFor, scaleOf, siteExtent } from './site-view.ts';

const tintNames: Readonly<Record<BedTint, string>> = {
  water: say('watered from a basin or reservoir'),
  wood: say('mound'),
  soil: say('in the ground'),
  mix: say('framed, bag or trough'),
};

const lieOf = (bed: BedRow): BedRow => bed;
const none = (): boolean => false;

/** The site on paper: all of it, and where beds are too small there for their codes, each block on a sheet of its own. */
export async function siteOnPaper(beds: readonly BedRow[], site: Site, paper: Paper): Promise<readonly PrintedPart[]> {
  const whole = siteExtent(beds, site.outline_m);
  const parts = [...(await sheetOf(say('Site drawing'), beds, site, whole, paper))];
  for (const block of site.blocks) {
    const own = beds.filter((bed) => bed.blockId === block.blockId);
    const size = roomOn(paper, isWide(whole));
    if (own.length === 0 || own.every((bed) => carriesCode(bed, cameraFor(whole, size).perMetre))) continue;
    const title = say('Site drawing, block {block}', { block: block.name === '' ? block.code : `${block.code}, ${block.name}` });
    parts.push(...(await sheetOf(title, own, { ...site, outline_m: null }, siteExtent(own, null), paper)));
  }
  return parts;
}

const isWide = (extent: Extent_m): boolean => shapeOf(extent) > 1.15;
const shapeOf = (extent: Extent_m): number => (extent.maxX_m - extent.minX_m) / Math.max(0.1, extent.maxY_m - extent.minY_m);

function sheetOf(title: string, beds: readonly BedRow[], site: Site, extent: Extent_m, paper: Paper) {
  return sheetOfDrawing(title, paper, <SiteSheet beds={beds} site={site} extent={extent} />, {
    wide: shapeOf(extent),
    entries: keyOf(beds),
  });
}

function keyOf(beds: readonly BedRow[]): readonly KeyEntry[] {
  const tints = (['mix', 'soil', 'water', 'wood'] as const).filter((tint) => beds.some((bed) => tintOf(bed) === tint));
  const faulty = beds.some((bed) => bed.isOverLimit || bed.fault !== null);
  const swatch = (tint: string, share: number, line: string) => (
    <rect x={1} y={1} width={20} height={11} fill={tint} fillOpacity={share} stroke={line} />
  );
  return [
    ...tints.map((tint) => ({ name: tintNames[tint], swatch: swatch(`var(--${tint})`, tintShares[tint], 'var(--ink)') })),
    ...(faulty ? [{ name: say('heavier than its ground may bear, or at fault'), swatch: swatch('none', 1, 'var(--stop)') }] : []),
  ];
}

function SiteSheet(props: { readonly beds: readonly BedRow[]; readonly site: Site; readonly extent: Extent_m }) {
  const { beds, site } = props;
  const reader = useReader();
  const [ref, size] = useSize();
  const view = { camera: cameraFor(props.extent, size), size };
  const names = new Map(site.blocks.map((block) => [block.blockId, `${block.code}  ${block.name}`]));
  return (
    <div className="drawing" ref={ref}>
      {size.width === 0 ? null : (
        <svg aria-hidden="true" width={size.width} height={size.height}>
          <SiteSvg
            shapes={[
              ...paperShapes(view, reader.system),
              ...(site.outline_m === null ? [] : outlineShapes(view, site.outline_m)),
              ...bedShapes(view, beds, lieOf, none),
              ...blockShapes(view, beds, names),
            ]}
          />
          <ScaleBar scale={scaleOf(view.camera, size)} x={14} y={size.height - 12} />
          <NorthArrow x={26} y={42} north_deg={site.north_deg} />
        </svg>
      )}
    </div>
  );
}
