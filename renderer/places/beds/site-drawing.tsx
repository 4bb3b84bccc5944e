import { useCallback, useEffect, useMemo, useRef, useState } from 'react';
import { useReader } from '../../client/reader.tsx';
import { PanButtons } from '../../draw/pan-buttons.tsx';
import { useSize } from '../../draw/use-size.ts';
import type { Paper } from '../../print/paper.ts';
import { PdfButton } from '../../print/pdf-button.tsx';
import { usePrintable } from '../../print/printables.ts';
import { say } from '../../words/say.ts';
import type { BedRow, Lie, Site } from './bed-types.ts';
import { MovingLayer, StillLayer } from './site-canvas.tsx';
import { siteOnPaper } from './site-on-paper.tsx';
import { SiteOverlay } from './site-overlay.tsx';
import type { SiteTool } from './site-tool.ts';
import { type Camera, cameraFor, placedBed, scaleOf, siteExtent, zoomedCamera } from './site-view.ts';
import { useLies } from './use-lies.ts';
import { useSiteInk } from './use-site-ink.ts';
import { useSiteKeys } from './use-site-keys.ts';
import { useSitePointer } from './use-site-pointer.ts';

export type SiteActions = {
  readonly select: (ids: readonly string[]) => void;
  readonly open: (bedId: string) => void;
  readonly place: (places: readonly ({ readonly bedId: string } & Lie)[], what: string | undefined) => Promise<boolean>;
  readonly duplicate: () => void;
  readonly end: () => void;
  readonly order: (bedIds: readonly string[]) => void;
};

type Place = { readonly x_m: number; readonly y_m: number };
const WHEEL = 1.15;
const none: readonly BedRow[] = [];

