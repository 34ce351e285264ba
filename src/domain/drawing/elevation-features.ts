import type { Nm } from '../quantity/length.js';
import type { LengthUnit } from '../schedule/schedule.js';
import type { LaidCourse, LaidStorey, LaidWall } from '../takeoff/laid.js';
import { isMitred } from './elevation-frame.js';
import type { ElevationFrame } from './elevation-frame.js';
import { TINT } from './ink.js';
import { lengthLabel } from './length-label.js';

type Job = Pick<ElevationFrame, 'wall' | 'storey'>;

/** Side of the mark of a mitred end, as a share of the course's height. */
const MITRE_SHARE = 0.3;
/** Depth of the lip and foot of a ledge's section, as shares of the course's height. */
const LIP = 0.3;
const FOOT = 0.85;

/** Bearing lines and sections of ledges, the bed of a change of cores, marks of mitred ends, joints between chords. */
export function drawFeatures(frame: ElevationFrame): void {
  drawChordJoints(frame);
  drawLedges(frame);
  drawCoreChanges(frame);
  for (const course of frame.wall.courses) drawMitres(frame, course);
}

/** The bearing as a heavy line along its forms; at their beginning the section, dashed where the ledge is on the far side. */
function drawLedges(frame: ElevationFrame): void {
  const { sheet, wall } = frame;
  for (const ledge of wall.ledges) {
    const course = wall.courses.find(({ n }) => n === ledge.course);
    if (course === undefined) continue;
    const y = frame.y(ledge.bearing);
    for (const span of ledge.spans) {
      sheet.line('ledge', { x: frame.x(span.from), y }, { x: frame.x(span.to), y });
      const section = sectionAt(span.from, ledge.projection, course).map(({ at, level }) => ({ x: frame.x(at), y: frame.y(level) }));
      const seen = ledge.face === 'outside';
      sheet.polygon(seen ? 'piece' : 'hidden', section, { fill: seen ? TINT.ledgeSection : TINT.paper, subject: `ledge:${ledge.course}` });
    }
  }
}

/** The ledge turned into the plane of the wall: level on top, a lip, and back to the panel toward the foot of the course. */
function sectionAt(from: Nm, projection: Nm, { bottom, height }: LaidCourse): { at: Nm; level: Nm }[] {
  const top = bottom + height;
  const below = (share: number): Nm => top - Math.round(height * share);
  return [
    { at: from, level: top },
    { at: from + projection, level: top },
    { at: from + projection, level: below(LIP) },
    { at: from, level: below(FOOT) },
  ];
}

/** Where in a course letters would stand on the section of a ledge. */
export const ledgeSections = ({ ledges }: LaidWall, course: LaidCourse): { readonly from: Nm; readonly to: Nm }[] =>
  ledges
    .filter((ledge) => ledge.course === course.n)
    .flatMap(({ spans, projection }) => spans.map(({ from }) => ({ from, to: from + projection })));

function drawCoreChanges(frame: ElevationFrame): void {
  const { wall } = frame;
  for (const { at } of wall.coreChanges) {
    const beside = wall.courses.filter(({ bottom, height }) => bottom === at || bottom + height === at);
    const y = frame.y(at);
    const [from, to] = [Math.min(...beside.map((course) => course.from)), Math.max(...beside.map((course) => course.to))];
    if (beside.length > 0) frame.sheet.line('change', { x: frame.x(from), y }, { x: frame.x(to), y });
  }
}

function drawMitres(frame: ElevationFrame, course: LaidCourse): void {
  for (const end of frame.ends.filter((candidate) => isMitred(frame, course, candidate))) {
    const [at, inward] = end.node === 0 ? [course.from, 1] : [course.to, -1];
    const side = Math.round(course.height * MITRE_SHARE);
    const corner = { x: frame.x(at), y: frame.y(course.bottom) };
    const points = [corner, { x: frame.x(at + inward * side), y: corner.y }, { x: corner.x, y: corner.y + side }];
    frame.sheet.polygon('piece', points, { fill: MITRE_FILL, subject: `mitre:${course.n}` });
  }
}

export const MITRE_FILL = '#33404a';

function drawChordJoints(frame: ElevationFrame): void {
  for (const course of frame.wall.courses) {
    for (const { at } of course.headJoints.filter(({ kind }) => kind === 'chord')) {
      const x = frame.x(at);
      frame.sheet.line('chord', { x, y: frame.y(course.bottom) }, { x, y: frame.y(course.bottom + course.height) });
    }
  }
}

