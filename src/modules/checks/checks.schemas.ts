import { z } from 'zod';
import { FindingAnswer } from '../takeoffs/findings.schemas.js';
import { TraceStep } from '../takeoffs/takeoffs.schemas.js';

const Value = z.object({ value: z.number(), unit: z.string() }).meta({ id: 'Quantity' });
const InBothUnits = z.object({ us: Value, si: Value }).meta({ id: 'InBothUnits' });

const Row = z.record(z.string(), z.union([InBothUnits, z.number(), z.string(), z.array(InBothUnits)])).meta({ id: 'CalculatorRow' });

export const CalculatorAnswer = z
  .object({
    result: z.record(z.string(), z.union([InBothUnits, z.number(), z.string(), z.array(InBothUnits), z.array(Row)])),
    governs: z.string(),
    trace: z.array(TraceStep),
    source: z.string(),
    defaults: z.array(z.string()),
    notes: z.array(z.string()),
    findings: z.array(FindingAnswer),
  })
  .meta({ id: 'CalculatorAnswer' });
export type CalculatorAnswer = z.infer<typeof CalculatorAnswer>;

export const CalculatorBody = z
  .record(z.string().max(100), z.unknown())
  .meta({
    id: 'CalculatorInput',
    description: 'Quantities as text with their units: `"height": "8 ft"`, `"rise": "1.2 m/h"`, `"concrete": "70 F"`',
  });
export type CalculatorBody = z.infer<typeof CalculatorBody>;
