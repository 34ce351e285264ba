import { lintelBars, lintelStirrups, type LintelBars, type LintelSection, type LintelStirrups } from './lintel-section.js';
import { shownNumber as n } from '../evidence/shown-number.js';
import { workedStep } from './worked-step.js';
import type { TraceStep } from '../evidence/trace.js';

/** Forces of a lintel as a simple span, and the bars and stirrups that carry them; null where none do. */
export interface LintelDesign {
  readonly momentInLb: number;
  readonly shearLb: number;
  readonly bars: LintelBars | null;
  readonly stirrups: LintelStirrups | null;
  readonly trace: readonly TraceStep[];
}

/**
 * A lintel of one section under an even factored load: what the calculator and the check of a job both work.
 *
 * @param section    concrete, cover, stirrup, strengths                [in, psi]
 * @param spanIn     clear opening                                      [in]
 * @param loadLbPerFt factored, with the weight of the wall in it       [lb/ft]
 * @source aci-318-14 §9; statics
 */
export function designLintel(section: LintelSection, spanIn: number, loadLbPerFt: number): LintelDesign {
  const spanFt = spanIn / 12;
  const Mu = workedStep('factored moment', 'Mu = wu · l² / 8', `${n(loadLbPerFt)} · ${n(spanFt)}² / 8`, (loadLbPerFt * spanFt ** 2) / 8, 'ft·lb', 'statics');
  const Vu = workedStep('factored shear', 'Vu = wu · l / 2', `${n(loadLbPerFt)} · ${n(spanFt)} / 2`, (loadLbPerFt * spanFt) / 2, 'lb', 'statics');
  const bars = lintelBars(section, Mu.value * 12);
  const stirrups = bars === null ? null : lintelStirrups(section, bars.dIn, Vu.value);
  const forces = { momentInLb: Mu.value * 12, shearLb: Vu.value };
  if (bars === null || stirrups === null || stirrups.kind === 'too-small') return { ...forces, bars: null, stirrups, trace: [Mu, Vu] };
  return { ...forces, bars, stirrups, trace: [Mu, Vu, ...strengthSteps(section, bars, stirrups, Vu.value)] };
}

function strengthSteps({ widthIn: b, fcPsi, fyPsi }: LintelSection, { count, bar, areaIn2, dIn, strengthInLb }: LintelBars, { concreteLb, spacingIn }: LintelStirrups, shearLb: number) {
  return [
    workedStep('moment strength', 'φMn = 0.9 · As · fy · ( d − a / 2 )', `${count}-${bar}: As = ${n(areaIn2)}, fy = ${n(fyPsi)}, d = ${n(dIn)}, b = ${n(b)}, f'c = ${n(fcPsi)}`, strengthInLb / 12, 'ft·lb', 'aci-318-14 §22.2'),
    workedStep('shear of the concrete', "φVc = 0.75 · 2 · √f'c · b · d", `0.75 · 2 · √${n(fcPsi)} · ${n(b)} · ${n(dIn)}`, concreteLb, 'lb', 'aci-318-14 §22.5.5.1'),
    ...(spacingIn === null ? [] : [workedStep('spacing of the stirrups', "s = min( Av · fy · d / Vs, Av,min, d / 2, 24 in ), down to a whole inch", `Vs = ${n(Math.max(0, shearLb - concreteLb))} / 0.75, d = ${n(dIn)}, fy = ${n(fyPsi)}`, spacingIn, 'in', 'aci-318-14 §22.5.10.5, §9.7.6.2.2')]),
  ];
}
