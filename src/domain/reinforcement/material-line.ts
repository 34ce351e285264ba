import type { Nm } from '../quantity/length.js';
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
  /**
   * Bars sold by length: every piece that has to be in one length, longest first. A pack of such a bar is one stock bar, and whole
   * stock bars are cut into the pieces once per job, by the pricing. Absent for what is used by total length (tape, strap, boards).
   */
  readonly pieces?: readonly BarPiece[];
  /** One entry per rule, storey, wall and course, in the line's unit. */
  readonly because: readonly Because[];
}

export interface BarPiece {
  readonly length: Nm;
  readonly count: number;
}

/** What the crew does, by rule and place. */
export interface CrewInstruction {
  readonly rule: string;
  readonly storey: string;
  readonly wall: string | null;
  readonly course: number | null;
  readonly text: string;
}
