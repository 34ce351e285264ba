import { z } from 'zod';

const Row = z.record(z.string(), z.unknown());

export const ScheduleAnswer = z.object({
  format: z.literal('wallcourse/schedule@1'),
  name: z.string(),
  units: z.enum(['in', 'ft', 'mm', 'm']),
  dimensionsTo: z.enum(['foam-face', 'concrete-face', 'axis']),
  range: z.string(),
  storeys: z.array(Row),
  walls: z.array(Row),
  openings: z.array(Row),
  features: z.array(Row),
  site: Row.optional(),
  pour: Row.optional(),
  unknown: z.array(z.object({ sheet: z.string().nullable(), name: z.string() }).meta({ id: 'UnknownName' })).optional()
    .meta({ description: 'Columns or keys that nobody knew' }),
}).meta({ id: 'Schedule' });
export type ScheduleAnswer = z.infer<typeof ScheduleAnswer>;

/** The body of an upload, for the document only: what it holds is read in a thread. */
export const ScheduleUpload = {
  description: 'A wall schedule: JSON (`wallcourse/schedule@1`), or a form of CSV and XLSX parts called `files`',
  schema: {
    type: 'object' as const,
    properties: { files: { type: 'array' as const, items: { type: 'string' as const, format: 'binary' } } },
    additionalProperties: true,
  },
};
