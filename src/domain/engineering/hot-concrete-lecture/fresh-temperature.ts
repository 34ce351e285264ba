/** Specific heat of cement and aggregate over that of water. hot-concrete-lecture. */
const SOLIDS = 0.22;

/**
 * What a mass of ice at its melting point takes away, as so many degrees of the same mass of water: 80 in °C; in °F 144 less the 32 at
 * which it melts. hot-concrete-lecture; the °F term from memory.
 */
export const ICE_DEGREES = { si: 80, 'us-customary': 144 - 32 } as const;

/** What goes into the mixer; masses in one unit, temperatures on one scale. */
export interface Batch {
  readonly aggregate: number;
  readonly aggregateAt: number;
  readonly cement: number;
  readonly cementAt: number;
  readonly water: number;
  readonly waterAt: number;
  /** Free water on the aggregate, at its temperature. */
  readonly freeWater: number;
  readonly ice: number;
}

/**
 * Temperature of fresh concrete from what goes into it: the heat of all parts shared among them.
 *
 * @equation  T = ( 0.22 · ( Ta · Wa + Tc · Wc ) + Tw · Ww + Ta · Wf − L · Wi ) / ( 0.22 · ( Wa + Wc ) + Ww + Wf + Wi )
 * @param batch.aggregate Wa, mass without its free water       [kg]
 * @param batch.aggregateAt Ta                                  [°C]
 * @param batch.cement Wc                                       [kg]
 * @param batch.cementAt Tc                                     [°C]
 * @param batch.water Ww, batch water without the ice           [kg]
 * @param batch.waterAt Tw                                      [°C]
 * @param batch.freeWater Wf, free water on the aggregate       [kg]
 * @param batch.ice Wi                                          [kg]
 * @param L   degrees of ICE_DEGREES, by the scale              [1]
 * @returns   T, on the scale of the temperatures               [°C]
 * @valid     all ice melts; T above the melting point
 * @source    hot-concrete-lecture, mixing temperature with and without ice
 * @example   batch.aggregate = 1828.2, batch.aggregateAt = 37, batch.cement = 360, batch.cementAt = 40, batch.water = 122.8,
 *            batch.waterAt = 30, batch.freeWater = 0, batch.ice = 50, L = 80 → 27
 */
export function freshTemperature(batch: Batch, L: number): number {
  const { aggregate, aggregateAt, cement, cementAt, water, waterAt, freeWater, ice } = batch;
  const heat = SOLIDS * (aggregateAt * aggregate + cementAt * cement) + waterAt * water + aggregateAt * freeWater - L * ice;
  return heat / (SOLIDS * (aggregate + cement) + water + freeWater + ice);
}
