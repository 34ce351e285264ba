import type { Core, Hand } from '../range/range.js';
import type { Nm } from '../quantity/length.js';

/**
 * The laid job: what the take-off knows and every later stage reads.
 *
 * Every station runs along a wall's axis from the node of the user's own `from`, whatever direction the layout used,
 * so rules, drawings and answers never turn anything round again. Lengths are whole nanometres.
 */
export interface LaidJob {
  readonly storeys: readonly LaidStorey[];
}

export interface LaidStorey {
  readonly id: string;
  readonly grade: 'above' | 'below';
  readonly storeyAbove: boolean;
  /** Stands on a footing, not on a storey below. */
  readonly onFooting: boolean;
  readonly walls: readonly LaidWall[];
  readonly junctions: readonly Junction[];
}

export interface LaidWall {
  readonly mark: string;
  readonly storey: string;
  readonly core: Core;
  /** Over both foam faces: core + 2 panels. */
  readonly thickness: Nm;
  readonly base: Nm;
  /** Asked height; the stack's is `stack.height`. */
  readonly askedHeight: Nm;
  /** Node to node along the axis. */
  readonly length: Nm;
  /** Add to an axis station to get the station on the schedule's dimension line. */
  readonly startOffset: Nm;
  /** Length on the schedule's dimension line, as drawn. */
  readonly dimensionLength: Nm;
  /** A branch's forms start at the through wall's panel face; 0 elsewhere. */
  readonly trimStart: Nm;
  readonly trimEnd: Nm;
  /** Side of from→to on which the outside lies; `left` where the user drew the wall the other way round. */
  readonly outside: 'left' | 'right';
  /** Axis node positions [nm, may be fractional], for drawings. */
  readonly axisFrom: { readonly x: number; readonly y: number };
  readonly axisTo: { readonly x: number; readonly y: number };
  readonly stack: Stack;
  readonly alternatives: readonly Stack[];
  readonly courses: readonly LaidCourse[];
  readonly strips: readonly LaidStrip[];
  readonly openings: readonly LaidOpening[];
  /** Ids of the junctions at the user's own start and end. */
  readonly startJunction: string;
  readonly endJunction: string;
  /** Concrete [nm³] after openings; face area of one side [nm²], gross and of openings. */
  readonly concreteNm3: bigint;
  readonly faceNm2: bigint;
  readonly openingNm2: bigint;
}

export interface Stack {
  readonly courses: number;
  readonly strips: number;
  /** Height of the ripped top course (counted in `courses`), null where none is ripped. */
  readonly ripped: Nm | null;
  readonly height: Nm;
  /** Stack height less asked height. */
  readonly deviation: Nm;
}

export interface LaidCourse {
  /** 1 at the bottom of the wall. */
  readonly n: number;
  /** Above the wall's base. */
  readonly bottom: Nm;
  readonly height: Nm;
  readonly ripped: boolean;
  readonly top: boolean;
  /** Ends of the forms in this course; differs from the wall's trims where a lower neighbour leaves the end free. */
  readonly from: Nm;
  readonly to: Nm;
  /** Spans taken out by openings of the full course height. */
  readonly voids: readonly { readonly from: Nm; readonly to: Nm; readonly opening: string }[];
  /** In order of station; tile [from, to] but for the voids. Closures (`inside`) are listed after them and do not tile. */
  readonly pieces: readonly Piece[];
  /** Joints between two neighbouring pieces of this course, at clipped marks none. */
  readonly headJoints: readonly HeadJoint[];
}

export interface HeadJoint {
  readonly at: Nm;
  /** `seam` stands at one station in every course and is exempt from the bond; `seam-at-leg` is off the module too but moves. */
  readonly kind: 'module' | 'seam' | 'seam-at-leg' | 'leg';
}

export type PieceKind = 'straight' | 'corner' | 'corner-pair' | 'corner-hinged' | 'end-closure';

export type PieceReason =
  | 'full' | 'starter' | 'closure' | 'seam' | 'single' | 'leg-long' | 'leg-short' | 'end' | 'jamb';

export interface Piece {
  /** One id for one physical piece, in the job; a form across a mark and a corner unit appear in two walls with the same id. */
  readonly id: string;
  readonly from: Nm;
  readonly to: Nm;
  readonly kind: PieceKind;
  readonly sku: string;
  readonly hand: Hand | null;
  readonly why: PieceReason;
  /** Sits within another piece's length and does not count in the tiling (end closures). */
  readonly inside: boolean;
  /** The wall this physical piece is counted in; false for the other half of a shared one. */
  readonly counted: boolean;
  /** Junction of a corner unit. */
  readonly junction: string | null;
  /** Length of the whole physical piece (a form across a mark is longer than its clipped span). */
  readonly pieceLength: Nm;
  /** Which ends were sawn. */
  readonly cutEnds: 0 | 1 | 2;
  /** Webs of the piece as stations along the wall; null for corner units and closures. */
  readonly webs: readonly Nm[] | null;
  readonly notches: readonly Notch[];
}

/** What an opening takes out of a piece that is laid through it. */
export interface Notch {
  readonly opening: string;
  readonly from: Nm;
  readonly to: Nm;
  /** Above the course's bottom. */
  readonly bottom: Nm;
  readonly top: Nm;
}

export interface LaidStrip {
  /** The strip lies on this course. */
  readonly afterCourse: number;
  readonly bottom: Nm;
  readonly height: Nm;
  /** Runs of the strip along the axis, openings out; at a corner to the outer apex, so it may pass the node. */
  readonly runs: readonly { readonly from: Nm; readonly to: Nm }[];
  readonly sku: string;
  readonly pieces: readonly { readonly length: Nm }[];
}

export interface LaidOpening {
  readonly mark: string;
  /** Hole in the concrete along the axis. */
  readonly from: Nm;
  readonly to: Nm;
  readonly sill: Nm;
  readonly head: Nm;
  readonly lining: 'buck' | 'end-closure';
  /** Where the forms stop. */
  readonly formsFrom: Nm;
  readonly formsTo: Nm;
}

export type JunctionKind = 'free-end' | 'straight' | 'corner' | 'tee' | 'crossing' | 'unsettled';

export interface Junction {
  /** `J1`, `J2` … in the storey's order, prefixed by the storey: `S1-J3`. */
  readonly id: string;
  readonly kind: JunctionKind;
  /** Degrees, signed: + to the left in walking order; the angle between through wall and branch at a tee; 0 else. */
  readonly turn: number;
  /** Arriving first, then leaving; at a tee the through wall (one or two marks) first and the branch last. */
  readonly walls: readonly string[];
  /** Corner unit sku without hand, null where none is made or needed. */
  readonly sku: string | null;
  readonly unit: 'corner' | 'corner-pair' | 'corner-hinged' | null;
  readonly at: { readonly x: number; readonly y: number };
  /** Course numbers (of the first wall) in which the junction stands. */
  readonly courses: readonly number[];
  /** Tee: the through wall whose panel is cut, the cut-out along its axis, and the side of from→to the branch stands on. */
  readonly tee: { readonly through: string; readonly branch: string; readonly cutFrom: Nm; readonly cutTo: Nm; readonly side: 'left' | 'right' } | null;
  /** Corner: which unit stands in each course. */
  readonly units: readonly { readonly course: number; readonly hand: Hand; readonly sku: string; readonly piece: string }[];
}
