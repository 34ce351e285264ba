import type { Nm } from '../quantity/length.js';

/**
 * Neutral shapes: what a drawing consists of before anyone decides on SVG, PDF or DXF.
 *
 * Coordinates are nanometres of the model (the real wall), x to the right, y up, origin at the lower left of the sheet.
 * What belongs to the paper (text sizes, gaps) is held in model nanometres too: paper size × scale. Line weights alone are
 * paper sizes, kept with the layer. Shapes are painted in the order in which they are listed.
 */
export interface Drawing {
  /** Stable file stem: `wall-A`, `plan-S1`, `junction-S1-J3`. */
  readonly name: string;
  readonly title: string;
  /** Denominator: 48 of 1:48. */
  readonly scale: number;
  /** The scale as printed on the sheet. */
  readonly scaleText: string;
  readonly width: Nm;
  readonly height: Nm;
  readonly layers: readonly Layer[];
  readonly shapes: readonly Shape[];
  /** Shapes from this index on belong to the paper: frame, title block, legend and notes. Those before it are of the model. */
  readonly paperFrom: number;
}

export interface Layer {
  readonly name: string;
  /** Ink as `#rrggbb`. */
  readonly colour: string;
  /** Line weight on paper [nm]. */
  readonly weight: Nm;
  /** Dash and gap lengths on paper [nm], null for a full line. */
  readonly dash: readonly Nm[] | null;
}

export interface DrawingPoint {
  readonly x: Nm;
  readonly y: Nm;
}

/** A corner of an outline. The edge to the next corner is an arc where it has a bulge: tan(sweep / 4), positive counter-clockwise. */
export interface OutlinePoint extends DrawingPoint {
  readonly bulge?: number;
}

/** An open arc. */
export interface ArcShape {
  readonly kind: 'arc';
  readonly layer: string;
  readonly from: DrawingPoint;
  readonly to: DrawingPoint;
  /** tan(sweep / 4), positive counter-clockwise; not 0. */
  readonly bulge: number;
}

export interface LineShape {
  readonly kind: 'line';
  readonly layer: string;
  readonly from: DrawingPoint;
  readonly to: DrawingPoint;
}

export interface PolylineShape {
  readonly kind: 'polyline';
  readonly layer: string;
  readonly points: readonly DrawingPoint[];
}

export interface PolygonShape {
  readonly kind: 'polygon';
  readonly layer: string;
  readonly points: readonly OutlinePoint[];
  /** `#rrggbb`, null for an outline only. */
  readonly fill: string | null;
  readonly outline: boolean;
  /** What the polygon stands for (`piece:<id>`, `opening:<mark>`), null for furniture. */
  readonly subject: string | null;
  /** Said on hover in SVG. */
  readonly hint: string | null;
}

export interface CircleShape {
  readonly kind: 'circle';
  readonly layer: string;
  readonly centre: DrawingPoint;
  readonly radius: Nm;
  readonly fill: string | null;
}

export interface TextShape {
  readonly kind: 'text';
  readonly layer: string;
  readonly at: DrawingPoint;
  readonly text: string;
  /** Em size [nm of the model]. */
  readonly size: Nm;
  readonly bold: boolean;
  readonly anchor: 'start' | 'middle' | 'end';
  /** Degrees, counter-clockwise. `at` is the middle of the capitals' height. */
  readonly angle: number;
  /** Paper colour painted behind the text so that hatching never crosses it. */
  readonly backdrop: string | null;
}

/** A measured distance: extension lines from the points to the dimension line `a`–`b`, ticks at its ends, text at `textAt`. */
export interface DimensionShape {
  readonly kind: 'dimension';
  readonly layer: string;
  readonly from: DrawingPoint;
  readonly to: DrawingPoint;
  readonly a: DrawingPoint;
  readonly b: DrawingPoint;
  readonly text: string;
  readonly textAt: DrawingPoint;
  readonly angle: number;
  readonly size: Nm;
  /** Length of the tick strokes [nm of the model]. */
  readonly tick: Nm;
}

export type HatchPattern = 'rising' | 'falling' | 'crossed' | 'level' | 'broken' | 'upright' | 'dotted';

export interface HatchShape {
  readonly kind: 'hatch';
  readonly layer: string;
  /** Outer boundary and holes, by the even-odd rule. */
  readonly boundary: readonly (readonly DrawingPoint[])[];
  readonly pattern: HatchPattern;
  readonly spacing: Nm;
}

export type Shape = LineShape | ArcShape | PolylineShape | PolygonShape | CircleShape | TextShape | DimensionShape | HatchShape;

/** What is left when dimensions are written out as lines and text. */
export type PlainShape = Exclude<Shape, DimensionShape>;

/** Font bytes for the writers that must measure or draw letters; the shipped family is in `shared/fonts`. */
export interface DrawingFonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** What the title block of every sheet says of the job. */
export interface SheetHeader {
  readonly job: string;
  readonly jobName: string;
  readonly revision: number;
  readonly supplier: string;
  /** One sentence or two; wrapped over the width of the sheet. */
  readonly caution: string;
}
