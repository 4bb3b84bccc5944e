import { type KeyboardEvent, type PointerEvent, useMemo, useRef, useState } from 'react';
import type { LinePlan, PlanNode } from '../../../planner/irrigation/line-plan.ts';
import type { LineReport } from '../../../planner/irrigation/line-report.ts';
import { useReader } from '../../client/reader.tsx';
import { NorthArrow } from '../../draw/north-arrow.tsx';
import { PanButtons } from '../../draw/pan-buttons.tsx';
import { scaleTo } from '../../draw/scale.ts';
import { ScaleBar } from '../../draw/scale-bar.tsx';
import { usePanZoom } from '../../draw/use-pan-zoom.ts';
import { useSize } from '../../draw/use-size.ts';
import { sheetOfDrawing } from '../../print/drawn-sheet.tsx';
import type { Paper } from '../../print/paper.ts';
import { PdfButton } from '../../print/pdf-button.tsx';
import { usePrintable } from '../../print/printables.ts';
import { say } from '../../words/say.ts';
import type { BedRow } from '../beds/bed-types.ts';
import { bedPath, bedsNear, flowStates, lineExtent, lineKey, nextPlace, runWidth } from './line-marks.ts';

/** Room a label needs, in points: nearer than this only the chosen place is labelled. */
const LABEL_ROOM = 48;

