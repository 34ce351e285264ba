import { z } from 'zod';
import { Id, Instant, listOf, PageQuery } from '../contract/contract.schemas.js';
import { FindingAnswer } from '../takeoffs/findings.schemas.js';

export const TicketState = z.enum(['open', 'claimed', 'answered', 'closed']);
export type TicketState = z.infer<typeof TicketState>;

const TicketMessage = z
  .object({
    at: Instant,
    by: z.string(),
    role: z.enum(['contractor', 'support', 'sales', 'admin', 'system']),
    kind: z.enum(['answer', 'comment', 'note', 'opened']),
    text: z.string(),
  })
  .meta({ id: 'TicketMessage' });

export const TicketAnswer = z
  .object({
    id: Id,
    number: z.string().meta({ examples: ['T-000007'] }),
    job: Id,
    question: z.string(),
    severity: z.enum(['advise', 'hold']),
    state: TicketState,
    assignee: z.string().nullable(),
    version: z.number().int().min(1).max(2_000_000_000),
    findings: z.array(FindingAnswer),
    messages: z.array(TicketMessage),
  })
  .meta({ id: 'Ticket' });
export type TicketAnswer = z.infer<typeof TicketAnswer>;

export const TicketList = listOf('TicketList', TicketAnswer);

export const TicketQuery = PageQuery.extend({
  state: TicketState.optional(),
  job: Id.optional(),
});
export type TicketQuery = z.infer<typeof TicketQuery>;

export const ReplyBody = z
  .strictObject({
    text: z.string().trim().min(1).max(10_000),
  })
  .meta({ id: 'Reply' });
export type ReplyBody = z.infer<typeof ReplyBody>;

export const CloseBody = z
  .strictObject({
    text: z.string().trim().min(1).max(10_000).optional(),
  })
  .meta({ id: 'TicketMove' })
  .nullish()
  .transform((body) => body ?? {});
export type CloseBody = z.infer<typeof CloseBody>;
