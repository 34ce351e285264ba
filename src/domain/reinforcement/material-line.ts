import type { MaterialKind } from '../range/range.js';
import type { Because } from '../takeoff/takeoff.js';

/** One material over the whole job: the sum of what the rules consume, in feet or pieces, before packs are rounded. */
export interface MaterialLine {
  readonly sku: string;
  readonly kind: MaterialKind;
  readonly quantity: number;
  readonly unit: 'ft' | 'each';
  readonly because: readonly Because[];
}

/** What the crew does, by rule and place. */
export interface CrewInstruction {
  readonly rule: string;
  readonly storey: string;
  readonly wall: string | null;
  readonly course: number | null;
  readonly text: string;
}