/** The line to scale: runs as wide as their bore, flow at each bed; places can be dragged or moved with Alt and the arrow keys. */
export function LineDrawing(props: {
  readonly plan: LinePlan;
  readonly report: LineReport | null;
  readonly beds: readonly BedRow[];
  readonly north_deg: number;
  readonly chosen: string | undefined;
  readonly onChoose: (nodeId: string | undefined) => void;
  /** Where a place is being dragged to, for the line to be solved as it goes; `undefined` when it was let go of again. */
  readonly onDrag: (nodeId: string, to: { readonly x_m: number; readonly y_m: number }) => void;
  readonly onDrop: (nodeId: string, to: { readonly x_m: number; readonly y_m: number }) => void;
}) {
  const { plan, report, chosen } = props;
  const reader = useReader();
  const [ref, size] = useSize();
  const [grown] = useState(() => lineExtent(plan));
  const pan = usePanZoom(grown, (extent) => scaleTo(extent, size));
  const scale = scaleTo(pan.extent, size);
  const drag = useRef<{ readonly nodeId: string; moved: boolean }>(undefined);
  const nodes = useMemo(() => new Map(plan.nodes.map((node) => [node.id, node])), [plan.nodes]);
  const states = useMemo(() => flowStates(plan, report), [plan, report]);
  const flows = useMemo(() => new Map(report?.outlets.map((outlet) => [outlet.id, outlet.full.flow_L_per_h]) ?? []), [report]);
  const near = bedsNear(props.beds, pan.extent);
  const outletAt = useMemo(() => new Map(plan.outlets.map((outlet) => [outlet.nodeId, outlet])), [plan.outlets]);
  const closest = useMemo(() => closestOutlets_m(plan), [plan]);
  const labelled = scale.length(closest) >= LABEL_ROOM;
  const end = Math.max(1.6, Math.min(5.5, scale.length(closest) / 2.6));

  const placeOf = (event: PointerEvent): { readonly x_m: number; readonly y_m: number } => {
    const box = event.currentTarget.closest('svg')?.getBoundingClientRect();
    return scale.back({ x: event.clientX - (box?.left ?? 0), y: event.clientY - (box?.top ?? 0) });
  };
  const onKey = (node: PlanNode, event: KeyboardEvent): void => {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] }[event.key];
    if (event.key === 'Enter' || event.key === ' ') {
      event.preventDefault();
      props.onChoose(node.id);
    } else if (way !== undefined) {
      event.preventDefault();
      event.stopPropagation();
      const [dx = 0, dy = 0] = way;
      const step_m = event.shiftKey ? 1 : 0.1;
      if (event.altKey) props.onDrop(node.id, { x_m: node.x_m + dx * step_m, y_m: node.y_m + dy * step_m });
      else {
        const next = nextPlace(plan.nodes, node, dx, dy);
        if (next !== undefined) {
          props.onChoose(next.id);
          document.getElementById(`place-${next.id}`)?.focus();
        }
      }
    }
  };
  const focusable = chosen !== undefined && nodes.has(chosen) ? chosen : plan.nodes[0]?.id;

  const title = say('Water line');
  const onPaper = (paper: Paper) =>
    sheetOfDrawing(title, paper, <LineDrawing {...props} chosen={undefined} />, {
      wide: (grown.maxX_m - grown.minX_m) / Math.max(0.1, grown.maxY_m - grown.minY_m),
      entries: lineKey.map(({ flow, name }) => ({
        name,
        swatch: (
          <g className="line-place" data-flow={flow}>
            <circle cx={11} cy={6.5} r={5} />
          </g>
        ),
      })),
    });
  const printable = usePrintable(onPaper, ref);
  return (
    <div className="drawing squared line-drawing" ref={printable}>
      {/* biome-ignore lint/a11y/useSemanticElements: a fieldset cannot hold a drawing's places */}
      <svg
        {...pan.bind}
        role="group"
        aria-label={say('The line to scale. Tab to a place, arrow keys go from place to place, Alt with arrow keys moves it.')}
      >
        {near.map((bed) => (
          <path key={bed.bedId} className="line-bed" d={bedPath(bed, scale)} />
        ))}
        {plan.runs.map((run) => {
          const [from, to] = [nodes.get(run.fromNodeId), nodes.get(run.toNodeId)];
          if (from === undefined || to === undefined) return null;
          return (
            <line
              key={run.id}
              className="line-run"
              data-chosen={run.toNodeId === chosen ? '' : undefined}
              strokeWidth={runWidth(run.insideDiameter_m)}
              x1={scale.x(from.x_m)}
              y1={scale.y(from.y_m)}
              x2={scale.x(to.x_m)}
              y2={scale.y(to.y_m)}
            />
          );
        })}
        {plan.nodes.map((node) => {
          const outlet = outletAt.get(node.id);
          const flow = outlet === undefined ? undefined : flows.get(outlet.id);
          const said = flow === undefined ? '' : reader.print(flow, 'L_per_h', 2);
          const [x, y] = [scale.x(node.x_m), scale.y(node.y_m)];
          return (
            // biome-ignore lint/a11y/useSemanticElements: a button cannot stand inside an SVG
            <g
              key={node.id}
              id={`place-${node.id}`}
              className="line-place"
              role="button"
              aria-label={`${node.name}${said === '' ? '' : `, ${said}`}`}
              aria-pressed={node.id === chosen}
              tabIndex={node.id === focusable ? 0 : -1}
              data-kind={node.kind}
              data-flow={outlet === undefined ? undefined : (states.get(outlet.id) ?? 'none')}
              data-chosen={node.id === chosen ? '' : undefined}
              onKeyDown={(event) => onKey(node, event)}
              onPointerDown={(event) => {
                if (event.button !== 0) return;
                event.stopPropagation();
                drag.current = { nodeId: node.id, moved: false };
                event.currentTarget.setPointerCapture(event.pointerId);
                props.onChoose(node.id);
              }}
              onPointerMove={(event) => {
                if (drag.current?.nodeId !== node.id || event.buttons === 0) return;
                drag.current.moved = true;
                props.onDrag(node.id, placeOf(event));
              }}
              onPointerUp={(event) => {
                const was = drag.current;
                drag.current = undefined;
                if (was?.moved === true) props.onDrop(node.id, placeOf(event));
              }}
            >
              <circle className="line-hit" cx={x} cy={y} r={11} />
              {node.kind === 'source' ? (
                <rect x={x - 8} y={y - 8} width={16} height={16} />
              ) : (
                <circle cx={x} cy={y} r={outlet === undefined ? end / 2 : end} />
              )}
              {outlet !== undefined && (labelled || node.id === chosen) ? (
                <text x={x} y={y - 9} textAnchor="middle">
                  {said === '' ? node.name : said}
                </text>
              ) : null}
              {node.kind === 'source' ? (
                <text x={x} y={y + 22} textAnchor="middle">
                  {node.name}
                </text>
              ) : null}
            </g>
          );
        })}
        <ScaleBar scale={scale} x={16} y={size.height - 12} />
        <NorthArrow x={size.width - 26} y={size.height - 30} north_deg={props.north_deg} />
      </svg>
      <PanButtons {...pan}>
        <PdfButton title={title} make={onPaper} />
      </PanButtons>
    </div>
  );
}

/** The least way between two outlets on the drawing, to tell whether labels would stand over each other. */
function closestOutlets_m(plan: LinePlan): number {
  const places = new Map(plan.nodes.map((node) => [node.id, node]));
  const ends = plan.outlets.flatMap((outlet) => places.get(outlet.nodeId) ?? []).sort((one, other) => one.x_m - other.x_m);
  let least = Number.POSITIVE_INFINITY;
  for (const [at, end] of ends.entries())
    for (let next = at + 1; next < ends.length; next += 1) {
      const other = ends[next];
      if (other === undefined || other.x_m - end.x_m > least) break;
      least = Math.min(least, Math.hypot(other.x_m - end.x_m, other.y_m - end.y_m));
    }
  return least;
}
