import type { CalculatorAnswer } from './calculator-answer.js';
import type { LeftLimit } from './outside-answer.js';

export const LAP_METHODS = ['irc', 'aci-318-simplified', 'aci-318-general', 'obc'] as const;
export type LapMethod = (typeof LAP_METHODS)[number];

/** What a lap is asked with, whatever the method. */
export interface LapQuestion {
  readonly barName: string;
  readonly diameterIn: number;
  /** Null where it was not stated. */
  readonly fcPsi: number | null;
  readonly fyPsi: number;
  readonly lapClass: 'A' | 'B';
  readonly top: boolean;
  /** ( cb + Ktr ) / db of the general equation. */
  readonly confinement: number;
  /** Clear spacing under two diameters, or cover under one. */
  readonly close: boolean;
}

/** A lap by one method, or the limits of the method that the question leaves. */
export type LapAnswer =
  | Pick<CalculatorAnswer, 'result' | 'governs' | 'trace' | 'source' | 'notes'>
  | { readonly method: string; readonly left: readonly LeftLimit[]; readonly source: string };
