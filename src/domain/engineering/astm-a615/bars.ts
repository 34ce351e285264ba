/** A round reinforcing bar by its nominal size. */
export interface NominalBar {
  readonly diameterIn: number;
  readonly areaIn2: number;
  readonly lbPerFt: number;
}

/** Nominal bars by number. astm-a615, as printed in a transcription of its table. */
export const INCH_BARS = {
  '#3': { diameterIn: 0.375, areaIn2: 0.11, lbPerFt: 0.376 },
  '#4': { diameterIn: 0.5, areaIn2: 0.2, lbPerFt: 0.668 },
  '#5': { diameterIn: 0.625, areaIn2: 0.31, lbPerFt: 1.043 },
  '#6': { diameterIn: 0.75, areaIn2: 0.44, lbPerFt: 1.502 },
  '#7': { diameterIn: 0.875, areaIn2: 0.6, lbPerFt: 2.044 },
  '#8': { diameterIn: 1, areaIn2: 0.79, lbPerFt: 2.67 },
  '#9': { diameterIn: 1.128, areaIn2: 1, lbPerFt: 3.4 },
  '#10': { diameterIn: 1.27, areaIn2: 1.27, lbPerFt: 4.303 },
  '#11': { diameterIn: 1.41, areaIn2: 1.56, lbPerFt: 5.313 },
} as const satisfies Readonly<Record<string, NominalBar>>;

export type InchBarName = keyof typeof INCH_BARS;

export const INCH_BAR_NAMES = Object.keys(INCH_BARS) as readonly InchBarName[];
