/** A wall schedule as a person would send it: `wallcourse/schedule@1` as plain JSON, straight walls only. */
export interface ScheduleDocument {
  readonly format: 'wallcourse/schedule@1';
  readonly name: string;
  readonly units: 'in' | 'ft' | 'mm' | 'm';
  readonly dimensionsTo: 'foam-face' | 'concrete-face' | 'axis';
  readonly range: 'HERON-16';
  readonly storeys: readonly StoreyRow[];
  readonly walls: readonly WallRow[];
  readonly openings: readonly OpeningRow[];
}

export type Dimension = number | string;
export type DocumentPoint = readonly [Dimension, Dimension];

export interface StoreyRow {
  readonly id: string;
  readonly height: Dimension;
  readonly grade: 'above' | 'below';
  readonly storeyAbove: boolean;
  readonly closed: boolean;
  readonly on?: string;
}

export interface WallRow {
  readonly mark: string;
  readonly storey: string;
  readonly core: string;
  readonly from?: DocumentPoint;
  readonly to?: DocumentPoint;
  readonly length?: Dimension;
  readonly height?: Dimension;
  readonly base?: Dimension;
  readonly dimensionsTo?: ScheduleDocument['dimensionsTo'];
  readonly start?: JointRow;
  readonly end?: JointRow;
}

export type JointRow =
  | { readonly joint: 'free' }
  | { readonly joint: 'corner'; readonly turn: number; readonly with: { readonly wall: string; readonly end: 'start' | 'end' } };

export interface OpeningRow {
  readonly mark: string;
  readonly wall: string;
  readonly at: Dimension;
  readonly sill: Dimension;
  readonly width: Dimension;
  readonly height: Dimension;
  readonly lining?: 'buck' | 'end-closure';
  readonly measured?: 'concrete' | 'rough';
}
