import { z } from 'zod';

const Row = z.record(z.string(), z.unknown());

const Element = z.object({ globalId: z.string(), kind: z.string(), name: z.string() });

export const ScheduleAnswer = z
  .object({
    format: z.literal('wallcourse/schedule@1'),
    name: z.string(),
    units: z.enum(['in', 'ft', 'mm', 'm']),
    dimensionsTo: z.enum(['foam-face', 'concrete-face', 'axis']),
    range: z.string(),
    offcuts: z.enum(['storey', 'job']).optional(),
    storeys: z.array(Row),
    walls: z.array(Row),
    openings: z.array(Row),
    features: z.array(Row),
    site: Row.optional(),
    pour: Row.optional(),
    unknown: z
      .array(z.object({ sheet: z.string().nullable(), name: z.string() }).meta({ id: 'UnknownName' }))
      .optional()
      .meta({ description: 'Columns or keys that nobody knew' }),
    skipped: z
      .array(Element.extend({ reason: z.string() }).meta({ id: 'SkippedElement' }))
      .optional()
      .meta({ description: 'Elements of a building model that are not in the schedule, and why' }),
    noted: z
      .array(Element.extend({ note: z.string() }).meta({ id: 'ElementNote' }))
      .optional()
      .meta({ description: 'What was done with elements of a building model: ends moved, cuts not read' }),
  })
  .meta({ id: 'Schedule' });
export type ScheduleAnswer = z.infer<typeof ScheduleAnswer>;

const Length = z
  .union([z.number(), z.string()])
  .meta({ id: 'Length', description: '`12\'-6 1/2"`, `3.81 m`, `3810 mm`, or a bare number in the unit of the document' });
const Point = z.tuple([Length, Length]);
const Joint = z
  .looseObject({ joint: z.enum(['corner', 'tee', 'free']) })
  .meta({ id: 'DeclaredJoint', description: 'corner: turn (+ left, - right) and with {wall, end}. tee: on, at, side. free' });

/** A wall schedule as it is written, for the document only: what is sent is read in a thread. */
export const ScheduleIn = z
  .looseObject({
    format: z.literal('wallcourse/schedule@1'),
    name: z.string().max(200),
    units: z.enum(['in', 'ft', 'mm', 'm']),
    dimensionsTo: z.enum(['foam-face', 'concrete-face', 'axis']).optional(),
    range: z.string().optional(),
    offcuts: z.enum(['storey', 'job']).optional().meta({ description: 'What an offcut may serve; storey where absent' }),
    storeys: z.array(
      z.looseObject({
        id: z.string(),
        height: Length,
        grade: z.enum(['above', 'below']).optional(),
        storeyAbove: z.boolean().optional(),
        closed: z.boolean().optional(),
        on: z.string().optional(),
        dead: z.string().optional().meta({ description: 'Dead load of floors and roof on the top of each wall, not factored, such as 400 lb/ft' }),
        live: z.string().optional(),
        snow: z.string().optional(),
      }),
    ),
    walls: z.array(
      z.looseObject({
        mark: z.string(),
        storey: z.string().optional(),
        core: z.string(),
        from: Point.optional(),
        to: Point.optional(),
        length: Length.optional(),
        height: Length.optional(),
        base: Length.optional(),
        start: Joint.optional(),
        end: Joint.optional(),
      }),
    ),
    openings: z
      .array(
        z.looseObject({
          mark: z.string(),
          wall: z.string(),
          at: Length,
          sill: Length,
          width: Length,
          height: Length,
          lining: z.enum(['buck', 'end-closure']).optional(),
          measured: z.enum(['concrete', 'rough']).optional(),
        }),
      )
      .optional(),
    features: z
      .array(z.looseObject({ kind: z.enum(['ledge', 'taper-top', 'gable', 'core-change']), wall: z.string() }))
      .optional(),
    site: Row.optional(),
    pour: Row.optional(),
  })
  .meta({ id: 'ScheduleIn' });

/** A form of CSV and XLSX parts, or of one JSON part. */
export const ScheduleUpload = {
  description: 'A wall schedule: JSON (`wallcourse/schedule@1`), or a form of JSON, CSV, XLSX or IFC parts called `files`',
  schema: {
    type: 'object' as const,
    required: ['files'],
    properties: { files: { type: 'array' as const, items: { type: 'string' as const, format: 'binary' } } },
  },
};
