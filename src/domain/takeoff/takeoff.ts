import type { Finding } from '../evidence/finding.js';
import type { Hand, UnitKind } from '../range/range.js';
import type { Nm } from '../quantity/length.js';
import type { LaidJob } from './laid.js';

/** What the take-off stage hands on: the laid job, the count of units, the concrete, and what it could not settle. */
export interface Takeoff {
  readonly laid: LaidJob;
  readonly units: readonly UnitCount[];
  readonly cuts: readonly CutLine[];
  readonly bondBreaks: readonly BondBreak[];
  readonly concrete: readonly StoreyConcrete[];
  readonly findings: readonly Finding[];
}

export interface UnitCount {
  readonly sku: string;
  readonly kind: UnitKind;
  readonly core: string;
  readonly hand: Hand | null;
  /** Physical pieces laid. */
  readonly pieces: number;
  /** Units to buy, spares not included. */
  readonly bought: number;
  readonly spare: number;
  /** No cutting plan can need fewer. */
  readonly lowerBound: number;
  readonly because: readonly Because[];
}

/** Where a quantity comes from; no storey where it concerns the whole job. */
export interface Because {
  readonly rule: string;
  readonly storey: string | null;
  readonly wall: string | null;
  readonly course: number | null;
  readonly quantity: number;
  /**
   * Where along the wall: axis stations from the user's own `from` [mm], sorted, each once. Of what runs along the wall (beads, straps,
   * boards, masks) the ends of its stretches. Absent for units, whose stations are those of their pieces.
   */
  readonly atMm?: readonly number[];
}

/** One form of the cut list: what is sawn from it, where each part goes. `turned`: sawn upside down beside the slope of its neighbour. */
export interface CutLine {
  readonly storey: string;
  readonly sku: string;
  /** Number of the form within the sku and storey. */
  readonly form: number;
  readonly parts: readonly { readonly piece: string; readonly offset: Nm; readonly length: Nm; readonly wall: string; readonly course: number; readonly turned: boolean }[];
  readonly offcut: Nm;
}

/** Two head joints of successive courses closer than the range's stagger, with the cause. */
export interface BondBreak {
  readonly storey: string;
  readonly wall: string;
  readonly course: number;
  readonly at: Nm;
  readonly distance: Nm;
  readonly cause: 'corner-legs' | 'tee' | 'short-run' | 'height-step' | 'opening' | 'ledge' | 'taper-top' | 'no-placement';
}

export interface StoreyConcrete {
  readonly storey: string;
  readonly nm3: bigint;
  readonly orderYd3: number;
}
