import type { PlanPlanting, PlanSpan } from '../../../planner/season/plan.ts';
import type { BoardData } from './board-data.ts';

/** One line of the board: a block's heading, a bed, or the plantings that have no bed yet. */
export type BoardLine =
  | { readonly kind: 'block'; readonly id: string; readonly title: string; readonly beds: number }
  | {
      readonly kind: 'bed';
      readonly id: string;
      readonly bed: BoardData['beds'][number];
      readonly plantings: readonly PlanPlanting[];
    }
  | { readonly kind: 'unplaced'; readonly id: 'unplaced'; readonly plantings: readonly PlanPlanting[] };

export type BedLine = Exclude<BoardLine, { readonly kind: 'block' }>;
export type Piece = { readonly planting: PlanPlanting; readonly span: PlanSpan | null };

/** What stands on a line: each piece of bed that a planting takes up there. */
export const piecesOf = (line: BedLine): readonly Piece[] =>
  line.plantings.flatMap((planting): readonly Piece[] =>
    line.kind === 'unplaced'
      ? [{ planting, span: null }]
      : planting.spans.filter((span) => span.bedId === line.id).map((span) => ({ planting, span })),
  );

export const LINE_PX = { block: 24, bed: 36, unplaced: 36 } as const;

/** Plantings by the bed they stand on, in order of date. */
export function plantingsByBed(plantings: readonly PlanPlanting[]): ReadonlyMap<string, readonly PlanPlanting[]> {
  const byBed = new Map<string, PlanPlanting[]>();
  for (const planting of plantings)
    for (const bedId of new Set(planting.spans.map((span) => span.bedId))) {
      const here = byBed.get(bedId);
      if (here === undefined) byBed.set(bedId, [planting]);
      else here.push(planting);
    }
  for (const here of byBed.values()) here.sort((a, b) => (a.inBed < b.inBed ? -1 : a.inBed > b.inBed ? 1 : a.id < b.id ? -1 : 1));
  return byBed;
}

/** The lines of the board from top to bottom; beds keep their order in their block. */
export function boardLines(data: Pick<BoardData, 'beds' | 'blocks'>, plantings: readonly PlanPlanting[]): readonly BoardLine[] {
  const byBed = plantingsByBed(plantings);
  const lines: BoardLine[] = [];
  const unplaced = plantings.filter((planting) => planting.spans.length === 0);
  if (unplaced.length > 0) lines.push({ kind: 'unplaced', id: 'unplaced', plantings: unplaced });
  for (const block of data.blocks) {
    const beds = data.beds.filter((bed) => bed.blockId === block.blockId);
    lines.push({
      kind: 'block',
      id: block.blockId,
      title: block.name === '' ? block.code : `${block.code} · ${block.name}`,
      beds: beds.length,
    });
    for (const bed of beds) lines.push({ kind: 'bed', id: bed.id, bed, plantings: byBed.get(bed.id) ?? [] });
  }
  return lines;
}

/** The same lines, those of some beds (and of what has no bed) drawn anew; all others stay the very same objects. */
export function redrawnLines(
  lines: readonly BoardLine[],
  plantings: readonly PlanPlanting[],
  bedIds: ReadonlySet<string>,
): readonly BoardLine[] {
  const byBed = plantingsByBed(plantings.filter((planting) => planting.spans.some((span) => bedIds.has(span.bedId))));
  return lines.map((line) => {
    if (line.kind === 'bed' && bedIds.has(line.id)) return { ...line, plantings: byBed.get(line.id) ?? [] };
    if (line.kind === 'unplaced') return { ...line, plantings: plantings.filter((planting) => planting.spans.length === 0) };
    return line;
  });
}
