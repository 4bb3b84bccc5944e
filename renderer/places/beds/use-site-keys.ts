import type { KeyboardEvent } from 'react';
import { announce } from '../../client/announce.ts';
import { say } from '../../words/say.ts';
import type { BedRow, Lie } from './bed-types.ts';
import { type Camera, middleOf, placedBed, turnedAbout, zoomedCamera } from './site-view.ts';

const ZOOM = 1.25;
const PAN_PX = 80;
const FREE_STEP_M = 0.1;
const TURN_STEP_DEG = 15;

type Site = {
  readonly beds: readonly BedRow[];
  readonly selected: ReadonlySet<string>;
  readonly camera: Camera;
  readonly grid_m: number | null;
  readonly lieOf: (bed: BedRow) => Lie;
};
type Does = {
  readonly look: (camera: Camera) => void;
  readonly whole: () => void;
  readonly select: (ids: readonly string[]) => void;
  readonly open: (bedId: string) => void;
  readonly keepSoon: (lies: ReadonlyMap<string, Lie>) => void;
  readonly duplicate: () => void;
  readonly end: () => void;
  readonly finish: () => void;
};

/** Keys of the site drawing; shown in the place's help. */
export const siteKeys = [
  { keys: 'N, P', does: say('Next and previous bed') },
  { keys: say('Arrows'), does: say('Move the chosen beds by the snap step (Shift: ten steps); with none chosen, move the view') },
  { keys: '[ ]', does: say('Turn the chosen beds by 15°') },
  { keys: 'Enter', does: say('Open the bed, or finish the order') },
  { keys: 'D', does: say('Duplicate') },
  { keys: say('Ctrl+A, Esc'), does: say('Choose all, none') },
  { keys: 'Delete', does: say('Retire') },
  { keys: '+ − 0', does: say('Nearer, farther, all') },
] as const;

/** What the keys do while the site drawing has the focus. */
export function useSiteKeys(site: Site, does: Does) {
  const chosen = (): readonly BedRow[] => site.beds.filter((bed) => site.selected.has(bed.bedId));
  const shift = (dx: number, dy: number, many: boolean): void => {
    const step = (site.grid_m ?? FREE_STEP_M) * (many ? 10 : 1);
    const beds = chosen();
    if (beds.length === 0) {
      const by = PAN_PX / site.camera.perMetre;
      does.look({ ...site.camera, x_m: site.camera.x_m + dx * by, y_m: site.camera.y_m + dy * by });
      return;
    }
    does.keepSoon(
      new Map(
        beds.map((bed) => {
          const lie = site.lieOf(bed);
          return [bed.bedId, { ...lie, x_m: lie.x_m + dx * step, y_m: lie.y_m + dy * step }];
        }),
      ),
    );
  };
  const turn = (by_deg: number): void => {
    const beds = chosen();
    if (beds.length === 0) return;
    const middle = middleOf(beds.map((bed) => placedBed(bed, site.lieOf(bed))));
    does.keepSoon(new Map(beds.map((bed) => [bed.bedId, turnedAbout(site.lieOf(bed), middle, by_deg)])));
  };
  const step = (by: number): void => {
    const [first] = chosen();
    const from = first === undefined ? (by > 0 ? -1 : 0) : site.beds.indexOf(first);
    const bed = site.beds[(from + by + site.beds.length) % Math.max(1, site.beds.length)];
    if (bed === undefined) return;
    does.select([bed.bedId]);
    const lie = site.lieOf(bed);
    does.look({ ...site.camera, x_m: lie.x_m, y_m: lie.y_m });
    announce(say('Bed {bed}, {design}.', { bed: bed.code, design: bed.design }));
  };
  const open = (): void => {
    const [first] = chosen();
    if (first === undefined) does.finish();
    else does.open(first.bedId);
  };

  return (event: KeyboardEvent): void => {
    if (event.target !== event.currentTarget || event.altKey) return;
    const whole = event.ctrlKey || event.metaKey;
    if (whole && event.key.toLowerCase() !== 'a') return;
    const centre = { x_m: site.camera.x_m, y_m: site.camera.y_m };
    const acts = new Map<string, () => void>([
      ['ArrowLeft', () => shift(-1, 0, event.shiftKey)],
      ['ArrowRight', () => shift(1, 0, event.shiftKey)],
      ['ArrowUp', () => shift(0, 1, event.shiftKey)],
      ['ArrowDown', () => shift(0, -1, event.shiftKey)],
      ['[', () => turn(TURN_STEP_DEG)],
      [']', () => turn(-TURN_STEP_DEG)],
      ['n', () => step(1)],
      ['p', () => step(-1)],
      ['d', does.duplicate],
      ['a', () => (whole ? does.select(site.beds.map((bed) => bed.bedId)) : undefined)],
      ['Escape', () => does.select([])],
      ['Enter', open],
      ['Delete', does.end],
      ['+', () => does.look(zoomedCamera(site.camera, ZOOM, centre))],
      ['=', () => does.look(zoomedCamera(site.camera, ZOOM, centre))],
      ['-', () => does.look(zoomedCamera(site.camera, 1 / ZOOM, centre))],
      ['0', does.whole],
    ]);
    const act = acts.get(event.key.length === 1 ? event.key.toLowerCase() : event.key);
    if (act === undefined) return;
    event.preventDefault();
    act();
  };
}
