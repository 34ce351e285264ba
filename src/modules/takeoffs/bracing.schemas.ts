import { z } from 'zod';
import { listOf } from '../contract/contract.schemas.js';
import { FindingAnswer } from './findings.schemas.js';
import { TraceStep } from './takeoffs.schemas.js';

const Count = z.number().int().min(0).max(2_000_000_000);
const Force = z.number().nullable();

const BraceAnswer = z
  .object({
    atMm: z.number().meta({ description: "Axis station from the wall's own from; along the arc of a radius wall" }),
    reason: z.enum(['corner', 'hinged-corner', 'free-end', 'tee', 'opening', 'radius-wall', 'between']),
    widthMm: z.number().meta({ description: 'Length of wall that the brace is made for' }),
    heightMm: z.number().meta({ description: "Of the forms at the brace, over the wall's base" }),
    axialKn: Force.meta({ description: 'Push and pull along the brace; null where the wind is outside the method' }),
    axialLb: Force,
    horizontalKn: Force,
    horizontalLb: Force,
    upliftKn: Force.meta({ description: 'What lifts the anchor' }),
    upliftLb: Force,
  })
  .meta({ id: 'Brace' });

const BracedWall = z.object({ mark: z.string(), braces: z.array(BraceAnswer) }).meta({ id: 'BracedWall' });

const BraceCase = z
  .object({
    forms: z.enum(['empty', 'filled']).meta({ description: 'Filled: until the concrete holds itself' }),
    topLoadKnPerM: Force.meta({ description: 'Lateral load along the top, at the brace that takes most' }),
    topLoadLbPerFt: Force,
    governs: z.enum(['wind', 'pressure', 'load', 'minimum-pressure', 'minimum-load', 'outside-method']),
  })
  .meta({ id: 'BraceCase' });

export const BracingAnswer = z
  .object({
    storey: z.string(),
    side: z.enum(['inside']).meta({ description: 'All braces of a storey stand on it' }),
    spacingMm: z.number().meta({ description: 'Furthest apart' }),
    count: Count,
    cases: z.array(BraceCase),
    walls: z.array(BracedWall),
    trace: z.array(TraceStep).meta({ description: 'Of the brace with the greatest axial force' }),
    source: z.string(),
    defaults: z.array(z.string()),
    notes: z.array(z.string()),
    findings: z.array(FindingAnswer),
  })
  .meta({ id: 'StoreyBracing' });
export type BracingAnswer = z.infer<typeof BracingAnswer>;
export const BracingList = listOf('BracingList', BracingAnswer);
