import { z } from 'zod';
import { Id, listOf, PlainDate } from '../contract/contract.schemas.js';
import { FindingAnswer } from '../takeoffs/findings.schemas.js';

const Minor = z.number().int();
const Count = z.number().int().min(0).max(2_000_000_000);

export const QuoteState = z.enum(['draft', 'issued', 'accepted', 'declined', 'withdrawn']);
export type QuoteState = z.infer<typeof QuoteState>;

const QuoteLine = z
  .object({
    n: Count,
    sku: z.string(),
    text: z.string(),
    quantity: z.number(),
    unit: z.enum(['each', 'ft', 'pack']),
    unitPrice: z.string().meta({ description: 'Decimal text, as in the price list' }),
    amountMinor: Minor,
  })
  .meta({ id: 'QuoteLine' });

export const OpenHold = z.object({ ticket: Id, number: z.string(), question: z.string() }).meta({ id: 'OpenHold' });

export const QuoteAnswer = z
  .object({
    id: Id,
    number: z.string().meta({ examples: ['Q-000045'] }),
    revision: Count,
    state: QuoteState,
    version: Count,
    job: Id,
    jobRevision: Count,
    date: PlainDate,
    validUntil: PlainDate,
    currency: z.string(),
    lines: z.array(QuoteLine),
    subtotalMinor: Minor,
    tax: z
      .object({ place: z.string().nullable(), rate: z.string().nullable(), reason: z.string().nullable() })
      .meta({ id: 'QuoteTax' }),
    taxMinor: Minor,
    totalMinor: Minor,
    openHolds: z.array(OpenHold),
    scope: z.array(
      z
        .object({ item: z.string(), status: z.enum(['included', 'optional', 'by others']), note: z.string() })
        .meta({ id: 'ScopeItem' }),
    ),
    conditions: z.array(
      z
        .object({ severity: z.enum(['note', 'advise', 'hold']), text: z.string(), finding: FindingAnswer })
        .meta({ id: 'QuoteCondition' }),
    ),
    cautions: z.array(z.string()),
  })
  .meta({ id: 'Quote' });
export type QuoteAnswer = z.infer<typeof QuoteAnswer>;

export const QuoteList = listOf('QuoteList', QuoteAnswer);

const LineCause = z
  .object({
    rule: z.string(),
    storey: z.string().nullable(),
    wall: z.string().nullable(),
    course: z.number().int().min(0).max(1_000_000).nullable(),
    quantity: z.number(),
    atMm: z.array(z.number()).meta({ description: "Axis stations from the wall's own from, in order; empty for units and spares" }),
  })
  .meta({ id: 'LineCause' });

const BarCutting = z
  .object({
    stockMm: z.number(),
    pieces: z.array(z.object({ lengthMm: z.number(), count: Count }).meta({ id: 'BarPiece' })),
    lowerBound: Count,
  })
  .meta({ id: 'BarCutting', description: 'Pieces that each have to be in one length, cut from whole stock bars' });

const Selling = z
  .object({
    needed: z.number(),
    neededUnit: z.enum(['each', 'ft']),
    pack: z.number().nullable(),
    covered: z.number(),
    cutting: BarCutting.optional(),
    beforeBundling: z.number(),
    bundle: z.number().nullable(),
    afterBundling: z.number(),
  })
  .meta({ id: 'Selling' });

export const BecauseAnswer = z
  .object({
    n: Count,
    sku: z.string(),
    text: z.string(),
    quantity: z.number(),
    unit: z.enum(['each', 'ft', 'pack']),
    because: z.array(LineCause),
    selling: Selling,
  })
  .meta({ id: 'LineBecause' });
export type BecauseAnswer = z.infer<typeof BecauseAnswer>;

export const LineNumber = z.coerce.number().int().min(1).max(1_000_000);
