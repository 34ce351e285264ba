import { INCH_BARS } from '../engineering/astm-a615/bars.js';
import { LINTEL_FC_PSI, LINTEL_FY_PSI } from './lintel-place.js';
import { NM_PER_INCH, toMm } from '../quantity/length.js';
import { simplifiedDevelopment } from '../engineering/aci-318-14/simplified-development.js';
import type { BuildingCode } from '../schedule/schedule.js';
import type { ConcreteOver } from './lintel-over-opening.js';
import type { LaidOpening } from '../takeoff/laid.js';

const SAME = 1e-9;
/** irc-2018 R608.8.1, found in summaries: a #4 at least, within 12 in of a jamb, 24 in past the opening or developed; from 2 ft of width on. */
const IRC = { bar: '#4', withinMm: 304.8, pastIn: 24, fromMm: 609.6 } as const;
/** obc-2024 9.20.17, read: 10M from 600 mm of width on, two over 3 m, 600 mm past; interrupted verticals within 600 mm of the opening. */
const OBC = { bar: '10M', withinMm: 600, pastMm: 600, fromMm: 600, twoOverMm: 3000 } as const;

/** Bars around an opening: beside each jamb, over the head where concrete is over it, under a sill. */
export function trimBars({ sill }: LaidOpening, over: ConcreteOver, code: BuildingCode): Readonly<Record<string, number | string>> {
  const rule = code === 'obc-2024' ? OBC : IRC;
  const clearMm = toMm(over.clear);
  const count = code === 'obc-2024' && clearMm > OBC.twoOverMm + SAME ? 2 : 1;
  const asked = code === 'obc-2024' ? 'obc-2024 9.20.17' : 'irc-2018 R608.8.1, from summaries';
  return {
    trimBar: rule.bar, trimBesideEach: count, trimAbove: over.least > 0 ? count : 0, trimBelow: sill > 0 ? count : 0, trimWithinMm: rule.withinMm,
    trimPastCornerMm: code === 'obc-2024' ? OBC.pastMm : toMm(ircPastIn() * NM_PER_INCH),
    trimBy: clearMm < rule.fromMm - SAME ? 'common practice: the code asks for none at this width' : asked,
  };
}

/** At least 24 in and developed; a bar over the head has more than a foot of fresh concrete under it, and its factor serves all of them. */
function ircPastIn(): number {
  const developed = simplifiedDevelopment(INCH_BARS[IRC.bar].diameterIn, LINTEL_FC_PSI, LINTEL_FY_PSI, true, false);
  return Math.max(IRC.pastIn, Math.ceil(developed - SAME));
}