/** Heights above the base that carry something or change the wall: each has its dimension beside the stack's. */
export const featureHeights = ({ ledges, coreChanges }: LaidWall): Nm[] =>
  [...new Set([...ledges.map(({ bearing }) => bearing), ...coreChanges.map(({ at }) => at)])].sort((a, b) => a - b);

/** `10" below, 6" above 5'-4"`; the core alone where it stays the same. */
export function coreText({ core, coreChanges }: LaidWall, units: LengthUnit): string {
  const above = coreChanges.map((change) => `, ${lengthLabel(change.core.width, units)} above ${lengthLabel(change.at, units)}`);
  return `${lengthLabel(core.width, units)}${above.join('')}`;
}

/** What the crew must know of ledges, tapers, changes of the core and curves that no figure on the wall says. */
export function featureNotes(wall: LaidWall, storey: LaidStorey, units: LengthUnit): string[] {
  return [...ledgeNotes(wall, units), ...taperNotes(wall, units), ...changeNotes({ wall, storey }, units), ...arcNotes(wall, units)];
}

function ledgeNotes({ ledges, startOffset, dimensionLength }: LaidWall, units: LengthUnit): string[] {
  const label = (value: Nm): string => lengthLabel(value, units);
  return ledges.map(({ face, bearing, asked, course, projection, spans, mitreStart, mitreEnd }) => {
    const place = (at: Nm): string => stationText(at + startOffset, dimensionLength, units);
    const runs = spans.map(({ from, to }) => `${place(from)} to ${place(to)}`).join(', ');
    const off = asked === bearing ? '' : ` (${label(asked)} asked)`;
    const mitres = [mitreStart ? 'start' : '', mitreEnd ? 'end' : ''].filter((end) => end !== '').join(' and ');
    const mitred = mitres === '' ? '' : `, mitred at ${mitres}`;
    return `Ledge ${face}: bears at ${label(bearing)}${off}, course ${course}, ${label(projection)} out, forms ${runs}${mitred}`;
  });
}

/** A station from the start of the dimension line: `5" before the start`, `12'-0"`, `5" past the end`. */
function stationText(at: Nm, whole: Nm, units: LengthUnit): string {
  if (at < 0) return `${lengthLabel(-at, units)} before the start`;
  return at > whole ? `${lengthLabel(at - whole, units)} past the end` : lengthLabel(at, units);
}

function taperNotes({ taper }: LaidWall, units: LengthUnit): string[] {
  if (taper === null) return [];
  const faces = taper.faces === 'one' ? 'one face' : 'both faces';
  return [`Taper top, course ${taper.course}: ${faces}, seat ${lengthLabel(taper.seatGain, units)} wider at the top`];
}

function changeNotes({ wall }: Job, units: LengthUnit): string[] {
  const label = (value: Nm): string => lengthLabel(value, units);
  const flushes = { outside: 'flush outside', inside: 'flush inside', centre: 'on one axis' } as const;
  return wall.coreChanges.map(({ course, at, core, flush, seatOutside, seatInside }) => {
    const seats = [
      seatOutside > 0 ? `${label(seatOutside)} seat outside` : '',
      seatInside > 0 ? `${label(seatInside)} seat inside` : '',
    ].filter((seat) => seat !== '');
    const seat = seats.length === 0 ? 'no bare seat' : seats.join(', ');
    return `From course ${course} at ${label(at)} core ${label(core.width)}, ${flushes[flush]}, ${seat}`;
  });
}

function arcNotes({ arc }: LaidWall, units: LengthUnit): string[] {
  if (arc === null) return [];
  const label = (value: Nm): string => lengthLabel(value, units);
  const radius = `Radius wall, unrolled along its axis: axis radius ${label(arc.axisRadius)}, concave face ${label(arc.concaveRadius)}`;
  if (arc.chord === null) return [`${radius}; no chord fits the allowed gap, by advice`];
  const last = arc.lastChord === null || arc.lastChord === arc.chord ? '' : `, the last ${label(arc.lastChord)}`;
  return [
    radius,
    `${arc.chords} chords a course of ${label(arc.chord)} on the concave face${last}; gap ${label(arc.gap)} at the convex face; ` +
      `band ${label(arc.bandLength)}`,
  ];
}
