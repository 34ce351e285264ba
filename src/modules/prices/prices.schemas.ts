import { z } from 'zod';
import { PRICE_SHEETS } from '../../domain/quote/price-list-tables/sheet-columns.js';
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

export const PriceListQuery = z.object({
  sheet: z.enum(PRICE_SHEETS).default('items').meta({ description: 'The sheet that is answered as CSV' }),
});
export type PriceListQuery = z.infer<typeof PriceListQuery>;

/** A form of CSV and XLSX parts, or of one JSON part. */
export const PriceListUpload = {
  description: 'A price list: JSON (`wallcourse/prices@1`), or a form of JSON, CSV or XLSX parts called `files`, which make one list together',
  schema: {
    type: 'object' as const,
    required: ['files'],
    properties: { files: { type: 'array' as const, items: { type: 'string' as const, format: 'binary' } } },
  },
};
