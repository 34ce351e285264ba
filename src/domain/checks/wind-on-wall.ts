import { constructionWindFactor, LONGEST_CONSTRUCTION_H } from '../engineering/asce-37-14/construction-wind-factor.js';
import { END_ZONE_ASPECT, endZoneCoefficient, HIGHEST_FORCE_COEFFICIENT, wallForceCoefficient } from '../engineering/asce-7-16/wall-force-coefficient.js';
import { exposureCoefficient } from '../engineering/asce-7-16/exposure-coefficient.js';
import { exposureCoefficient2022 } from '../engineering/asce-7-22/exposure-coefficient.js';
import { MINIMUM_LOADS } from '../engineering/hanna-formwork/minimum-loads.js';
import { NM_PER_FOOT, type Nm } from '../quantity/length.js';
import { RIGID_GUST_FACTOR as G, WALL_DIRECTIONALITY as Kd, wallWindPressure } from '../engineering/asce-7-16/wall-wind-pressure.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { velocityPressure } from '../engineering/asce-7-16/velocity-pressure.js';
import { velocityPressureSi } from '../engineering/asce-7-16/velocity-pressure-si.js';
import { windPlace } from './wind-places.js';
import { workedStep } from './worked-step.js';
import type { CoherentUnits } from './both-units.js';
import type { LeftLimit } from './outside-answer.js';
import type { TraceStep } from '../evidence/trace.js';
import type { WindQuestion } from './wind-input.js';

/** Wind on a freestanding wall, in the units of the question. */
export interface WindOnWall {
  readonly kind: 'wind';
  readonly speed: number;
  readonly velocityPressure: number;
  /** By the wind alone. */
  readonly ofWind: number;
  /** Not under the least that wall forms are braced for. */
  readonly pressure: number;
  /** Over the first height from a free end; null for walls shorter than twice their height, or of unknown length. */
  readonly endPressure: number | null;
  readonly trace: readonly TraceStep[];
  readonly notes: readonly string[];
}

/** Wind on a wall of this height by the edition asked for, with the construction period's factor on the speed. */
export function windOnWall(
  wind: WindQuestion,
  height: Nm,
  units: CoherentUnits,
): WindOnWall | { readonly kind: 'outside-method'; readonly limits: readonly LeftLimit[] } {
  const factor = wind.duration === null ? 1 : constructionWindFactor(wind.duration);
  if (factor === null) {
    const numbers = { durationYears: (wind.duration ?? 0) / 8760, limitYears: LONGEST_CONSTRUCTION_H / 8760, side: 'above' };
    return { kind: 'outside-method', limits: [{ numbers, source: 'asce-37-14 §6.2, from memory' }] };
  }
  const speed = speedStep(wind, factor, units);
  const Kz = exposureStep(wind, height);
  const q = velocityStep(wind, speed.value, Kz.value, units);
  const aspect = wind.wallLength === null ? null : wind.wallLength / height;
  const Cf = aspect === null ? HIGHEST_FORCE_COEFFICIENT : wallForceCoefficient(aspect);
  const p = pressureStep('wind pressure', wind, q.value, Cf, units);
  const end = aspect !== null && aspect >= END_ZONE_ASPECT ? pressureStep('pressure of the end zone', wind, q.value, endZoneCoefficient(aspect), units) : null;
  const least = MINIMUM_LOADS[units.system].pressure;
  const pressure = Math.max(p.value, least);
  const floor = workedStep('pressure, not under the least', 'max( p, least )', `max( ${n(p.value)}, ${n(least)} )`, pressure, units.unit('pressure'), 'hanna-formwork §7.2.2');
  return {
    kind: 'wind', speed: speed.value, velocityPressure: q.value, ofWind: p.value, pressure,
    endPressure: end === null ? null : Math.max(end.value, least),
    trace: [speed, Kz, q, coefficientStep(wind, aspect, Cf), p, ...(end ? [end] : []), floor],
    notes: notesOf(wind, end !== null),
  };
}

function speedStep({ speed, duration }: WindQuestion, factor: number, units: CoherentUnits): TraceStep {
  const V = units.of('speed', speed);
  const source = duration === null ? 'as asked' : factor === 0.8 ? 'asce-37-14 §6.2' : 'asce-37-14 §6.2, from memory';
  return workedStep('speed for the period', 'V · factor', `${n(V)} · ${n(factor)}`, V * factor, units.unit('speed'), source);
}

function exposureStep({ edition, exposure }: WindQuestion, height: Nm): TraceStep {
  const z = height / NM_PER_FOOT;
  const is2022 = edition === 'asce-7-22';
  const value = is2022 ? exposureCoefficient2022(z, exposure) : exposureCoefficient(z, exposure);
  return workedStep('exposure coefficient', 'Kz of z and exposure', `z = ${n(z)} ft, ${exposure}`, value, '1', `${windPlace(edition, 'exposure')}, from memory`);
}

function velocityStep(wind: WindQuestion, V: number, Kz: number, units: CoherentUnits): TraceStep {
  const si = units.system === 'si';
  // The 2022 edition has the directionality factor in the pressure instead; the product is the same.
  const inVelocity = wind.edition === 'asce-7-22' ? 1 : Kd;
  const value = (si ? velocityPressureSi : velocityPressure)(Kz, wind.topography, inVelocity, V, wind.importance);
  const constant = si ? '0.613 / 1000' : '0.00256';
  const parts = [constant, n(Kz), n(wind.topography), n(inVelocity), `${n(V)}²`, n(wind.importance)];
  return workedStep('velocity pressure', `q = ${constant} · Kz · Kzt · Kd · V² · I`, parts.join(' · '), value, units.unit('pressure'), windPlace(wind.edition, 'velocity'));
}

function coefficientStep({ edition }: WindQuestion, aspect: number | null, Cf: number): TraceStep {
  const substituted = aspect === null ? 'length not stated: the highest' : `B / s = ${n(aspect)}`;
  return workedStep('force coefficient', 'Cf of B / s', substituted, Cf, '1', `${windPlace(edition, 'coefficient')}, from memory`);
}

function pressureStep(name: string, { edition }: WindQuestion, q: number, Cf: number, units: CoherentUnits): TraceStep {
  const directed = edition === 'asce-7-22';
  const value = wallWindPressure(directed ? Kd * q : q, G, Cf);
  const substituted = `${directed ? `${n(Kd)} · ` : ''}${n(q)} · ${n(G)} · ${n(Cf)}`;
  return workedStep(name, directed ? 'p = Kd · q · G · Cf' : 'p = q · G · Cf', substituted, value, units.unit('pressure'), windPlace(edition, 'pressure'));
}

function notesOf({ edition, duration, wallLength, importance }: WindQuestion, hasEnd: boolean): readonly string[] {
  return [
    'Coefficients of exposure, shape and construction period are from memory where the source does not say otherwise: check them against the standard.',
    ...(edition === 'asce-7-05' || importance !== 1 ? [] : ['Speeds of this edition are for strength design; for allowable stresses the standard takes 0.6 of the pressure (from memory). It is not taken here.']),
    ...(duration === null ? [] : ['The factor of the construction period is not for a hurricane season without a plan to take the wall down or carry it on (from memory).']),
    ...(hasEnd ? ['Over the first height from a free end the wind on the skew presses harder: endPressure, without the relief of a return corner.'] : []),
    ...(wallLength === null ? ['Without the length of the wall the end zone is not worked.'] : []),
  ];
}
