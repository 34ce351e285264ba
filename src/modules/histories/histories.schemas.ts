import { z } from 'zod';
import { Id, Instant, listOf } from '../contract/contract.schemas.js';

export const EventAnswer = z
  .object({
    id: Id,
    at: Instant,
    kind: z.string(),
    by: z.string().nullable(),
    role: z.enum(['contractor', 'support', 'sales', 'admin', 'system']),
    subject: z.object({ type: z.string(), id: Id }).meta({ id: 'EventSubject' }),
    data: z.record(z.string(), z.unknown()),
  })
  .meta({ id: 'HistoryEvent' });
export type EventAnswer = z.infer<typeof EventAnswer>;
export const EventList = listOf('HistoryEventList', EventAnswer);
