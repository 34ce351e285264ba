import type { Core, Parameters } from '../range/range.js';
import type { Finding } from '../evidence/finding.js';
import type { Nm } from '../quantity/length.js';
import type { Pour } from '../schedule/schedule.js';
import type { TraceStep } from '../evidence/trace.js';

/** The one pressure of a storey and core that rules and checks share. */
export interface DesignPressure {
  readonly psf: number;
  /** `pour` from the pour as planned; `rated` is what the form may carry, where the pour says too little or lies outside the method. */
  readonly basis: 'pour' | 'rated';
  readonly trace: readonly TraceStep[];
  /** Plain sentences to print beside the number. */
  readonly notes: readonly string[];
  /** Codes without a place: the check that reports them adds storey and core. */
  readonly findings: readonly Finding[];
}

export type DesignPressureOf = (pour: Pour | null, core: Core, wallHeight: Nm, parameters: Parameters) => DesignPressure;
