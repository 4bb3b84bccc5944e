import { layOutBeds } from '../../../planner/beds/lay-out.ts';
import { InputError } from '../../../planner/errors.ts';
import { useReader } from '../../client/reader.tsx';
import { extentOf, scaleTo } from '../../draw/scale.ts';
import { ScaleBar } from '../../draw/scale-bar.tsx';
import { useSize } from '../../draw/use-size.ts';
import { say } from '../../words/say.ts';
import type { DesignRow } from './bed-types.ts';

type LayOut = {
  readonly count: number;
  readonly perRow: number;
  readonly endPath_m: number;
  readonly sidePath_m: number;
  readonly x_m: number;
  readonly y_m: number;
  readonly turn_deg: number;
};

/** The beds to be built, to scale, as they will lie. */
export function LayOutPreview({ design, layOut }: { readonly design: DesignRow; readonly layOut: LayOut }) {
  const reader = useReader();
  const [ref, size] = useSize();
  const { length_m, width_m } = design;
  const beds = bedsOrNone(design, layOut);
  const reach = Math.hypot(length_m, width_m) / 2;
  const extent = extentOf(beds.flatMap((bed) => [-reach, reach].map((by) => ({ x_m: bed.x_m + by, y_m: bed.y_m + by }))));
  const scale = scaleTo(extent ?? { minX_m: 0, minY_m: 0, maxX_m: 1, maxY_m: 1 }, size);
  return (
    <div className="drawing squared bed-drawing" ref={ref}>
      {size.width === 0 || beds.length === 0 ? null : (
        <svg
          role="img"
          aria-label={say('{beds} beds in rows of {perRow}, each {length} by {width}', {
            beds: beds.length,
            perRow: layOut.perRow,
            length: reader.print(length_m, 'm'),
            width: reader.print(width_m, 'm'),
          })}
        >
          {beds.map((bed) => (
            <rect
              key={`${bed.x_m} ${bed.y_m}`}
              className="bed-line"
              x={-scale.length(length_m) / 2}
              y={-scale.length(width_m) / 2}
              width={scale.length(length_m)}
              height={scale.length(width_m)}
              rx={design.outline === 'round' || design.outline === 'oval' ? scale.length(width_m) / 2 : 0}
              transform={`translate(${scale.x(bed.x_m)} ${scale.y(bed.y_m)}) rotate(${-bed.turn_deg})`}
            />
          ))}
          <ScaleBar scale={scale} x={12} y={size.height - 10} />
        </svg>
      )}
    </div>
  );
}

function bedsOrNone({ length_m, width_m }: DesignRow, layOut: LayOut) {
  try {
    return layOutBeds({ ...layOut, length_m, width_m, first_m: [layOut.x_m + length_m / 2, layOut.y_m + width_m / 2] }).slice(
      0,
      600,
    );
  } catch (error) {
    // while a field is being written there is nothing to draw; the form tells what is wrong when it is sent
    if (error instanceof InputError) return [];
    throw error;
  }
}
