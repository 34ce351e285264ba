import type { Finding } from '../evidence/finding.js';
import type { Nm } from '../quantity/length.js';
import type { Core, FormRange, MaterialKind, Parameters } from '../range/range.js';
import type { LaidJob } from '../takeoff/laid.js';
import type { DesignPressure } from './design-pressure.js';
import type { CrewInstruction } from './material-line.js';

/** The one pressure of a storey's pour on one core that rules and checks share. */
export type PressureOf = (storey: string, core: Core) => Pick<DesignPressure, 'psf' | 'basis'>;

/** One mechanism by which forms move before the concrete is hard, and what holds them. One file, one doc, one test. */
export interface Rule {
  readonly meta: RuleMeta;
  readonly evaluate: (context: RuleContext) => RuleOutcome;
}

export interface RuleMeta {
  /** A noun of the place, kebab-case; the stem of the rule's three files. */
  readonly id: string;
  /** One sentence: what the rule does. The doc opens with it. */
  readonly title: string;
  /** What in the laid job sets the rule off. */
  readonly trigger: string;
  /** Kinds of material the rule may consume; a range without one that is needed gets a finding, not silence. */
  readonly consumes: readonly MaterialKind[];
  /** Parameters of the form range the rule reads. */
  readonly parameters: readonly (keyof Parameters)[];
  readonly basis: 'common practice' | 'statics' | 'common practice and statics';
}

export interface RuleContext {
  readonly job: LaidJob;
  readonly range: FormRange;
  readonly pressureOf: PressureOf;
}

export interface RuleOutcome {
  readonly materials: readonly Consumption[];
  readonly instructions: readonly CrewInstruction[];
  readonly findings: readonly Finding[];
}

/** Where something is consumed. Items at a corner belong to the arriving wall, items at a tee to the through wall. */
export interface RulePlace {
  readonly storey: string;
  readonly wall: string;
  readonly course: number;
}

/**
 * Material used at one place, as a length or as a count, never both.
 *
 * `at` are axis stations of the place's wall from the user's own `from`, in any order: of strips, ties and pins where they sit, of what
 * runs along the wall the ends of its stretches. They say where, they count nothing.
 *
 * `material` is a kind (the range's first material of that kind serves) or a bar of the size a parameter names. A length of bar is
 * one piece: it is never made up of two.
 */
export type Consumption = {
  readonly place: RulePlace;
  readonly material: MaterialKind | { readonly bar: string };
  readonly at?: readonly Nm[];
} & ({ readonly length: Nm } | { readonly count: number });
