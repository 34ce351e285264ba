import type { Nm } from '../quantity/length.js';
import type { LengthUnit } from '../quantity/length-unit.js';
import type { ElementNote, SkippedElement } from './model-notes.js';

export type { LengthUnit } from '../quantity/length-unit.js';
export type DimensionsTo = 'foam-face' | 'concrete-face' | 'axis';
export type Lining = 'buck' | 'end-closure';

/** A point of the plan [nm], x to the right, y up. Integers as read; a declared chain may place fractions. */
export interface PlanPoint {
  readonly x: number;
  readonly y: number;
}

/** Where a row stood in the uploaded file, for errors and for the drawing's references. */
export interface RowPlace {
  readonly sheet: string | null;
  readonly row: number | null;
  readonly pointer: string;
}

/** The canonical wall schedule: every length an integer of nanometres, every default filled in, every reference checked. */
export interface Schedule {
  readonly format: 'wallcourse/schedule@1';
  readonly name: string;
  readonly units: LengthUnit;
  readonly dimensionsTo: DimensionsTo;
  readonly range: string;
  /** What an offcut may serve: its own storey, which is what absent means, or any storey of the job. */
  readonly offcuts?: 'storey' | 'job';
  readonly storeys: readonly Storey[];
  readonly walls: readonly Wall[];
  readonly openings: readonly Opening[];
  readonly features: readonly Feature[];
  readonly site: Site | null;
  readonly pour: Pour | null;
  /** Columns or keys nobody knew; listed to the user, never dropped in silence. */
  readonly unknown: readonly { sheet: string | null; name: string }[];
  /** Elements of a building model that are not in the schedule; absent where the schedule is of no model. */
  readonly skipped?: readonly SkippedElement[];
  /** What was done with elements of a building model: ends moved, cuts not read. */
  readonly noted?: readonly ElementNote[];
}

export interface Storey {
  readonly id: string;
  readonly height: Nm;
  readonly grade: 'above' | 'below';
  /** Another storey's forms will stand on this one. */
  readonly storeyAbove: boolean;
  /** The drawing claims at least one closed loop. */
  readonly closed: boolean;
  /** The storey below, where there is one. */
  readonly on: string | null;
  /** What floors and roof put on the top of each of its walls, not factored [kN/m]; absent where it is not stated. */
  readonly deadKnPerM?: number;
  readonly liveKnPerM?: number;
  readonly snowKnPerM?: number;
}

export interface Wall {
  readonly mark: string;
  readonly storey: string;
  readonly core: string;
  /** Ends on the dimension line. Walls written without coordinates are placed by their declared joints. */
  readonly from: PlanPoint;
  readonly to: PlanPoint;
  /** The length as written, where one was written; otherwise the distance of the ends. */
  readonly length: Nm;
  readonly dimensionsTo: DimensionsTo;
  readonly height: Nm;
  /** Above the storey's bottom. */
  readonly base: Nm;
  readonly arc: { readonly radius: Nm; readonly turns: 'left' | 'right' } | null;
  /** Joints the schedule declared, null where the coordinates speak. */
  readonly start: DeclaredJoint | null;
  readonly end: DeclaredJoint | null;
  /** Written without coordinates: its ends follow from declared joints. */
  readonly placed?: true;
  readonly place: RowPlace;
}

export type DeclaredJoint =
  | { readonly joint: 'free' }
  | { readonly joint: 'corner'; readonly turn: number; readonly with: { readonly wall: string; readonly end: 'start' | 'end' } }
  | { readonly joint: 'tee'; readonly on: string; readonly at: Nm; readonly side: 'left' | 'right' };

export interface Opening {
  readonly mark: string;
  readonly wall: string;
  /** From the wall's `from` along the dimension line to the near jamb of the hole in the concrete. */
  readonly at: Nm;
  /** Bottom of the hole above the wall's base. */
  readonly sill: Nm;
  /** The hole in the concrete: a `rough` size has had the buck added already. */
  readonly width: Nm;
  readonly height: Nm;
  readonly lining: Lining;
  /** As the schedule stated it, before the buck was added. */
  readonly measured: 'concrete' | 'rough';
  readonly place: RowPlace;
}

export type Feature =
  | { readonly kind: 'ledge'; readonly wall: string; readonly at: Nm; readonly from: Nm; readonly to: Nm; readonly face: 'outside' | 'inside'; readonly place: RowPlace }
  | { readonly kind: 'taper-top'; readonly wall: string; readonly faces: 'one' | 'both'; readonly place: RowPlace }
  | { readonly kind: 'gable'; readonly wall: string; readonly rise: Nm; readonly peakAt: Nm; readonly place: RowPlace }
  | { readonly kind: 'core-change'; readonly wall: string; readonly at: Nm; readonly core: string; readonly flush: 'outside' | 'inside' | 'centre'; readonly place: RowPlace };

/** Stated loads of the site, SI: only what was written is present. */
export interface Site {
  readonly windMps?: number;
  readonly exposure?: 'B' | 'C' | 'D';
  /** Equivalent fluid weight of the soil [kN/m³]. */
  readonly soilKnPerM3?: number;
  readonly backfill?: Nm;
  readonly seismic?: string;
  readonly snowKpa?: number;
  /** How long the forms stand before the concrete holds them [h]. */
  readonly durationH?: number;
  /** The code whose tables bars and lintels are read from; where absent `DEFAULT_CODE`, which a check lists among its defaults. */
  readonly code?: BuildingCode;
}

export const BUILDING_CODES = ['irc-2018', 'obc-2024'] as const;
export type BuildingCode = (typeof BUILDING_CODES)[number];
export const DEFAULT_CODE: BuildingCode = 'irc-2018';

/** The pour as planned, SI: only what was written is present. */
export interface Pour {
  /** Rate of rise [m/h]. */
  readonly riseMPerH?: number;
  /** Temperature of the concrete in the form [°C]. */
  readonly concreteC?: number;
  /** Unit weight as a density [kg/m³]. */
  readonly unitWeightKgPerM3?: number;
  readonly cement?: string;
  readonly retarder?: boolean;
  readonly slumpMm?: number;
  readonly airC?: number;
  readonly humidity?: number;
  readonly windMps?: number;
  readonly pumpM3PerH?: number;
  readonly truckM3?: number;
  /** Largest stone of the mix [mm]. */
  readonly stoneMm?: number;
  /** From batching to the end of discharge, as the purchaser states it [h]. */
  readonly dischargeH?: number;
}
