/** Exposure of a site to the wind: B built up or wooded, C open, D beside open water. */
export type Exposure = 'B' | 'C' | 'D';

/** How velocity pressure grows with height: the gradient height zg [ft], the exponent α, and the factor before both. */
export interface ExposureConstants {
  readonly factor: number;
  readonly byExposure: Readonly<Record<Exposure, { readonly zg: number; readonly alpha: number }>>;
}

/** asce-7-05 to asce-7-16: D as printed in wind-sign-sheet, B and C from memory. */
export const CONSTANTS_7_16: ExposureConstants = {
  factor: 2.01,
  byExposure: { B: { zg: 1200, alpha: 7 }, C: { zg: 900, alpha: 9.5 }, D: { zg: 700, alpha: 11.5 } },
};

/** No wall is counted as lower [ft]. */
export const LEAST_HEIGHT_FT = 15;
