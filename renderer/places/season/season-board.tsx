import { useVirtualizer } from '@tanstack/react-virtual';
import { type KeyboardEvent, useCallback, useMemo, useRef, useState } from 'react';
import { checkPlan } from '../../../planner/season/check-plan.ts';
import type { FamilyMark } from '../../look/family-mark.tsx';
import { usePrinting } from '../../table/use-printing.ts';
import { say } from '../../words/say.ts';
import type { BoardData } from './board-data.ts';
import { BoardHead, BoardLevels } from './board-head.tsx';
import { liftedByKey, nextPlace, type Place } from './board-keys.ts';
import { BoardBedLine } from './board-line.tsx';
import { boardLines, LINE_PX, redrawnLines } from './board-lines.ts';
import { FamilyTextures } from './family-textures.tsx';
import { bedsOfLifted, COPY_ID, findingsOfLifted, type Lifted, planWith, worstByPlanting } from './lifted.ts';
import { LiftedLine } from './lifted-line.tsx';
import { timeScale } from './time-scale.ts';
import { useLifting } from './use-lifting.ts';

const NONE: ReadonlySet<string> = new Set();
const isTouched = (lineId: string, touched: ReadonlySet<string>): boolean => lineId === 'unplaced' || touched.has(lineId);
/** The focus belongs to one line; the others need not hear of it. */
const focusOf = (lineId: string, key: string | null): string | null => (key?.startsWith(`${lineId} `) === true ? key : null);

const NAME_PX = 92;
const HEAD_PX = 40;

/** What the board can be asked for by key, besides moving about and lifting. */
export type BoardActs = {
  readonly onPut: (lifted: Lifted) => void;
  readonly onChoose: (plantingId: string) => void;
  readonly onGap: (bedId: string, day: number | null) => void;
  readonly onRemove: (plantingId: string) => void;
};

