import type { CementGroup } from './chemistry-coefficient.js';

/** What the wall equations need to know of a pour, in the units in which they are printed. */
export interface FreshConcreteWall {
  /** Placement height: depth of fresh concrete at the foot of the wall [ft]. */
  readonly heightFt: number;
  /** Rate of rise [ft/h], above 0. */
  readonly riseFtPerH: number;
  /** Temperature of the concrete in the form [°F]. */
  readonly concreteF: number;
  /** Unit weight [pcf], above 0. */
  readonly unitWeightPcf: number;
  readonly cement: CementGroup;
  readonly retarder: boolean;
  /** [in] */
  readonly slumpIn: number;
}

/** The same for the SI printing of the equations. */
export interface FreshConcreteWallSi {
  /** Placement height [m]. */
  readonly heightM: number;
  /** Rate of rise [m/h], above 0. */
  readonly riseMPerH: number;
  /** Temperature of the concrete in the form [°C]. */
  readonly concreteC: number;
  /** Unit weight as a mass [kg/m³], above 0. */
  readonly unitWeightKgPerM3: number;
  /** Only where it was written in pcf: its class is then read in the US customary table, 150 pcf being no heavy concrete. */
  readonly unitWeightPcf?: number;
  readonly cement: CementGroup;
  readonly retarder: boolean;
  /** [mm] */
  readonly slumpMm: number;
  /** Only where it was written in inches: it is then held against 7 in, which is the same limit as 175 mm. */
  readonly slumpIn?: number;
}

/** A limit that the pour leaves, named, and of which the standard says nothing. */
export interface OutsideLimit {
  readonly quantity: 'concreteF';
  readonly value: number;
  readonly limit: number;
  readonly side: 'below' | 'above';
  readonly source: string;
}

/** The pour lies where the method gives no answer. */
export interface OutsideMethod {
  readonly kind: 'outside-method';
  readonly outside: readonly OutsideLimit[];
}