/** The site to scale: beds are chosen, dragged, turned and measured here. Beds are painted; the table beside it tells them. */
export function SiteDrawing(props: {
  readonly beds: readonly BedRow[];
  readonly site: Site;
  readonly selected: readonly string[];
  readonly tool: SiteTool;
  readonly grid_m: number | null;
  readonly actions: SiteActions;
}) {
  const { beds, site, tool, grid_m, actions } = props;
  const reader = useReader();
  const [sizeRef, size] = useSize();
  const [element, setElement] = useState<HTMLElement | null>(null);
  const frame = useCallback(
    (node: HTMLElement | null) => {
      sizeRef(node);
      setElement(node);
    },
    [sizeRef],
  );
  const ink = useSiteInk(element);
  const [view, setView] = useState<Camera>();
  const [measured, setMeasured] = useState<readonly Place[]>([]);
  const [order, setOrder] = useState<readonly BedRow[]>([]);
  const selected = useMemo(() => new Set(props.selected), [props.selected]);
  const { lieOf, moving, show, drop, keep, keepSoon } = useLies(beds, actions.place);
  const whole = useMemo(
    () => cameraFor(siteExtent(beds, beds.length === 0 ? site.outline_m : null), size),
    [beds, site.outline_m, size],
  );
  const camera = view ?? whole;
  const scale = scaleOf(camera, size);

  const finishOrder = (): void => {
    if (order.length > 1) actions.order(order.map((bed) => bed.bedId));
    setOrder([]);
  };
  const point = (at: Place, bed: BedRow | undefined): void => {
    if (tool === 'measure') setMeasured(measured.length === 1 ? [...measured, at] : [at]);
    else if (bed !== undefined) setOrder(order.includes(bed) ? order.filter((each) => each !== bed) : [...order, bed]);
  };
  const { bind, startTurn, guides, box } = useSitePointer(
    { beds, selected, camera, size, tool, grid_m, lieOf },
    { look: setView, select: actions.select, open: actions.open, show, keep, drop, point },
  );
  const onKeyDown = useSiteKeys(
    { beds, selected, camera, grid_m, lieOf },
    { ...actions, look: setView, whole: () => setView(undefined), keepSoon, finish: finishOrder },
  );

  const now = useRef({ camera, size });
  now.current = { camera, size };
  useEffect(() => {
    if (element === null) return undefined;
    const onWheel = (event: WheelEvent): void => {
      if (!event.ctrlKey && !element.contains(document.activeElement)) return;
      event.preventDefault();
      const rect = element.getBoundingClientRect();
      const about = scaleOf(now.current.camera, now.current.size).back({
        x: event.clientX - rect.left,
        y: event.clientY - rect.top,
      });
      setView(zoomedCamera(now.current.camera, event.deltaY > 0 ? 1 / WHEEL : WHEEL, about));
    };
    element.addEventListener('wheel', onWheel, { passive: false });
    return () => element.removeEventListener('wheel', onWheel);
  }, [element]);

  const still = useMemo(() => (moving.size === 0 ? beds : beds.filter((bed) => !moving.has(bed.bedId))), [beds, moving]);
  const away = useMemo(() => (moving.size === 0 ? none : beds.filter((bed) => moving.has(bed.bedId))), [beds, moving]);
  const chosen = beds.filter((bed) => selected.has(bed.bedId)).map((bed) => placedBed(bed, lieOf(bed)));
  const blocks = useMemo(
    () => new Map(site.blocks.map((block) => [block.blockId, `${block.code}  ${block.name}`])),
    [site.blocks],
  );
  const bedPlace = useMemo(
    () =>
      (bed: BedRow): Lie =>
        bed,
    [],
  );
  const onPaper = (paper: Paper) => siteOnPaper(beds, site, paper);
  const printable = usePrintable(onPaper);
  const centre = { x_m: camera.x_m, y_m: camera.y_m };
  return (
    <section className="site-frame" ref={printable} aria-label={say('Site drawing')}>
      <div
        className="drawing site-drawing"
        ref={frame}
        role="application"
        aria-label={say(
          'Site drawing with {beds} beds, {selected} chosen. N and P go from bed to bed, arrows move, brackets turn, Enter opens.',
          { beds: beds.length, selected: selected.size },
        )}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is worked with keys
        tabIndex={0}
        data-tool={tool}
        onKeyDown={onKeyDown}
        {...bind}
      >
        {ink === undefined || size.width === 0 ? null : (
          <>
            <StillLayer
              camera={camera}
              size={size}
              ink={ink}
              beds={still}
              outline_m={site.outline_m}
              lieOf={bedPlace}
              chosen={selected}
              order={order}
              blocks={blocks}
              system={reader.system}
            />
            <MovingLayer camera={camera} size={size} ink={ink} beds={away} lieOf={lieOf} />
            <SiteOverlay
              scale={scale}
              north_deg={site.north_deg}
              guides={guides}
              box={box}
              measured={tool === 'measure' ? measured : []}
              chosen={chosen}
              onTurn={startTurn}
            />
          </>
        )}
      </div>
      <PanButtons
        nearer={() => setView(zoomedCamera(camera, 1.25, centre))}
        farther={() => setView(zoomedCamera(camera, 0.8, centre))}
        reset={() => setView(undefined)}
      >
        <PdfButton title={say('Site drawing')} make={onPaper} />
      </PanButtons>
      <p className="small soft site-said" aria-live="polite">
        {said({ tool, measured, order, reader })}
      </p>
    </section>
  );
}

function said({
  tool,
  measured,
  order,
  reader,
}: {
  readonly tool: SiteTool;
  readonly measured: readonly Place[];
  readonly order: readonly BedRow[];
  readonly reader: ReturnType<typeof useReader>;
}): string {
  if (tool === 'measure') {
    const [from, to] = measured;
    if (from === undefined) return say('Click where the way begins.');
    if (to === undefined) return say('Click where it ends.');
    const [x, y] = [Math.abs(to.x_m - from.x_m), Math.abs(to.y_m - from.y_m)];
    return say('{hypot}: {x} across, {y} up.', {
      hypot: reader.print(Math.hypot(x, y), 'm'),
      x: reader.print(x, 'm'),
      y: reader.print(y, 'm'),
    });
  }
  if (tool === 'order')
    return order.length === 0
      ? say('Click beds in the order in which the tubing reaches them; Enter keeps it.')
      : say('{order}. Enter keeps this order.', { order: order.map((bed) => bed.code).join(', ') });
  return say(
    'Drag a bed to move it, the paper to move the view. Shift+drag chooses all in a box. Alt lets a bed go free of edges and grid.',
  );
}
