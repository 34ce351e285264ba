import { z } from 'zod';
import { SEVERITY, type FindingCode } from '../../domain/evidence/finding.js';
import { listOf } from '../contract/contract.schemas.js';

export const FindingAnswer = z
  .object({
    code: z.enum(Object.keys(SEVERITY) as [FindingCode, ...FindingCode[]]),
    severity: z.enum(['note', 'advise', 'hold']),
    storey: z.string().nullable(),
    wall: z.string().nullable(),
    course: z.number().int().min(0).max(1_000_000).nullable(),
    atMm: z.number().nullable(),
    numbers: z.record(z.string(), z.union([z.number(), z.string()])),
    source: z.string(),
  })
  .meta({ id: 'Finding' });
export type FindingAnswer = z.infer<typeof FindingAnswer>;

export const FindingList = listOf('FindingList', FindingAnswer);
