import { type PointerEvent, useRef, useState } from 'react';
import { snapMove } from '../../../planner/beds/arrange.ts';
import { say } from '../../words/say.ts';
import type { BedRow, Lie } from './bed-types.ts';
import type { SiteTool } from './site-tool.ts';
import { bedAt, type Camera, middleOf, placedBed, type Size, scaleOf, turnedAbout } from './site-view.ts';

type Place = { readonly x_m: number; readonly y_m: number };
export type Guides = { readonly lineX_m: number | null; readonly lineY_m: number | null };
type Drag =
  | { readonly kind: 'pan'; readonly from: { readonly x: number; readonly y: number }; readonly camera: Camera }
  | { readonly kind: 'move'; readonly from: Place; readonly beds: readonly BedRow[]; readonly starts: ReadonlyMap<string, Lie> }
  | { readonly kind: 'turn'; readonly middle: Place; readonly angle: number; readonly starts: ReadonlyMap<string, Lie> }
  | { readonly kind: 'box'; readonly from: Place };

/** Neighbours within this many pixels draw a dragged bed to their edges. */
const SNAP_PX = 7;
const HIT_PX = 3;
const CLICK_PX = 3;
const TURN_STEP_DEG = 15;

type Site = {
  readonly beds: readonly BedRow[];
  readonly selected: ReadonlySet<string>;
  readonly camera: Camera;
  readonly size: Size;
  readonly tool: SiteTool;
  readonly grid_m: number | null;
  readonly lieOf: (bed: BedRow) => Lie;
};
type Does = {
  readonly look: (camera: Camera) => void;
  readonly select: (ids: readonly string[]) => void;
  readonly open: (bedId: string) => void;
  readonly show: (lies: ReadonlyMap<string, Lie>) => void;
  readonly keep: (lies: ReadonlyMap<string, Lie>, what?: string) => unknown;
  readonly drop: () => void;
  readonly point: (at: Place, bed: BedRow | undefined) => void;
};

