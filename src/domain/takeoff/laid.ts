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
  /** The curve of a radius wall; stations then run along the arc of its axis. */
  readonly arc: LaidArc | null;
  /** Its courses follow those of the stack and are numbered on. */
  readonly gable: LaidGable | null;
  readonly ledges: readonly LaidLedge[];
  readonly taper: LaidTaper | null;
  /** Narrower or wider cores further up, lowest first; `core` and `thickness` are those at the foot. */
  readonly coreChanges: readonly LaidCoreChange[];
  /** Walls of the storey above that stand on this one. */
  readonly carries: readonly LaidCarried[];
  /** Ids of the junctions at the user's own start and end. */
  readonly startJunction: string;
  readonly endJunction: string;
  /** Concrete [nm³] after openings; face area of one side [nm²], gross and of openings. */
  readonly concreteNm3: bigint;
  readonly faceNm2: bigint;
  readonly openingNm2: bigint;
}

/** A radius wall. Radii are exact in the schedule's dimension line and rounded to whole nanometres here. */
export interface LaidArc {
  /** As the user draws from→to. */
  readonly turns: 'left' | 'right';
  readonly centre: { readonly x: number; readonly y: number };
  readonly axisRadius: Nm;
  /** Of the foam face on the concave side, where the chords touch. */
  readonly concaveRadius: Nm;
  /** Length of a whole chord and of the last one on the concave face; null where no chord fits the allowed gap. */
  readonly chord: Nm | null;
  readonly lastChord: Nm | null;
  /** Chords of a course without openings. */
  readonly chords: number;
  /** Wedge left at the convex face between two whole chords. */
  readonly gap: Nm;
  /** Band round the convex face, each course. */
  readonly bandLength: Nm;
}

/** A sloped top. `peakAt` and the slopes' ends are axis stations; heights stand above the stack's top. */
export interface LaidGable {
  readonly rise: Nm;
  readonly peakAt: Nm;
  /** Courses above the stack's. */
  readonly courses: number;
  /** One slope, or two; from the lower end's station to the higher one's in order of station. */
  readonly slopes: readonly LaidSlope[];
}

export interface LaidSlope {
  readonly from: Nm;
  readonly to: Nm;
  readonly rises: 'with-stations' | 'against-stations';
  /** Along the slope, one face. */
  readonly length: Nm;
  readonly degrees: number;
  /** Between the panels, what a cap covers: length × core [mm²]. */
  readonly capMm2: number;
}

/** A ledge in one course of one wall. */
export interface LaidLedge {
  readonly face: 'outside' | 'inside';
  /** Asked bearing surface, and the course line it is laid at: the top of `course`. */
  readonly asked: Nm;
  readonly bearing: Nm;
  readonly course: number;
  readonly projection: Nm;
  /** Stretches of ledge forms along the axis, openings out; past the node to the mitre at a corner. */
  readonly spans: readonly { readonly from: Nm; readonly to: Nm }[];
  /** Whether the ledge meets another wall's in a mitre, at the user's own start and end. */
  readonly mitreStart: boolean;
  readonly mitreEnd: boolean;
  /** Beyond the wall's own core; part of the wall's `concreteNm3` [mm³]. */
  readonly concreteMm3: number;
}

/** A top course whose core widens upward. */
export interface LaidTaper {
  readonly faces: 'one' | 'both';
  readonly course: number;
  readonly seatGain: Nm;
  readonly spans: readonly { readonly from: Nm; readonly to: Nm }[];
  /** Beyond the wall's own core; part of the wall's `concreteNm3` [mm³]. */
  readonly concreteMm3: number;
  /** Faces leaning over the concrete, in plan: what uplift acts on [mm²]. */
  readonly upliftMm2: number;
}

export interface LaidCoreChange {
  /** First course on the other core, and the height of its bed. */
  readonly course: number;
  readonly at: Nm;
  readonly core: Core;
  readonly flush: 'outside' | 'inside' | 'centre';
  /** Bare concrete beside the upper form's panel on each side of the wall, not below 0 (decision 24). */
  readonly seatOutside: Nm;
  readonly seatInside: Nm;
  /** The upper axis lies this far towards the inside of the lower one; negative towards the outside. */
  readonly axisShift: Nm;
}

/** A stretch of a wall's top on which a wall of the storey above stands, in axis stations of the lower one. */
export interface LaidCarried {
  readonly storey: string;
  readonly wall: string;
  readonly from: Nm;
  readonly to: Nm;
  readonly core: string;
  /** Bare concrete beside the upper form's panel on each side of the lower wall, not below 0 (decision 24). */
  readonly seatOutside: Nm;
  readonly seatInside: Nm;
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
  /**
   * `seam` stands at one station in every course and is exempt from the bond, `chord` likewise; `seam-at-leg` is off the module
   * too but moves; `unit` is where a ledge or taper form meets a straight one.
   */
  readonly kind: 'module' | 'seam' | 'seam-at-leg' | 'leg' | 'unit' | 'chord';
}

export type PieceKind = 'straight' | 'corner' | 'corner-pair' | 'corner-hinged' | 'end-closure' | 'ledge' | 'taper-top';

export type PieceReason =
  | 'full' | 'starter' | 'closure' | 'seam' | 'single' | 'leg-long' | 'leg-short' | 'end' | 'jamb' | 'chord';

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
  /** Left standing at its two ends where its top is cut to a slope; a peak between them stands at `peak`. Null where it is level. */
  readonly slope: { readonly fromHeight: Nm; readonly toHeight: Nm; readonly peak: { readonly at: Nm; readonly height: Nm } | null } | null;
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
