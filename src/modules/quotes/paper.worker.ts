import { quotePdf, storeyPlan, wallElevation, type QuotePdfInput, type SheetHeader } from '../../domain/drawing/index.js';
import { readRange } from '../../domain/range/read-range.js';
import type { LengthUnit } from '../../domain/schedule/schedule.js';
import { shippedFonts } from '../drawings/shipped-fonts.js';
import { unstored, type StoredMeasurement } from '../takeoffs/stored-measurement.js';

export interface PaperInput extends Omit<QuotePdfInput, 'plans' | 'elevations' | 'createdAt'> {
  /** What is drawn behind the figures; null where it would fill more paper than anyone turns over. */
  readonly measurement: StoredMeasurement | null;
  readonly range: unknown;
  readonly units: LengthUnit;
  readonly header: SheetHeader;
  /** RFC 3339. */
  readonly createdAt: string;
}

/** The quote as a PDF, with a plan of every storey and an elevation of every wall. */
export function paper({ measurement, range, units, header, createdAt, ...input }: PaperInput): Promise<Uint8Array> {
  const drawings = measurement ? drawingsOf(measurement, range, units, header) : { plans: [], elevations: [] };
  return quotePdf({ ...input, ...drawings, createdAt: new Date(createdAt) }, shippedFonts());
}

function drawingsOf(
  measurement: StoredMeasurement,
  document: unknown,
  units: LengthUnit,
  header: SheetHeader,
): Pick<QuotePdfInput, 'plans' | 'elevations'> {
  const range = readRange(document);
  if (!range.ok) throw new Error(`a stored range is not one: ${JSON.stringify(range.error)}`);
  const { takeoff: { laid: { storeys } }, bracing } = unstored(measurement);
  // a measurement stored before there was a bracing plan has none
  const braced = new Map((bracing as typeof bracing | undefined)?.map((plan) => [plan.storey, plan]));
  return {
    plans: storeys.map((storey) => storeyPlan(storey, range.value, units, header, braced.get(storey.id) ?? null)),
    elevations: storeys.flatMap((storey) =>
      storey.walls.map((wall) => wallElevation(wall, storey, range.value, units, header, braced.get(storey.id) ?? null)),
    ),
  };
}
