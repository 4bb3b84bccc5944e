import { z } from 'zod';

/** A shape of a sheet as plain data. The program writes the SVG itself, so that a sheet can name no file and no address. */
export type Shape = {
  readonly tag: (typeof tags)[number];
  readonly attributes: Readonly<Partial<Record<(typeof attributeNames)[number], string>>>;
  readonly text?: string | undefined;
  readonly shapes?: readonly Shape[] | undefined;
};

const tags = ['g', 'rect', 'line', 'path', 'text'] as const;

const attributeNames = [
  ...['x', 'y', 'width', 'height', 'x1', 'y1', 'x2', 'y2', 'd', 'transform', 'font-size', 'font-weight'],
  ...['fill', 'fill-opacity', 'fill-rule', 'stroke', 'stroke-opacity', 'stroke-width', 'stroke-dasharray'],
] as const;

/** A shape refers to nothing, neither in its own sheet nor outside it. */
const attribute = z
  .string()
  .max(200_000)
  .refine((value) => !/url|:/i.test(value), 'A sheet refers to nothing outside itself.');

const DEEPEST = 8;
const shapeTo = (depth: number): z.ZodType<Shape> =>
  z.object({
    tag: z.enum(tags),
    attributes: z.partialRecord(z.enum(attributeNames), attribute),
    text: z.string().max(2000).optional(),
    shapes: z
      .array(depth === 0 ? z.never('This sheet is nested too deeply.') : shapeTo(depth - 1))
      .max(50_000)
      .optional(),
  });

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
  }),
  /** A whole sheet without margins, at its true size: labels. */
  z.object({
    kind: z.literal('sheet'),
    width_px: size_px,
    height_px: size_px,
    shapes: z.array(shapeTo(DEEPEST)).max(50_000),
  }),
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
