import { z } from 'zod';
import { Id, listOf, PlainDate } from '../contract/contract.schemas.js';

export const RangeAnswer = z
  .object({
    id: Id,
    code: z.string(),
    version: z.number().int().min(1).max(2_000_000_000),
    name: z.string(),
    inForceFrom: PlainDate,
  })
  .meta({ id: 'Range' });
export type RangeAnswer = z.infer<typeof RangeAnswer>;
export const RangeList = listOf('RangeList', RangeAnswer);

export const RangeDocument = z
  .looseObject({
    format: z.literal('wallcourse/range@1'),
  })
  .meta({ id: 'RangeDocument', description: 'A form range as the supplier writes it; read and checked as a whole' });
export type RangeDocument = z.infer<typeof RangeDocument>;
