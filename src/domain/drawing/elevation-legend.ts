import type { FormRange } from '../range/range.js';
import type { LengthUnit } from '../schedule/schedule.js';
import type { LaidStorey, LaidWall, Piece } from '../takeoff/laid.js';
import { teesOn } from './elevation-branches.js';
import { MITRE_FILL } from './elevation-features.js';
import { isMitred, reachOf } from './elevation-frame.js';
import { TINT } from './ink.js';
import { lengthLabel } from './length-label.js';
import { lookOf, pieceLook } from './piece-look.js';
import type { LookKey } from './piece-look.js';
import type { LegendEntry } from './sheet-furniture.js';

const KEYS: readonly LookKey[] = ['full', 'cut', 'corner-left', 'corner-right', 'corner-either', 'ledge', 'taper', 'by-advice', 'closure'];

/** Samples of what this wall shows, with the skus, and of nothing else. */
export function elevationLegend(wall: LaidWall, storey: LaidStorey, range: FormRange, units: LengthUnit): LegendEntry[] {
  const pieces = wall.courses.flatMap((course) => course.pieces);
  const entries: LegendEntry[] = [];
  for (const key of KEYS) {
    const alike = pieces.filter((piece) => pieceLook(piece, range).key === key);
    if (alike.length > 0)
      entries.push({
        text: wording(key, alike, range, units),
        fill: lookOf(key).fill,
        pattern: lookOf(key).pattern,
        stroke: null,
      });
  }
  const strip = wall.strips[0];
  if (strip)
    entries.push({
      text: `height strip ${strip.sku}, ${lengthLabel(strip.height, units)}`,
      fill: TINT.strip,
      pattern: null,
      stroke: null,
    });
  if (wall.stack.ripped !== null)
    entries.push({
      text: `ripped course, ${lengthLabel(wall.stack.ripped, units)}`,
      fill: TINT.full,
      pattern: 'dotted',
      stroke: 'rip',
    });
  if (pieces.some((piece) => piece.notches.length > 0)) {
    entries.push({ text: 'sawn out of a piece laid through', fill: TINT.notch, pattern: null, stroke: null });
  }
  if (wall.courses.some((course) => course.headJoints.some((joint) => joint.kind === 'seam'))) {
    entries.push({ text: 'seam: butt joint off the module', fill: TINT.full, pattern: null, stroke: 'seam' });
  }
  if (teesOn({ wall, storey }).some(({ tee }) => tee.side !== wall.outside)) {
    entries.push({ text: 'panel cut out on the far side for a tee', fill: null, pattern: null, stroke: 'hidden' });
  }
  const { start, end } = reachOf(wall, storey);
  if (start.skew !== 0 || end.skew !== 0)
    entries.push({ text: 'faces of an end on the skew', fill: TINT.full, pattern: null, stroke: 'skew' });
  return [...entries, ...featureEntries(wall, storey), ...sectionEntries(wall, storey)];
}

/** Lines of slopes, ledges, changes of cores, mitred ends and chords. */
function featureEntries(wall: LaidWall, storey: LaidStorey): LegendEntry[] {
  const line = (text: string, stroke: LegendEntry['stroke']): LegendEntry => ({ text, fill: TINT.full, pattern: null, stroke });
  const sample = (text: string, fill: string): LegendEntry => ({ text, fill, pattern: null, stroke: null });
  const faces = new Set(wall.ledges.map(({ face }) => face));
  const { start, end } = reachOf(wall, storey);
  const mitred = wall.courses.some((course) => [start, end].some((each) => isMitred({ wall, storey }, course, each)));
  const chords = wall.courses.some(({ headJoints }) => headJoints.some(({ kind }) => kind === 'chord'));
  return [
    ...(wall.gable === null ? [] : [line('slope: forms sawn along it', 'slope')]),
    ...(wall.ledges.length === 0 ? [] : [line('bearing of a ledge', 'ledge')]),
    ...(faces.has('outside') ? [sample('section of a ledge on this side', TINT.ledgeSection)] : []),
    ...(faces.has('inside') ? [{ ...sample('section of a ledge on the far side', TINT.paper), stroke: 'hidden' as const }] : []),
    ...(wall.coreChanges.length === 0 ? [] : [line('bed at which the core changes', 'change')]),
    ...(mitred ? [sample('end mitred, no corner unit', MITRE_FILL)] : []),
    ...(chords ? [line(wall.arc === null ? 'straight run meets a curve' : 'joint between chords, all one above the other', 'chord')] : []),
  ];
}

/** What is filled grey: the panel a branch takes out on this side, and the through walls this wall ends on. */
function sectionEntries(wall: LaidWall, storey: LaidStorey): LegendEntry[] {
  const sample = (text: string): LegendEntry => ({ text, fill: TINT.section, pattern: null, stroke: null });
  const through = storey.junctions.flatMap(({ tee }) => (tee?.branch === wall.mark ? [tee.through] : []));
  const cutOut = teesOn({ wall, storey }).some(({ tee }) => tee.side === wall.outside);
  return [
    ...(cutOut ? [sample('panel cut out on this side for a tee')] : []),
    ...[...new Set(through)].map((mark) => sample(`wall ${mark}, which this wall ends on, in section`)),
  ];
}

function wording(key: LookKey, pieces: readonly Piece[], range: FormRange, units: LengthUnit): string {
  const skus = [...new Set(pieces.map((piece) => piece.sku))].join(', ');
  switch (key) {
    case 'full':
      return `full form ${skus}, ${lengthLabel(range.formLength, units)}`;
    case 'cut':
      return `cut piece of ${skus}, with its length or its letter`;
    case 'ledge':
      return `ledge form ${skus}`;
    case 'taper':
      return `taper form ${skus}`;
    case 'closure':
      return `end closure ${skus}, inside the forms`;
    case 'by-advice':
      return 'formed as support advises';
    case 'corner-left':
      return `corner unit ${skus}, left hand`;
    case 'corner-right':
      return `corner unit ${skus}, right hand`;
    case 'corner-either':
      return `corner unit ${skus}, either hand`;
  }
}
