import type { api } from '../../client/api.ts';
import type { OutputOf } from '../../client/use-read.ts';

export type BedRow = OutputOf<typeof api.beds.list>[number];
export type Site = OutputOf<typeof api.beds.site>;
export type WholeBed = OutputOf<typeof api.beds.one>;
export type DesignRow = OutputOf<typeof api.designs.list>[number];
export type BedNeed = OutputOf<typeof api.beds.needs>[number];

/** Where a bed lies on the drawing. */
export type Lie = { readonly x_m: number; readonly y_m: number; readonly turn_deg: number };
