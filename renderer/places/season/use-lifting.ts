import { type PointerEvent, useCallback, useRef, useState } from 'react';
import type { PlanPlanting } from '../../../planner/season/plan.ts';
import type { Lifted } from './lifted.ts';
import type { TimeScale } from './time-scale.ts';

const EDGE_PX = 7;
const SLACK_PX = 4;

/** Taking plantings up by hand: pressed on a strip, moved, and put down; near its ends the strip is stretched. */
export function useLifting(options: {
  readonly plantings: ReadonlyMap<string, PlanPlanting>;
  readonly scale: TimeScale;
  readonly onPut: (lifted: Lifted) => void;
  readonly onChoose: (plantingId: string) => void;
  readonly onEmpty: (bedId: string, day: number) => void;
}) {
  const { plantings, scale, onPut, onChoose, onEmpty } = options;
  const [lifted, setLifted] = useState<Lifted | null>(null);
  const grip = useRef<{ readonly x: number; readonly y: number; readonly start: Lifted | null; moved: boolean } | null>(null);

  const down = useCallback(
    (event: PointerEvent<HTMLElement>): void => {
      if (event.button !== 0) return;
      const target = (event.target as Element).closest<HTMLElement>('[data-planting]');
      const strips = (event.target as Element).closest<HTMLElement>('.board-strips');
      if (strips === null) return;
      const planting = target === null ? undefined : plantings.get(target.dataset['planting'] ?? '');
      const bedId = target?.dataset['bed'] ?? '';
      const at = event.clientX - strips.getBoundingClientRect().left;
      const start: Lifted | null =
        planting === undefined
          ? null
          : {
              plantingId: planting.id,
              how: gripOf(planting, scale, at),
              days: 0,
              bedId: bedId === 'unplaced' ? null : bedId,
              fromBedId: bedId === 'unplaced' ? null : bedId,
              asCopy: event.ctrlKey || event.metaKey,
            };
      grip.current = { x: event.clientX, y: event.clientY, start, moved: false };
      if (start !== null) event.currentTarget.setPointerCapture(event.pointerId);
    },
    [plantings, scale],
  );

  const move = useCallback(
    (event: PointerEvent<HTMLElement>): void => {
      const held = grip.current;
      if (held?.start == null) return;
      const dx = event.clientX - held.x;
      if (!held.moved && Math.hypot(dx, event.clientY - held.y) < SLACK_PX) return;
      held.moved = true;
      const days = Math.round(dx / scale.day_px);
      const over = document
        .elementsFromPoint(event.clientX, event.clientY)
        .map((each) => each.closest<HTMLElement>('[data-line]'))
        .find((each) => each !== null);
      const line = over?.dataset['line'];
      const bedId = held.start.how !== 'move' || line === undefined || line === 'unplaced' ? held.start.bedId : line;
      const asCopy = event.ctrlKey || event.metaKey;
      const { start } = held;
      setLifted((before) =>
        before !== null && before.days === days && before.bedId === bedId && before.asCopy === asCopy
          ? before
          : { ...start, days, bedId, asCopy },
      );
    },
    [scale],
  );

  const up = useCallback(
    (event: PointerEvent<HTMLElement>): void => {
      const held = grip.current;
      grip.current = null;
      if (held === null) return;
      if (held.moved) {
        if (lifted !== null) onPut(lifted);
        setLifted(null);
        return;
      }
      if (held.start !== null) onChoose(held.start.plantingId);
      else {
        const strips = (event.target as Element).closest<HTMLElement>('.board-strips');
        const line = (event.target as Element).closest<HTMLElement>('[data-line]')?.dataset['line'];
        if (strips !== null && line !== undefined && line !== 'unplaced')
          onEmpty(line, scale.dayAt(event.clientX - strips.getBoundingClientRect().left));
      }
    },
    [lifted, onPut, onChoose, onEmpty, scale],
  );

  const cancel = useCallback((): void => {
    grip.current = null;
    setLifted(null);
  }, []);

  return {
    lifted,
    setLifted,
    cancel,
    bind: { onPointerDown: down, onPointerMove: move, onPointerUp: up, onPointerCancel: cancel },
  };
}

function gripOf(planting: PlanPlanting, scale: TimeScale, x_px: number): Lifted['how'] {
  const from = scale.x(planting.inBed);
  const to = scale.x(planting.free);
  if (to - from < 4 * EDGE_PX) return 'move';
  if (x_px > to - EDGE_PX) return 'end';
  return x_px >= from && x_px < from + EDGE_PX ? 'start' : 'move';
}
