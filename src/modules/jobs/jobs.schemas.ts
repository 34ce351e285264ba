import { z } from 'zod';
import { Id, listOf } from '../contract/contract.schemas.js';

const Count = z.number().int().min(0).max(2_000_000_000);

export const JobState = z.enum(['queued', 'running', 'measured', 'ready-to-pour', 'failed']);
export type JobState = z.infer<typeof JobState>;

/** True where the revision in force has a measurement to show: the one place that says so. */
export const isMeasured = (state: JobState): boolean => state === 'measured' || state === 'ready-to-pour';

export const JobAnswer = z
  .object({
    id: Id,
    number: z.string().meta({ examples: ['J-000123'] }),
    name: z.string(),
    state: JobState,
    revision: Count.meta({ description: 'Revision of the schedule in force' }),
    version: Count.meta({ description: 'Version of the job, the `ETag` that If-Match names' }),
  })
  .meta({ id: 'Job' });
export type JobAnswer = z.infer<typeof JobAnswer>;

export const JobList = listOf('JobList', JobAnswer);

export const JobProgress = z
  .object({
    stage: z.string(),
    done: Count,
    total: Count,
  })
  .meta({ id: 'JobProgress' });
export type JobProgress = z.infer<typeof JobProgress>;

export const SubmitQuery = z.object({
  organisation: Id.optional().meta({ description: 'Whose job it is; only staff send it, and must' }),
});
export type SubmitQuery = z.infer<typeof SubmitQuery>;
