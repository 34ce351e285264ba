import { z } from 'zod';
import { Id, listOf, PlainDate } from '../contract/contract.schemas.js';

export const PriceListAnswer = z
  .object({
    id: Id,
    code: z.string(),
    version: z.number().int().min(1).max(2_000_000_000),
    currency: z.string(),
    inForceFrom: PlainDate,
    validDays: z.number().int().min(0).max(10_000),
  })
  .meta({ id: 'PriceList' });
export type PriceListAnswer = z.infer<typeof PriceListAnswer>;
export const PriceListList = listOf('PriceListList', PriceListAnswer);

export const PriceListDocument = z
  .looseObject({
    format: z.literal('wallcourse/prices@1'),
  })
  .meta({ id: 'PriceListDocument', description: 'A price list as the supplier writes it; read and checked as a whole' });
export type PriceListDocument = z.infer<typeof PriceListDocument>;
