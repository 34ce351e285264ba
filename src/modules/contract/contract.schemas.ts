import { z } from 'zod';

export const Id = z
  .string()
  .min(1)
  .max(100)
  .meta({ description: 'UUIDv7', examples: ['01990f2a-5d3c-7b1e-9c7e-0a5c3f2b1d00'] });
export const Instant = z.string().meta({ description: 'RFC 3339, UTC', examples: ['2026-03-02T09:30:00.000Z'] });
export const PlainDate = z
  .string()
  .regex(/^\d{4}-\d{2}-\d{2}$/)
  .meta({ description: "Date in the supplier's time zone" });

export const PageQuery = z.object({
  first: z.coerce.number().int().min(1).max(200).default(50).meta({ description: 'At most this many items' }),
  after: z.string().min(1).max(400).optional().meta({ description: 'The `next` of the page before' }),
});
export type PageQuery = z.infer<typeof PageQuery>;

export const listOf = <T extends z.ZodType>(id: string, item: T) =>
  z
    .object({
      items: z.array(item),
      next: z.string().nullable().meta({ description: 'Cursor of the next page, null on the last' }),
    })
    .meta({ id });

export interface Page<T> {
  readonly items: readonly T[];
  readonly next: string | null;
}
