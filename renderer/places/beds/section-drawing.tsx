import type { BedSpec } from '../../../planner/beds/bed-spec.ts';
import { useReader } from '../../client/reader.tsx';
import { DimensionLine } from '../../draw/dimension-line.tsx';
import { Hatches, hatch } from '../../draw/hatches.tsx';
import { type Scale, scaleTo } from '../../draw/scale.ts';
import { ScaleBar } from '../../draw/scale-bar.tsx';
import { useSize } from '../../draw/use-size.ts';
import { type KeyEntry, sheetOfDrawing } from '../../print/drawn-sheet.tsx';
import type { Paper } from '../../print/paper.ts';
import { PdfButton } from '../../print/pdf-button.tsx';
import { usePrintable } from '../../print/printables.ts';
import { say } from '../../words/say.ts';
import { hatchOf } from './layer-hatch.ts';
import { type Edge, edgeOf, halfWidth_m, type Section, sectionOf } from './section-shape.ts';

const MARGIN_PX = 58;
/** A layer at least this high carries its name. */
const NAME_PX = 15;

/** What a cross-section needs to know of a bed or design. */
export type SectionBed = {
  readonly label: string;
  readonly spec: BedSpec;
  readonly mulchDepth_m: number | null;
  readonly layers: readonly {
    readonly materialId: string;
    readonly name: string;
    readonly kind: string;
    readonly isOwn: boolean;
    readonly from_m: number;
    readonly to_m: number;
  }[];
};

/** The cross-section of a bed to scale: layers hatched, water in basin or reservoir, overflow, dimension lines. */
export function SectionDrawing({ bed }: { readonly bed: SectionBed }) {
  const [ref, size] = useSize();
  const { spec, layers } = bed;
  const mulch_m = bed.mulchDepth_m ?? 0;
  const section = sectionOf(spec, mulch_m);
  const extent = { minX_m: -section.half_m, maxX_m: section.half_m, minY_m: 0, maxY_m: section.top_m };
  const scale = scaleTo(extent, size, MARGIN_PX);
  const title = say('Cross-section of {bed}', { bed: bed.label });
  const onPaper = (paper: Paper) =>
    sheetOfDrawing(title, paper, <SectionDrawing bed={bed} />, {
      wide: 1,
      high: PAPER_HEIGHT_PX,
      entries: keyOf(bed),
    });
  const printable = usePrintable(onPaper, ref);
  return (
    <div className="drawing bed-drawing" ref={printable}>
      <div className="drawing-tools no-print">
        <PdfButton title={title} make={onPaper} />
      </div>
      {size.width === 0 ? null : (
        <svg
          role="img"
          aria-label={say('Cross-section of {bed}: {layers}, bottom up', {
            bed: bed.label,
            layers: layers.map((layer) => layer.name).join(', '),
          })}
        >
          <Hatches />
          <line className="bed-ground" x1={8} x2={size.width - 8} y1={groundOf(bed, scale)} y2={groundOf(bed, scale)} />
          <Basin section={section} bed={bed} scale={scale} />
          {layers.map((layer) =>
            layer.to_m <= layer.from_m ? null : (
              <polygon
                key={`${layer.materialId} ${layer.from_m}`}
                points={outlineBetween(section, layer.from_m, layer.to_m, scale)}
                fill={hatch(hatchOf(layer))}
                className="bed-layer"
              >
                <title>{layer.name}</title>
              </polygon>
            ),
          )}
          {mulch_m > 0 ? (
            <rect
              x={scale.x(-halfWidth_m(section.form, spec.fillDepth_m))}
              y={scale.y(spec.fillDepth_m + mulch_m)}
              width={scale.length(2 * halfWidth_m(section.form, spec.fillDepth_m))}
              height={scale.length(mulch_m)}
              fill={hatch('mulch')}
            />
          ) : null}
          <polyline className="bed-line" points={wallLine(section, scale)} />
          <Reservoir section={section} bed={bed} scale={scale} />
          {layers.map((layer) =>
            scale.length(layer.to_m - layer.from_m) < NAME_PX ? null : (
              <text
                key={`${layer.materialId} ${layer.from_m}`}
                className="bed-layer-name"
                x={scale.x(0)}
                y={scale.y((layer.from_m + layer.to_m) / 2)}
                dy={4}
                textAnchor="middle"
              >
                {layer.name.split(',')[0]}
              </text>
            ),
          )}
          <Dimensions section={section} bed={bed} scale={scale} />
          <ScaleBar scale={scale} x={12} y={size.height - 8} />
        </svg>
      )}
    </div>
  );
}

const PAPER_HEIGHT_PX = 520;

/** The layers from the top down, each with its hatch. */
function keyOf({ layers, mulchDepth_m, spec }: SectionBed): readonly KeyEntry[] {
  const entry = (name: string, fill: string): KeyEntry => ({
    name,
    swatch: (
      <>
        <Hatches />
        <rect x={1} y={1} width={20} height={11} fill={fill} stroke="var(--ink)" strokeWidth={0.7} />
      </>
    ),
  });
  const names = new Map(layers.toReversed().map((layer) => [layer.name, hatch(hatchOf(layer))]));
  return [
    ...((mulchDepth_m ?? 0) > 0 ? [entry(say('mulch'), hatch('mulch'))] : []),
    ...[...names].map(([name, fill]) => entry(name, fill)),
    ...(spec.watering === 'basin' || spec.watering === 'reservoir' ? [entry(say('water'), hatch('water'))] : []),
  ];
}

