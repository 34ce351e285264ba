import { equivalentTopLoad } from '../engineering/hanna-formwork/equivalent-top-load.js';
import { MINIMUM_LOADS } from '../engineering/hanna-formwork/minimum-loads.js';
import { RESULTANT_HEIGHT } from '../engineering/asce-7-16/wall-wind-pressure.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { workedStep } from './worked-step.js';
import type { CoherentUnits } from './both-units.js';
import type { TraceStep } from '../evidence/trace.js';
import type { WindOnWall } from './wind-on-wall.js';

/** Load along the top of a wall that its braces are made for. */
export interface TopLoad {
  readonly load: number;
  readonly governs: 'wind' | 'pressure' | 'load' | 'minimum-pressure' | 'minimum-load';
  readonly trace: readonly TraceStep[];
}

const SOURCE = 'nunnally p. 338';

/** Of a wind worked by the standard, whose resultant lies at 0.55 of the height; the least pressure acts at half of it. */
export function windTopLoad(units: CoherentUnits, wind: Pick<WindOnWall, 'ofWind'>, h: number): TopLoad {
  const byWind = step(units, 'load at the top by wind', wind.ofWind, h, RESULTANT_HEIGHT, 'asce-7-16 Fig. 29.3-1');
  const least = leastStep(units, h);
  const governing = byWind.value >= least.value ? byWind : least;
  return notUnderLeast(units, governing.value, governing === byWind ? 'wind' : 'minimum-pressure', [byWind, least]);
}

/** Of an even pressure; under the least pressure the least acts. */
export function pressureTopLoad(units: CoherentUnits, pressure: number, h: number): TopLoad {
  const asked = step(units, 'load at the top', pressure, h, 0.5, SOURCE);
  const least = leastStep(units, h);
  const governing = asked.value >= least.value ? asked : least;
  return notUnderLeast(units, governing.value, governing === asked ? 'pressure' : 'minimum-pressure', [asked, least]);
}

/** Of a load that is given. */
export const givenTopLoad = (units: CoherentUnits, load: number): TopLoad => notUnderLeast(units, load, 'load', []);

function notUnderLeast(units: CoherentUnits, load: number, governs: TopLoad['governs'], trace: readonly TraceStep[]): TopLoad {
  const least = MINIMUM_LOADS[units.system].topLoad;
  const value = Math.max(load, least);
  const floor = workedStep('load, not under the least', 'max( H, least )', `max( ${n(load)}, ${n(least)} )`, value, units.unit('force per length'), 'hanna-formwork §7.2.2');
  return { load: value, governs: load >= least ? governs : 'minimum-load', trace: [...trace, floor] };
}

const leastStep = (units: CoherentUnits, h: number): TraceStep =>
  step(units, 'load at the top by the least pressure', MINIMUM_LOADS[units.system].pressure, h, 0.5, 'hanna-formwork §7.2.2');

function step(units: CoherentUnits, name: string, q: number, h: number, r: number, source: string): TraceStep {
  return workedStep(name, 'H = q · h · r', `${n(q)} · ${n(h)} · ${n(r)}`, equivalentTopLoad(q, h, r), units.unit('force per length'), source);
}
