import type { Heap } from '../../planner/soil/stockpile.ts';

type Row = {
  readonly shape: 'cone' | 'half-ellipsoid' | 'windrow';
  readonly length_m: number;
  readonly width_m: number;
  readonly height_m: number;
};

/** A stored heap as the planner takes it; a windrow's section is a triangle. */
export function heapOfStockpile({ shape, length_m, width_m, height_m }: Row): Heap {
  switch (shape) {
    case 'cone':
      return { shape, diameter_m: length_m, height_m };
    case 'half-ellipsoid':
      return { shape, length_m, width_m, height_m };
    case 'windrow':
      return { shape, section: 'triangle', length_m, width_m, height_m };
  }
}
