import { z } from 'zod';
import { REFUSALS, type RefusalCode } from '../../platform/refusals/refusal-codes.js';

const ErrorPlace = z
  .object({
    sheet: z.string().nullable(),
    row: z.number().int().nullable(),
    column: z.string().nullable(),
    pointer: z.string().nullable(),
    read: z.string(),
    fix: z.string(),
  })
  .meta({ id: 'InputError' });

export const ProblemAnswer = z
  .looseObject({
    type: z.string().meta({ description: '`urn:wallcourse:<code>`' }),
    code: z.enum(Object.keys(REFUSALS) as [RefusalCode, ...RefusalCode[]]),
    title: z.string(),
    status: z.number().int(),
    detail: z.string(),
    errors: z.array(ErrorPlace),
  })
  .meta({ id: 'Problem' });