type Part = { readonly section: Section; readonly bed: SectionBed; readonly scale: Scale };

/** The ground line: at the brim of a bed in the ground, else under what stands on it. */
const groundOf = (bed: SectionBed, scale: Scale): number => scale.y(bed.spec.kind === 'in-ground' ? bed.spec.depth_m : 0);

const at = (scale: Scale, edge: Edge, side: 1 | -1): string => `${scale.x(side * edge.half_m)},${scale.y(edge.height_m)}`;

function outlineBetween({ form }: Section, from_m: number, to_m: number, scale: Scale): string {
  const edge = edgeOf(form, from_m, to_m);
  return [...edge.map((each) => at(scale, each, 1)), ...edge.toReversed().map((each) => at(scale, each, -1))].join(' ');
}

/** Walls and floor, open at the top; a mound closes over its crown. */
function wallLine({ form }: Section, scale: Scale): string {
  const edge = edgeOf(form, 0, form.depth_m);
  return [...edge.toReversed().map((each) => at(scale, each, -1)), ...edge.map((each) => at(scale, each, 1))].join(' ');
}

function Basin({ section, bed, scale }: Part) {
  const { basin } = section;
  if (basin === undefined) return null;
  const half_m = halfWidth_m(basin, 0);
  const level_m = bed.spec.basinFill_m ?? basin.depth_m;
  const [left, right] = [scale.x(-half_m), scale.x(half_m)];
  return (
    <g>
      <rect x={left} y={scale.y(level_m)} width={right - left} height={scale.length(level_m)} fill={hatch('water')} />
      <line className="bed-level" x1={left} x2={right} y1={scale.y(level_m)} y2={scale.y(level_m)} />
      <polyline
        className="bed-line"
        points={`${left},${scale.y(basin.depth_m)} ${left},${scale.y(0)} ${right},${scale.y(0)} ${right},${scale.y(basin.depth_m)}`}
      />
    </g>
  );
}

function Reservoir({ section, bed, scale }: Part) {
  const { spec } = bed;
  if (spec.watering !== 'reservoir') return null;
  const level_m = spec.overflow_m ?? spec.reservoirDepth_m ?? 0;
  const half_m = halfWidth_m(section.form, level_m);
  const y = scale.y(level_m);
  return (
    <g>
      <polygon points={outlineBetween(section, 0, level_m, scale)} fill="var(--water)" fillOpacity={0.28} />
      <line className="bed-level" x1={scale.x(-half_m)} x2={scale.x(half_m)} y1={y} y2={y} />
      <path className="bed-level" d={`M${scale.x(-half_m)} ${y} h-10 v7`} fill="none" />
      <text x={scale.x(-half_m) - 6} y={y - 5} textAnchor="end">
        {say('overflow')}
      </text>
    </g>
  );
}

function Dimensions({ section, bed, scale }: Part) {
  const reader = useReader();
  const { spec } = bed;
  const { form } = section;
  const brim_m = halfWidth_m(form, form.solid === 'half-ellipsoid' ? 0 : form.depth_m);
  const foot_m = halfWidth_m(form, 0);
  const bottom = { left: { x: scale.x(-foot_m), y: scale.y(0) }, right: { x: scale.x(foot_m), y: scale.y(0) } };
  const deep = (from_m: number, to_m: number, half_m: number, offset: number) => (
    <DimensionLine
      from={{ x: scale.x(half_m), y: scale.y(from_m) }}
      to={{ x: scale.x(half_m), y: scale.y(to_m) }}
      length_m={to_m - from_m}
      label={reader.print(to_m - from_m, 'm_short')}
      offset={offset}
    />
  );
  const water_m = section.basin === undefined ? null : (spec.basinFill_m ?? section.basin.depth_m);
  return (
    <g>
      {deep(0, spec.fillDepth_m, section.half_m, -18)}
      {Math.abs(spec.depth_m - spec.fillDepth_m) < 0.005 ? null : deep(0, spec.depth_m, section.half_m, -36)}
      {water_m === null ? null : deep(0, water_m, -section.half_m, 18)}
      {form.solid === 'half-ellipsoid' ? null : (
        <DimensionLine
          from={{ x: scale.x(-brim_m), y: scale.y(section.top_m) }}
          to={{ x: scale.x(brim_m), y: scale.y(section.top_m) }}
          length_m={2 * brim_m}
          offset={16}
        />
      )}
      {Math.abs(foot_m - brim_m) < 0.005 && form.solid !== 'half-ellipsoid' ? null : (
        <DimensionLine from={bottom.left} to={bottom.right} length_m={2 * foot_m} offset={-20} />
      )}
    </g>
  );
}
