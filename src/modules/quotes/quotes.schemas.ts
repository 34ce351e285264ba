import { z } from 'zod';
import { Id, listOf, PlainDate } from '../contract/contract.schemas.js';
import { FindingAnswer } from '../takeoffs/findings.schemas.js';

const Minor = z.number().int();
const Count = z.number().int().min(0).max(2_000_000_000);

export const QuoteState = z.enum(['draft', 'issued', 'accepted', 'declined', 'expired', 'withdrawn', 'superseded']);
export type QuoteState = z.infer<typeof QuoteState>;

/** How a line came to its amount. */
const LinePrice = {
  unitPrice: z.string().meta({ description: 'Decimal text, as in the price list' }),
  listPrice: z.string().meta({ description: 'What everybody pays for one, below every break' }),
  break: z
    .object({ from: Count })
    .meta({ id: 'ReachedBreak', description: 'The quantity break that gave the unit price' })
    .nullable(),
  audience: z.enum(['list', 'tier', 'customer']),
  discountRate: z.string().nullable(),
  looseQuantity: Count.meta({ description: 'Of the quantity, those beyond whole bundles' }),
  surchargeRate: z.string().nullable().meta({ description: 'By which loose ones cost more' }),
  amountMinor: Minor.meta({
    description: '(quantity + surchargeRate * looseQuantity) * unitPrice * (1 - discountRate), rounded once, half to even',
  }),
};

const QuoteLine = z
  .object({
    n: Count,
    kind: z.enum(['unit', 'spare', 'material', 'minimum', 'freight']),
    storey: z.string().nullable().meta({ description: 'Of a delivery; null where the line belongs to the whole job' }),
    group: z.string(),
    sku: z.string(),
    text: z.string(),
    quantity: z.number(),
    unit: z.enum(['each', 'ft', 'pack']),
    ...LinePrice,
  })
  .meta({ id: 'QuoteLine' });

const TaxEntry = z
  .object({ name: z.string(), place: z.string(), rate: z.string(), baseMinor: Minor, amountMinor: Minor })
  .meta({ id: 'TaxEntry', description: 'One tax: its rate on the lines that bear it, rounded once' });

const TruckLoad = z
  .object({
    n: Count,
    volumeM3: z.number(),
    pieces: z.number(),
    weightKg: z.number(),
    fill: z.number().meta({ description: 'The fullest of the measures of the truck, 0 to 1' }),
    contents: z.array(z.object({ line: Count, sku: z.string(), quantity: z.number() }).meta({ id: 'LoadedGoods' })),
  })
  .meta({ id: 'TruckLoad', description: 'What one truck carries, in laying order' });

const QuoteFreight = z
  .object({
    zone: z.string(),
    split: z.enum(['job', 'storey']),
    truck: z.object({ volumeM3: z.string().nullable(), pieces: Count.nullable(), weightKg: z.string().nullable() }).meta({ id: 'TruckSize' }),
    perTruck: z.string(),
    perDelivery: z.string().nullable(),
    deliveries: z.array(z.object({ storey: z.string().nullable(), trucks: Count, loads: z.array(TruckLoad) }).meta({ id: 'FreightDelivery' })),
    notMeasured: z.array(z.string()).meta({ description: 'Goods whose volume or weight the price list does not state' }),
  })
  .meta({ id: 'QuoteFreight' });

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
      .object({
        place: z.string().nullable(),
        rate: z.string().nullable().meta({ description: 'Of several taxes the sum of their rates' }),
        reason: z.string().nullable(),
        certificate: z.string().optional().meta({ description: 'Of an exempt customer' }),
      })
      .meta({ id: 'QuoteTax' }),
    taxes: z.array(TaxEntry),
    taxMinor: Minor,
    totalMinor: Minor,
    freight: QuoteFreight.nullable(),
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

const BrokenBundle = z
  .object({
    surchargeRate: z.string(),
    needed: z.number(),
    loose: z.number(),
    looseCost: z.string(),
    whole: z.number(),
    wholeCost: z.string(),
    sold: z.enum(['whole', 'loose']),
  })
  .meta({ id: 'BrokenBundle', description: 'A whole bundle more weighed against loose units at their surcharge, of all lines of the sku' });

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
    broken: BrokenBundle.optional(),
  })
  .meta({ id: 'Selling' });

export const BecauseAnswer = z
  .object({
    n: Count,
    sku: z.string(),
    text: z.string(),
    quantity: z.number(),
    unit: z.enum(['each', 'ft', 'pack']),
    ...LinePrice,
    because: z.array(LineCause),
    selling: Selling,
  })
  .meta({ id: 'LineBecause' });
export type BecauseAnswer = z.infer<typeof BecauseAnswer>;

export const LineNumber = z.coerce.number().int().min(1).max(1_000_000);
