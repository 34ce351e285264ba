import type { Material, MaterialKind } from '../range/range.js';
import type { Because } from '../takeoff/takeoff.js';

/** One material over the whole job: the sum of what the rules consume, in feet or pieces, before packs are rounded. */
export interface MaterialLine {
  readonly sku: string;
  readonly kind: MaterialKind;
  readonly size: string;
  /** Sum of `because`, exact to the nanometre where the unit is feet. */
  readonly quantity: number;
  readonly unit: 'ft' | 'each';
  /** What the supplier packs together; whole packs are counted once per job, by the pricing. */
  readonly pack: Material['pack'];
  /** One entry per rule, storey, wall and course, in the line's unit. */
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
