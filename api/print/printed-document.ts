import { z } from 'zod';

/** A shape of a sheet as plain data. The program writes the SVG itself, so that a sheet can name no file and no address. */
export type Shape = {
  readonly tag: (typeof tags)[number];
  readonly attributes: Readonly<Partial<Record<(typeof attributeNames)[number], string>>>;
  readonly text?: string | undefined;
  readonly shapes?: readonly Shape[] | undefined;
  /** Filled with a hatch: its place in the sheet's list of them. */
  readonly hatch?: number | undefined;
  /** What of a group lies outside this window is cut off. */
  readonly window?: { readonly x: number; readonly y: number; readonly width: number; readonly height: number } | undefined;
};

/** A pattern that fills shapes, tile beside tile. */
export type Hatch = {
  readonly width: number;
  readonly height: number;
  readonly transform?: string | undefined;
  readonly shapes: readonly Shape[];
};

const tags = ['g', 'rect', 'circle', 'line', 'path', 'text'] as const;

const attributeNames = [
  ...['x', 'y', 'width', 'height', 'x1', 'y1', 'x2', 'y2', 'd', 'transform', 'font-size', 'font-weight'],
  ...['cx', 'cy', 'r', 'rx', 'text-anchor', 'stroke-linecap', 'stroke-linejoin'],
  ...['fill', 'fill-opacity', 'fill-rule', 'stroke', 'stroke-opacity', 'stroke-width', 'stroke-dasharray'],
] as const;

/** A shape refers to nothing, neither in its own sheet nor outside it. */
const attribute = z
  .string()
  .max(200_000)
  .refine((value) => !/url|:/i.test(value), 'A sheet refers to nothing outside itself.');

const DEEPEST = 12;
const extent = z.number().min(-100_000).max(100_000);
const shapeTo = (depth: number): z.ZodType<Shape> =>
  z.object({
    tag: z.enum(tags),
    attributes: z.partialRecord(z.enum(attributeNames), attribute),
    text: z.string().max(2000).optional(),
    hatch: z.int().nonnegative().max(500).optional(),
    window: z.object({ x: extent, y: extent, width: extent.nonnegative(), height: extent.nonnegative() }).optional(),
    shapes: z
      .array(depth === 0 ? z.never('This sheet is nested too deeply.') : shapeTo(depth - 1))
      .max(50_000)
      .optional(),
  });

const hatch: z.ZodType<Hatch> = z.object({
  width: z.number().positive().max(400),
  height: z.number().positive().max(400),
  transform: attribute.optional(),
  shapes: z.array(shapeTo(2)).max(200),
});

const drawnPart = {
  shapes: z.array(shapeTo(DEEPEST)).max(50_000),
  hatches: z.array(hatch).max(500).optional(),
};

const size_px = z.number().positive('A sheet has a size.').max(4000, 'A sheet is too large to print.');
const cell = z.string().max(4000);
const side = z.enum(['left', 'right']);

const part = z.discriminatedUnion('kind', [
  z.object({
    kind: z.literal('table'),
    head: z
      .array(z.object({ title: cell, side }))
      .min(1)
      .max(120),
    rows: z.array(z.array(cell).max(120)).max(20_000, 'More than 20,000 rows are too many for one document.'),
    totals: z.array(cell).max(120).nullable(),
    /** How the columns share the whole width of the page; as wide as their words where it is left out. */
    shares: z.array(z.number().positive().max(1)).max(120).optional(),
  }),
  /** A whole sheet without margins, at its true size: labels. */
  z.object({ kind: z.literal('sheet'), width_px: size_px, height_px: size_px, ...drawnPart }),
  /** A drawing or chart, at its true size where the page has room for it; `across` asks for the long side of the paper. */
  z.object({ kind: z.literal('drawing'), width_px: size_px, height_px: size_px, across: z.boolean(), ...drawnPart }),
  z.object({ kind: z.literal('heading'), level: z.int().min(1).max(3), text: cell }),
  z.object({ kind: z.literal('text'), text: cell }),
  z.object({ kind: z.literal('caution'), severity: z.enum(['stop', 'guard', 'note']), title: cell, texts: z.array(cell).max(8) }),
]);

/** What a page hands over to be made into a PDF: as it is shown, in the farm's units and the reader's language. */
export const printedDocument = z.object({
  title: z.string().trim().min(1, 'A document has a title.').max(200),
  paper: z.enum(['a4', 'letter']),
  /** The season that the page is about; none where it is about no season. */
  seasonId: z.string().max(80).nullable(),
  parts: z.array(part).min(1, 'There is nothing here to print.').max(500),
});

export type PrintedDocument = z.output<typeof printedDocument>;
export type PrintedPart = PrintedDocument['parts'][number];
export type PrintedTable = Extract<PrintedPart, { readonly kind: 'table' }>;