export function SeasonBoard({
  data,
  marks,
  week_px,
  chosenId,
  today,
  acts,
}: {
  readonly data: BoardData;
  readonly marks: ReadonlyMap<string, FamilyMark>;
  readonly week_px: number;
  readonly chosenId: string | null;
  readonly today: string | null;
  readonly acts: BoardActs;
}) {
  const printing = usePrinting();
  const scroller = useRef<HTMLDivElement>(null);
  const [place, setPlace] = useState<Place | null>(null);
  const { plantings, beds, rules } = data;
  const scale = useMemo(() => timeScale(rules.start, rules.end, week_px), [rules.start, rules.end, week_px]);
  const byId = useMemo(() => new Map(plantings.map((planting) => [planting.id, planting])), [plantings]);
  const rows = useMemo(() => new Map(data.rows.map((row) => [row.plantingId, row])), [data.rows]);
  const settled = useMemo(() => worstByPlanting(checkPlan({ beds, plantings, rules })), [beds, plantings, rules]);
  const lifting = useLifting({ plantings: byId, scale, onPut: acts.onPut, onChoose: acts.onChoose, onEmpty: acts.onGap });
  const { lifted, setLifted } = lifting;
  const shown = useMemo(() => (lifted === null ? plantings : planWith(plantings, lifted)), [plantings, lifted]);
  const against = useMemo(
    () => (lifted === null ? [] : findingsOfLifted({ beds, plantings: shown, rules }, lifted)),
    [beds, shown, rules, lifted],
  );
  const worst = useMemo(() => {
    if (lifted === null) return settled;
    const now = new Map(settled);
    now.delete(lifted.plantingId);
    for (const [id, finding] of worstByPlanting(against)) now.set(id, finding);
    return now;
  }, [settled, against, lifted]);
  const settledLines = useMemo(() => boardLines(data, data.plantings), [data]);
  const touched = useMemo(() => (lifted === null ? NONE : bedsOfLifted(byId, lifted)), [byId, lifted]);
  const lines = useMemo(
    () => (lifted === null ? settledLines : redrawnLines(settledLines, shown, touched)),
    [settledLines, shown, touched, lifted],
  );
  const virtual = useVirtualizer({
    count: lines.length,
    getScrollElement: () => scroller.current,
    estimateSize: (at) => LINE_PX[lines[at]?.kind ?? 'bed'],
    getItemKey: (at) => lines[at]?.id ?? at,
    overscan: 8,
  });
  const focusKey = place === null ? null : `${place.lineId} ${place.plantingId}`;

  const focusOn = useCallback(
    (next: Place | null): void => {
      if (next === null) return;
      setPlace(next);
      const at = lines.findIndex((line) => line.id === next.lineId);
      if (at >= 0) virtual.scrollToIndex(at, { align: 'auto' });
      requestAnimationFrame(() => {
        const button = scroller.current?.querySelector<HTMLElement>(
          `.strip-button[data-bed="${CSS.escape(next.lineId)}"][data-planting="${CSS.escape(next.plantingId)}"]`,
        );
        button?.focus({ preventScroll: true });
        button?.scrollIntoView({ block: 'nearest', inline: 'nearest' });
      });
    },
    [lines, virtual],
  );

  const onKeyDown = (event: KeyboardEvent<HTMLElement>): void => {
    if (event.altKey || (event.ctrlKey && event.key !== 'c') || event.metaKey) return;
    const here = (event.target as HTMLElement).closest<HTMLElement>('.strip-button');
    const at: Place | null =
      here === null ? place : { lineId: here.dataset['bed'] ?? '', plantingId: here.dataset['planting'] ?? '' };
    const done = () => {
      event.preventDefault();
      event.stopPropagation();
    };
    if (lifted !== null) {
      const next = liftedByKey(lines, lifted, event.key, event.shiftKey);
      if (next !== null) {
        done();
        setLifted(next);
        focusOn({ lineId: next.bedId ?? 'unplaced', plantingId: next.asCopy ? COPY_ID : next.plantingId });
      } else if (event.key === 'Enter' || event.key === ' ') {
        done();
        acts.onPut(lifted);
        setLifted(null);
      } else if (event.key === 'Escape') {
        done();
        setLifted(null);
        focusOn({ lineId: lifted.fromBedId ?? 'unplaced', plantingId: lifted.plantingId });
      }
      return;
    }
    if (at === null) return;
    const lift = (how: Lifted['how'], asCopy: boolean) => {
      done();
      const bedId = at.lineId === 'unplaced' ? null : at.lineId;
      setLifted({ plantingId: at.plantingId, how, days: 0, bedId, fromBedId: bedId, asCopy });
    };
    switch (event.key) {
      case 'ArrowLeft':
      case 'ArrowRight':
      case 'ArrowUp':
      case 'ArrowDown':
      case 'Home':
      case 'End':
      case 'PageUp':
      case 'PageDown':
        done();
        focusOn(nextPlace(lines, at, event.key));
        return;
      case ' ':
        lift('move', false);
        return;
      case 'c':
        lift('move', true);
        return;
      case '[':
        lift('start', false);
        return;
      case ']':
        lift('end', false);
        return;
      case 'Enter':
        done();
        acts.onChoose(at.plantingId);
        return;
      case 'g':
        done();
        if (at.lineId !== 'unplaced') acts.onGap(at.lineId, null);
        return;
      case 'Delete':
        done();
        acts.onRemove(at.plantingId);
        return;
    }
  };

  const items = printing
    ? lines.map((_, index) => ({ index, start: 0, key: lines[index]?.id ?? index }))
    : virtual.getVirtualItems().map((item) => ({ index: item.index, start: item.start, key: item.key }));
  const firstStrip = lines.find((line) => line.kind !== 'block' && line.plantings.length > 0);
  const startKey =
    firstStrip === undefined || firstStrip.kind === 'block' ? null : `${firstStrip.id} ${firstStrip.plantings[0]?.id ?? ''}`;
  return (
    <div className="board" data-printing={printing ? '' : undefined}>
      <FamilyTextures />
      <div
        className="board-scroll"
        ref={scroller}
        role="application"
        aria-roledescription={say('season board')}
        aria-label={say(
          'Beds down, weeks across. Arrows go from planting to planting; Space lifts one, arrows move it, Enter puts it down.',
        )}
        onKeyDown={onKeyDown}
        onFocus={(event) => {
          const button = (event.target as HTMLElement).closest<HTMLElement>('.strip-button');
          if (button !== null && lifted === null)
            setPlace({ lineId: button.dataset['bed'] ?? '', plantingId: button.dataset['planting'] ?? '' });
        }}
        data-lifting={lifted === null ? undefined : lifted.how}
        {...lifting.bind}
      >
        <div className="board-sheet" style={{ width: NAME_PX + scale.width_px }}>
          <div className="board-top">
            <div className="board-corner" style={{ width: NAME_PX, height: HEAD_PX }}>
              {say('Bed / week')}
            </div>
            <BoardHead scale={scale} />
          </div>
          <div className="board-body" style={printing ? undefined : { height: virtual.getTotalSize() }}>
            <div
              className="board-ground"
              style={{
                left: NAME_PX,
                width: scale.width_px,
                backgroundSize: `${week_px}px ${LINE_PX.bed}px, ${week_px / 7}px ${LINE_PX.bed}px`,
              }}
              data-fine={week_px >= 42 ? '' : undefined}
            />
            {items.map((item) => {
              const line = lines[item.index];
              if (line === undefined) return null;
              const at = printing
                ? undefined
                : { transform: `translateY(${item.start}px)`, position: 'absolute' as const, left: 0 };
              if (line.kind === 'block')
                return (
                  <div key={item.key} className="board-block" style={{ ...at, height: LINE_PX.block }}>
                    <span>{line.title}</span>
                    <span className="faint">{say('{beds, plural, one {# bed} other {# beds}}', { beds: line.beds })}</span>
                  </div>
                );
              return (
                <div key={item.key} className="board-line" data-line={line.id} style={{ ...at, height: LINE_PX[line.kind] }}>
                  <button
                    type="button"
                    className="board-name"
                    tabIndex={-1}
                    style={{ width: NAME_PX }}
                    disabled={line.kind === 'unplaced'}
                    onClick={() => acts.onGap(line.id, null)}
                    title={line.kind === 'unplaced' ? say('Plantings without a bed') : say('Gaps of this bed')}
                  >
                    {line.kind === 'unplaced' ? say('No bed yet') : line.bed.code}
                  </button>
                  <BoardBedLine
                    line={line}
                    scale={scale}
                    rows={rows}
                    marks={marks}
                    worst={touched.has(line.id) ? worst : settled}
                    heldId={lifted === null || !isTouched(line.id, touched) ? null : lifted.asCopy ? COPY_ID : lifted.plantingId}
                    chosenId={line.plantings.some((planting) => planting.id === chosenId) ? chosenId : null}
                    focusKey={focusOf(line.id, focusKey ?? startKey)}
                  />
                </div>
              );
            })}
            <div className="board-levels-place" style={{ left: NAME_PX }}>
              <BoardLevels
                scale={scale}
                frost={data.frost}
                today={today}
                height_px={lines.reduce((sum, line) => sum + LINE_PX[line.kind], 0)}
              />
            </div>
          </div>
        </div>
      </div>
      <LiftedLine lifted={lifted} plantings={shown} beds={beds} against={against} onPut={acts.onPut} onCancel={lifting.cancel} />
    </div>
  );
}
