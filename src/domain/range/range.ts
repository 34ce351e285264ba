import type { Nm } from '../quantity/length.js';

export type Hand = 'left' | 'right';
export type UnitKind =
  | 'straight' | 'corner' | 'corner-pair' | 'corner-hinged' | 'strip' | 'end-closure' | 'ledge' | 'taper-top';
export type CoreFamily = 'flat' | 'waffle-grid' | 'screen-grid';

/** A supplier's forms, materials and common-practice parameters, read and checked; lengths in nm. Immutable once used. */
export interface FormRange {
  readonly code: string;
  readonly version: number;
  readonly inForceFrom: string;
  readonly name: string;
  readonly courseHeight: Nm;
  readonly formLength: Nm;
  readonly cutModule: Nm;
  readonly minPiece: Nm;
  readonly minStagger: Nm;
  readonly panel: Nm;
  readonly webSpacing: Nm;
  readonly firstWeb: Nm;
  readonly interlock: 'module' | 'continuous';
  readonly reversible: boolean;
  /** Height strip, null where the range has none. */
  readonly stripHeight: Nm | null;
  readonly cores: ReadonlyMap<string, Core>;
  /** Corner units of one turn or a span of turns, in the order in which they are tried. */
  readonly corners: readonly CornerUnit[];
  readonly straightPrefix: string;
  readonly stripPrefix: string | null;
  readonly closure: { readonly prefix: string; readonly thickness: Nm; readonly height: Nm };
  readonly ledge: { readonly prefix: string; readonly cores: readonly string[]; readonly projection: Nm; readonly extraSectionMm2: number } | null;
  readonly taperTop: { readonly prefix: string; readonly cores: readonly string[]; readonly faces: Readonly<Record<'one' | 'both', { readonly seatGain: Nm; readonly extraSectionMm2: number }>> } | null;
  readonly materials: readonly Material[];
  readonly parameters: Parameters;
}

export interface Core {
  readonly code: string;
  readonly width: Nm;
  readonly family: CoreFamily;
  readonly ratedPressurePsf: number;
}

export interface CornerUnit {
  readonly kind: 'corner' | 'corner-pair' | 'corner-hinged';
  readonly prefix: string;
  /** Degrees; equal for a fixed unit. */
  readonly minTurn: number;
  readonly maxTurn: number;
  /** True where left and right are two skus; a pair is sawn from one blank, `either` fits both. */
  readonly hands: 'two-skus' | 'pair' | 'either';
  /** By core code: [long, short] measured on the convex face. */
  readonly legs: ReadonlyMap<string, { readonly long: Nm; readonly short: Nm }>;
}

export type MaterialKind = 'tape' | 'wire-tie' | 'cable-tie' | 'strap' | 'board' | 'foam' | 'cover' | 'bar';

export interface Material {
  readonly sku: string;
  readonly kind: MaterialKind;
  readonly size: string;
  readonly pack: { readonly quantity: number; readonly unit: 'ft' | 'each' };
  /** Tape: strength per inch of width, null where the supplier does not state one. */
  readonly strengthLbPerIn: number | null;
}

/** Every common-practice number of the trade; dated with the range. Lengths in nm, ratios plain. */
export interface Parameters {
  readonly stackTolerance: Nm;
  readonly minRip: Nm;
  readonly stackPrefers: 'rip' | 'strips';
  readonly turnToleranceDeg: number;
  readonly turnAcuteFromDeg: number;
  readonly spareForms: number;
  readonly concreteOverage: number;
  readonly pumpLossYd3: number;
  readonly orderStepYd3: number;
  readonly buckThickness: Nm;
  readonly formKerf: Nm;
  readonly tapeStripLength: Nm;
  readonly closureTapeLength: Nm;
  readonly closureBoardPerCourse: Nm;
  readonly holdDownEveryWebs: number;
  readonly holdDownTieBy: 'cable-tie' | 'wire-tie';
  readonly stripTapeSpacing: Nm;
  readonly hingedCornerStrips: number;
  readonly teeTieWeb: number;
  readonly teePinEmbedment: Nm;
  readonly teePinBar: string;
  readonly footingCornerBy: 'wire-tie' | 'strap';
  readonly footingFixBy: 'adhesive' | 'track' | 'plates' | 'dowel-ties';
  readonly footingBeadFaces: number;
  readonly shortPieceBy: 'tape' | 'strap';
  readonly rippedEdgeBy: 'strap' | 'board';
  readonly taperEdgeBy: 'strap' | 'board';
  readonly radiusBandBy: 'strap' | 'tape' | 'board';
  readonly topProtectBy: 'cover' | 'tape';
  readonly topProtectFaces: number;
  /** Face of the board that gables are edged and capped with. */
  readonly gableBoardWidth: Nm;
  readonly cornerBraceVerticals: number;
  readonly buckDiagonals: number;
  readonly radiusGap: Nm;
  readonly gableSteepFromDeg: number;
  readonly pierNarrow: Nm;
  readonly openingNearCorner: Nm;
  readonly braceSpacing: Nm;
  readonly braceFromCorner: Nm;
  /** Above the wall's base, and out from its face. */
  readonly braceTop: Nm;
  readonly braceFoot: Nm;
  readonly buckSpreader: Nm;
  readonly lintelPost: Nm;
  readonly liftHeight: Nm;
  readonly singleLiftHeight: Nm;
}