/** What the mouse, finger or pen does on the site drawing: pan, select, box, drag with snapping, turn. */
export function useSitePointer(site: Site, does: Does) {
  const drag = useRef<Drag>(undefined);
  const last = useRef<ReadonlyMap<string, Lie>>(new Map());
  const movedBy = useRef(0);
  const [guides, setGuides] = useState<Guides>({ lineX_m: null, lineY_m: null });
  const [box, setBox] = useState<{ readonly from: Place; readonly to: Place }>();
  const scale = scaleOf(site.camera, site.size);

  const pointOf = (event: PointerEvent): { readonly x: number; readonly y: number } => {
    const rect = event.currentTarget.getBoundingClientRect();
    return { x: event.clientX - rect.left, y: event.clientY - rect.top };
  };
  const hit = (at: Place): BedRow | undefined => bedAt(site.beds, site.lieOf, at.x_m, at.y_m, HIT_PX / site.camera.perMetre);
  const startsOf = (beds: readonly BedRow[]): ReadonlyMap<string, Lie> =>
    new Map(beds.map((bed) => [bed.bedId, site.lieOf(bed)]));

  const onPointerDown = (event: PointerEvent): void => {
    if (event.button !== 0) return;
    const at = scale.back(pointOf(event));
    movedBy.current = 0;
    last.current = new Map();
    event.currentTarget.setPointerCapture(event.pointerId);
    const bed = hit(at);
    if (site.tool !== 'select') {
      drag.current = { kind: 'pan', from: pointOf(event), camera: site.camera };
      return;
    }
    const more = event.shiftKey || event.ctrlKey || event.metaKey;
    if (bed === undefined) {
      drag.current = event.shiftKey ? { kind: 'box', from: at } : { kind: 'pan', from: pointOf(event), camera: site.camera };
      return;
    }
    const chosen = site.selected.has(bed.bedId);
    if (more) {
      does.select(chosen ? [...site.selected].filter((id) => id !== bed.bedId) : [...site.selected, bed.bedId]);
      return;
    }
    if (!chosen) does.select([bed.bedId]);
    const beds = chosen ? site.beds.filter((each) => site.selected.has(each.bedId)) : [bed];
    drag.current = { kind: 'move', from: at, beds, starts: startsOf(beds) };
  };

  const moveTo = (from: Extract<Drag, { readonly kind: 'move' }>, at: Place, isFree: boolean): void => {
    const [dx, dy] = [at.x_m - from.from.x_m, at.y_m - from.from.y_m];
    const lead = from.beds[0];
    const start = lead === undefined ? undefined : from.starts.get(lead.bedId);
    if (lead === undefined || start === undefined) return;
    const wanted = placedBed(lead, { ...start, x_m: start.x_m + dx, y_m: start.y_m + dy });
    const near = site.beds.filter(
      (bed) => !from.starts.has(bed.bedId) && Math.abs(bed.x_m - wanted.x_m) + Math.abs(bed.y_m - wanted.y_m) < 40,
    );
    const none = { dx_m: 0, dy_m: 0, lineX_m: null, lineY_m: null };
    const snap = isFree
      ? none
      : snapMove(
          wanted,
          near.map((bed) => placedBed(bed, bed)),
          SNAP_PX / site.camera.perMetre,
          site.grid_m,
        );
    last.current = new Map(
      [...from.starts].map(([id, lie]) => [id, { ...lie, x_m: lie.x_m + dx + snap.dx_m, y_m: lie.y_m + dy + snap.dy_m }]),
    );
    does.show(last.current);
    if (snap.lineX_m !== guides.lineX_m || snap.lineY_m !== guides.lineY_m) setGuides(snap);
  };

  const onPointerMove = (event: PointerEvent): void => {
    const from = drag.current;
    if (from === undefined) return;
    movedBy.current += Math.abs(event.movementX) + Math.abs(event.movementY);
    if (movedBy.current < CLICK_PX) return;
    const point = pointOf(event);
    const at = scale.back(point);
    if (from.kind === 'pan')
      does.look({
        ...from.camera,
        x_m: from.camera.x_m - (point.x - from.from.x) / from.camera.perMetre,
        y_m: from.camera.y_m + (point.y - from.from.y) / from.camera.perMetre,
      });
    else if (from.kind === 'move') moveTo(from, at, event.altKey);
    else if (from.kind === 'box') setBox({ from: from.from, to: at });
    else {
      const raw = ((Math.atan2(at.y_m - from.middle.y_m, at.x_m - from.middle.x_m) - from.angle) * 180) / Math.PI;
      const by = event.altKey ? raw : Math.round(raw / TURN_STEP_DEG) * TURN_STEP_DEG;
      last.current = new Map([...from.starts].map(([id, lie]) => [id, turnedAbout(lie, from.middle, by)]));
      does.show(last.current);
    }
  };

  const onPointerUp = (event: PointerEvent): void => {
    const from = drag.current;
    drag.current = undefined;
    setGuides({ lineX_m: null, lineY_m: null });
    const at = scale.back(pointOf(event));
    const isClick = movedBy.current < CLICK_PX;
    if (isClick) {
      if (site.tool !== 'select') does.point(at, hit(at));
      else if (from?.kind === 'pan') does.select([]);
      does.drop();
    } else if (from?.kind === 'move' || from?.kind === 'turn') {
      void does.keep(last.current, from.kind === 'move' ? undefined : turned(from.starts));
    } else if (from?.kind === 'box') {
      const [west, east] = [Math.min(from.from.x_m, at.x_m), Math.max(from.from.x_m, at.x_m)];
      const [south, north] = [Math.min(from.from.y_m, at.y_m), Math.max(from.from.y_m, at.y_m)];
      const inside = site.beds.filter((bed) => bed.x_m >= west && bed.x_m <= east && bed.y_m >= south && bed.y_m <= north);
      does.select([...new Set([...site.selected, ...inside.map((bed) => bed.bedId)])]);
    }
    setBox(undefined);
  };

  const turned = (starts: ReadonlyMap<string, unknown>): string => {
    const codes = site.beds.filter((bed) => starts.has(bed.bedId)).map((bed) => bed.code);
    return say('{count, plural, one {Turn bed {code}} other {Turn # beds}}', { count: codes.length, code: codes[0] ?? '' });
  };

  const startTurn = (event: PointerEvent): void => {
    const beds = site.beds.filter((bed) => site.selected.has(bed.bedId));
    const middle = middleOf(beds.map((bed) => placedBed(bed, site.lieOf(bed))));
    const svg = event.currentTarget.closest('.site-drawing')?.getBoundingClientRect();
    const at = scale.back({ x: event.clientX - (svg?.left ?? 0), y: event.clientY - (svg?.top ?? 0) });
    movedBy.current = 0;
    drag.current = { kind: 'turn', middle, angle: Math.atan2(at.y_m - middle.y_m, at.x_m - middle.x_m), starts: startsOf(beds) };
    event.stopPropagation();
    event.currentTarget.closest('.site-drawing')?.setPointerCapture(event.pointerId);
  };

  const onDoubleClick = (event: React.MouseEvent): void => {
    const rect = event.currentTarget.getBoundingClientRect();
    const at = scale.back({ x: event.clientX - rect.left, y: event.clientY - rect.top });
    const bed = hit(at);
    if (bed !== undefined) does.open(bed.bedId);
  };

  return {
    bind: { onPointerDown, onPointerMove, onPointerUp, onPointerCancel: onPointerUp, onDoubleClick },
    startTurn,
    guides,
    box,
  };
}
