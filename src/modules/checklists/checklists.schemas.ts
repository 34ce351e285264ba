import { z } from 'zod';
import { Id, Instant, PageQuery } from '../contract/contract.schemas.js';
import { OpenHold } from '../quotes/quotes.schemas.js';

const Count = z.number().int().min(0).max(2_000_000_000);

const Tick = z
  .object({
    by: z.string(),
    at: Instant,
    note: z.string().nullable(),
    photo: z.string().nullable().meta({ description: 'Path of the photo' }),
  })
  .meta({ id: 'ChecklistTick' });

const ItemCount = z
  .object({
    sku: z.string(),
    quantity: z.number(),
    unit: z.enum(['ft', 'each']),
    atMm: z.array(z.number()).meta({ description: 'Stations along the axis of the wall; ends of the stretches of what runs along it' }),
  })
  .meta({ id: 'ChecklistCount' });

const item = {
  id: Id.meta({ description: 'Stays the same for the same rule at the same place in every revision' }),
  n: Count.meta({ description: 'Place in the order in which the crew walks' }),
  phase: z.enum(['before-work', 'laying', 'before-pour', 'during-pour']),
  rule: z.string(),
  storey: z.string(),
  wall: z.string().nullable(),
  course: Count.nullable(),
  text: z.string(),
  counts: z.array(ItemCount),
  basis: z.string(),
  tick: Tick.nullable(),
};

const standing = {
  revision: Count,
  version: Count.meta({ description: 'Version of the job' }),
  readyToPour: z.boolean().meta({ description: 'All items are ticked and no hold is open' }),
  ticked: Count,
  total: Count,
  openHolds: z.array(OpenHold),
};

export const ChecklistItemAnswer = z.object(item).meta({ id: 'ChecklistItem' });
export type ChecklistItemAnswer = z.infer<typeof ChecklistItemAnswer>;

export const ChecklistAnswer = z
  .object({
    items: z.array(ChecklistItemAnswer),
    next: z.string().nullable().meta({ description: 'Cursor of the next page, null on the last' }),
    ...standing,
  })
  .meta({ id: 'Checklist' });
export type ChecklistAnswer = z.infer<typeof ChecklistAnswer>;

export const ChecklistQuery = PageQuery.extend({
  storey: z.string().min(1).max(200).optional().meta({ description: 'Items of this storey alone' }),
});
export type ChecklistQuery = z.infer<typeof ChecklistQuery>;

/** The item as it is now, and where the whole checklist stands. */
export const TickedAnswer = z.object({ ...item, ...standing }).meta({ id: 'TickedItem' });
export type TickedAnswer = z.infer<typeof TickedAnswer>;

export const TickBody = z
  .strictObject({ note: z.string().trim().min(1).max(2_000).optional() })
  .meta({ id: 'Tick' })
  .nullish()
  .transform((body) => body ?? {});
export type TickBody = z.infer<typeof TickBody>;

/** A form with a note and a photo; a JSON body has the note alone. */
export const TickForm = {
  required: false,
  description: 'A note, and in a form one photo (JPEG or PNG, at most 10 MiB)',
  schema: {
    type: 'object' as const,
    properties: { note: { type: 'string' as const }, photo: { type: 'string' as const, format: 'binary' } },
  },
};
