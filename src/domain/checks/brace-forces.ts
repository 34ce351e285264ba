import { braceAxial } from '../engineering/hanna-formwork/brace-axial.js';
import { braceHorizontal } from '../engineering/hanna-formwork/brace-horizontal.js';
import { braceUplift } from '../engineering/hanna-formwork/brace-uplift.js';
import { inSi } from '../quantity/quantity.js';
import { pressureTopLoad, windTopLoad, type TopLoad } from './top-load.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { windOnWall } from './wind-on-wall.js';
import { workedStep } from './worked-step.js';
import type { CoherentUnits } from './both-units.js';
import type { LeftLimit } from './outside-answer.js';
import type { Nm } from '../quantity/length.js';
import type { TraceStep } from '../evidence/trace.js';
import type { WindQuestion } from './wind-input.js';

/** One brace: what it holds and how it stands. */
export interface BracedHeight {
  /** Of the forms over their base, at the brace. */
  readonly height: Nm;
  /** Of their top over the ground, where the wind blows. */
  readonly overGround: Nm;
  readonly width: Nm;
  readonly braceTop: Nm;
  readonly braceFoot: Nm;
}

/** Of one brace [kN], with the steps in the units of the schedule. */
export interface BraceForces {
  readonly kind: 'forces';
  readonly axial: number;
  readonly horizontal: number;
  readonly uplift: number;
  /** Along the top [kN/m], and what decides it. */
  readonly topLoad: number;
  readonly governs: TopLoad['governs'];
  readonly trace: readonly TraceStep[];
  readonly notes: readonly string[];
}

export type OutsideWind = { readonly kind: 'outside-method'; readonly limits: readonly LeftLimit[] };

/**
 * Forces of one raking brace on empty forms: by the wind that is stated, not under 15 psf nor 100 lb/ft; those floors alone where none is.
 * A wall lower than the brace's top is held at its own top.
 *
 * @param wind null: not stated
 */
export function braceForces(wind: WindQuestion | null, brace: BracedHeight, units: CoherentUnits): BraceForces | OutsideWind {
  const h = units.ofLength(brace.height);
  const loaded = topLoadOf(wind, brace.overGround, h, units);
  if ('limits' in loaded) return { kind: 'outside-method', limits: loaded.limits };
  const H = loaded.top.load;
  const [h1, l1, width] = [units.ofLength(Math.min(brace.braceTop, brace.height)), units.ofLength(brace.braceFoot), units.ofLength(brace.width)];
  const perLength = units.unit('force per length');
  const P = workedStep('axial force per length', 'P = H · h · √( h1² + l1² ) / ( h1 · l1 )', `${n(H)} · ${n(h)} · √( ${n(h1)}² + ${n(l1)}² ) / ( ${n(h1)} · ${n(l1)} )`, braceAxial(H, h, h1, l1), perLength, 'hanna-formwork section on bracing');
  const Q = workedStep('horizontal force per length', 'Q = H · h / h1', `${n(H)} · ${n(h)} / ${n(h1)}`, braceHorizontal(H, h, h1), perLength, 'peurifoy-oberlender-4 Fig. 5-17');
  const N = workedStep('uplift per length', 'N = H · h / l1', `${n(H)} · ${n(h)} / ${n(l1)}`, braceUplift(H, h, l1), perLength, 'peurifoy-oberlender-4 Fig. 5-17');
  const [axial, horizontal, uplift] = [times('axial force', P, width, units), times('horizontal force', Q, width, units), times('uplift', N, width, units)];
  const kN = ({ value }: TraceStep): number => inSi('force', units.unit('force'), value);
  return {
    kind: 'forces', axial: kN(axial), horizontal: kN(horizontal), uplift: kN(uplift),
    topLoad: inSi('force per length', perLength, H), governs: loaded.top.governs,
    trace: [...loaded.trace, ...loaded.top.trace, P, Q, N, axial, horizontal, uplift], notes: loaded.notes,
  };
}

type Loaded = { readonly top: TopLoad; readonly trace: readonly TraceStep[]; readonly notes: readonly string[] };

function topLoadOf(wind: WindQuestion | null, overGround: Nm, h: number, units: CoherentUnits): Loaded | { readonly limits: readonly LeftLimit[] } {
  if (wind === null) return { top: pressureTopLoad(units, 0, h), trace: [], notes: [] };
  const blown = windOnWall(wind, overGround, units);
  if (blown.kind === 'outside-method') return { limits: blown.limits };
  return { top: windTopLoad(units, blown, h), trace: blown.trace, notes: blown.notes };
}

const times = (name: string, perLength: TraceStep, width: number, units: CoherentUnits): TraceStep =>
  workedStep(name, `${name} per length · width held`, `${n(perLength.value)} · ${n(width)}`, perLength.value * width, units.unit('force'), 'statics');
