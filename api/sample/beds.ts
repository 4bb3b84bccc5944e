import { type BedRow, type BlockRow, sampleDesigns } from './designs.ts';

type BlockPlan = {
  readonly block: BlockRow;
  readonly letter: string;
  readonly designId: string;
  /** Its part of the farm's beds. */
  readonly share: number;
  readonly perRow: number;
  readonly pitch_m: readonly [number, number];
};

const plans: readonly BlockPlan[] = [
  {
    block: { id: 'block-a', code: 'A', name: 'Frames by the shed', x_m: 2, y_m: 4, sun: 'full', position: 0 },
    letter: 'A',
    designId: 'design-frame',
    share: 24 / 96,
    perRow: 6,
    pitch_m: [3.2, 2],
  },
  {
    block: { id: 'block-b', code: 'B', name: 'Bags on the water line', x_m: 24, y_m: 4, sun: 'full', position: 1 },
    letter: 'B',
    designId: 'design-bag',
    share: 24 / 96,
    perRow: 12,
    pitch_m: [1.3, 1.7],
  },
  {
    block: {
      id: 'block-c',
      code: 'C',
      name: 'Troughs along the south wall',
      x_m: 24,
      y_m: 12,
      sun: 'full',
      covered: true,
      position: 2,
    },
    letter: 'C',
    designId: 'design-trough',
    share: 12 / 96,
    perRow: 6,
    pitch_m: [2.3, 1.6],
  },
  {
    block: {
      id: 'block-d',
      code: 'D',
      name: 'Strips in the old paddock',
      x_m: 2,
      y_m: 20,
      sun: 'full',
      texture: 'sandy loam',
      position: 3,
    },
    letter: 'D',
    designId: 'design-strip',
    share: 34 / 96,
    perRow: 4,
    pitch_m: [10, 1.35],
  },
  {
    block: { id: 'block-e', code: 'E', name: 'Mounds to be taken down', x_m: 27, y_m: 17, sun: 'light-shade', position: 4 },
    letter: 'E',
    designId: 'design-mound',
    share: 2 / 96,
    perRow: 2,
    pitch_m: [6.5, 3],
  },
];

/** Every second frame, every trough and every third strip carries a support. */
const hasTrellis = (letter: string, n: number): boolean =>
  (letter === 'A' && n % 2 === 1) || letter === 'C' || (letter === 'D' && n % 3 === 2);

/** How many beds each block gets, so that they add up; the strips take what rounding leaves. */
function countsOf(beds: number): readonly number[] {
  const counts = plans.map((plan) => (plan.letter === 'D' ? 0 : Math.round(plan.share * beds)));
  const strips = Math.max(0, beds - counts.reduce((sum, n) => sum + n, 0));
  return plans.map((plan, at) => (plan.letter === 'D' ? strips : (counts[at] ?? 0)));
}

/** The farm's blocks and beds; a larger farm repeats the blocks' rows further north. */
export function sampleBeds(beds: number, builtDate: string): { readonly blocks: BlockRow[]; readonly beds: BedRow[] } {
  const counts = countsOf(beds);
  const digits = Math.max(2, String(Math.max(...counts, 1)).length);
  let shift_m = 0;
  const rows: BedRow[] = [];
  const blocks: BlockRow[] = [];
  const crowd = beds > 96;
  plans.forEach((plan, at) => {
    const count = counts[at] ?? 0;
    const x = crowd ? 2 : (plan.block.x_m ?? 0);
    const y = crowd ? 4 + shift_m : (plan.block.y_m ?? 0);
    const perRow = crowd ? plan.perRow * 3 : plan.perRow;
    const size = sampleDesigns.find(({ design }) => design.id === plan.designId)?.design;
    blocks.push({ ...plan.block, x_m: x, y_m: y });
    for (let n = 0; n < count; n += 1) {
      const column = n % perRow;
      const row = Math.floor(n / perRow);
      rows.push({
        id: `bed-${plan.letter.toLowerCase()}-${n + 1}`,
        code: `${plan.letter}-${String(n + 1).padStart(digits, '0')}`,
        blockId: plan.block.id,
        designId: plan.designId,
        x_m: x + (size?.length_m ?? 0) / 2 + column * plan.pitch_m[0],
        y_m: y + (size?.width_m ?? 0) / 2 + row * plan.pitch_m[1],
        position: n,
        builtDate,
        trellis: hasTrellis(plan.letter, n),
        elevation_m: plan.letter === 'B' ? 0.2 : 0,
      });
    }
    shift_m += Math.ceil(count / perRow) * plan.pitch_m[1] + 3;
  });
  return { blocks, beds: rows };
}
