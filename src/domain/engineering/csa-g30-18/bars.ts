/** A metric bar by its nominal size. */
export interface MetricBar {
  readonly diameterMm: number;
  readonly areaMm2: number;
  readonly kgPerM: number;
}

/** Nominal metric bars. csa-g30-18, as printed in a transcription beside astm-a615. */
export const METRIC_BARS = {
  '10M': { diameterMm: 11.3, areaMm2: 100, kgPerM: 0.785 },
  '15M': { diameterMm: 16, areaMm2: 200, kgPerM: 1.57 },
  '20M': { diameterMm: 19.5, areaMm2: 300, kgPerM: 2.355 },
  '25M': { diameterMm: 25.2, areaMm2: 500, kgPerM: 3.925 },
  '30M': { diameterMm: 29.9, areaMm2: 700, kgPerM: 5.495 },
  '35M': { diameterMm: 35.7, areaMm2: 1000, kgPerM: 7.85 },
} as const satisfies Readonly<Record<string, MetricBar>>;

export type MetricBarName = keyof typeof METRIC_BARS;

export const METRIC_BAR_NAMES = Object.keys(METRIC_BARS) as readonly MetricBarName[];
