import { z } from 'zod';

export const DrawingKind = z.enum(['plan', 'elevation', 'junction']);
export type DrawingKind = z.infer<typeof DrawingKind>;

export const DrawingRef = z
  .string()
  .min(1)
  .max(100)
  .meta({ description: 'plan: id of a storey. elevation: mark of a wall. junction: id of a junction' });

export const DrawingQuery = z.object({
  width: z.coerce.number().int().min(100).max(4_000).default(1_600).meta({ description: 'Width of a PNG in pixels' }),
});
export type DrawingQuery = z.infer<typeof DrawingQuery>;

export const DRAWING_TYPES = ['image/svg+xml', 'image/png', 'image/vnd.dxf', 'application/pdf'] as const;
export type DrawingType = (typeof DRAWING_TYPES)[number];
