import { z } from 'zod';

/** One layer of a recipe as entered. */
export const layerEntry = z
  .object({
    materialId: z.string().min(1, 'Choose a material.'),
    amountKind: z.enum(['depth', 'share', 'volume', 'rest']),
    amount: z.number().nonnegative('An amount cannot be negative.').nullable(),
    settlingShare: z.number().min(0).max(0.9, 'No fill settles by more than 90 %.').nullable(),
  })
  .refine((layer) => layer.amountKind === 'rest' || layer.amount !== null, {
    path: ['amount'],
    message: 'Write how much, or make this layer the rest.',
  });
