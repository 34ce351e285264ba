import { toMm, type Nm } from '../../domain/quantity/length.js';
import type { LaidArc, LaidGable, LaidLedge, LaidTaper, LaidWall } from '../../domain/takeoff/laid.js';
import type { WallAnswer } from './takeoffs.schemas.js';

const MM2_PER_M2 = 1e6;
const MM3_PER_M3 = 1e9;

type Features = Pick<WallAnswer, 'arc' | 'gable' | 'ledges' | 'taper' | 'coreChanges' | 'carries'>;

const span = ({ from, to }: { readonly from: Nm; readonly to: Nm }): { fromMm: number; toMm: number } => ({ fromMm: toMm(from), toMm: toMm(to) });

/** What a wall has beside level courses: curve, slope, ledges, taper, other cores, walls above. */
export const featureAnswers = ({ arc, gable, ledges, taper, coreChanges, carries }: LaidWall): Features => ({
  arc: arc && arcAnswer(arc),
  gable: gable && gableAnswer(gable),
  ledges: ledges.map(ledgeAnswer),
  taper: taper && taperAnswer(taper),
  coreChanges: coreChanges.map(({ course, at, core, flush, seatOutside, seatInside }) => ({
    course,
    atMm: toMm(at),
    core: core.code,
    flush,
    seatOutsideMm: toMm(seatOutside),
    seatInsideMm: toMm(seatInside),
  })),
  carries: carries.map(({ storey, wall, core, seatOutside, seatInside, ...stretch }) => ({
    storey,
    wall,
    core,
    ...span(stretch),
    seatOutsideMm: toMm(seatOutside),
    seatInsideMm: toMm(seatInside),
  })),
});

const arcAnswer = (arc: LaidArc): NonNullable<Features['arc']> => ({
  turns: arc.turns,
  axisRadiusMm: toMm(arc.axisRadius),
  concaveRadiusMm: toMm(arc.concaveRadius),
  chordMm: arc.chord === null ? null : toMm(arc.chord),
  lastChordMm: arc.lastChord === null ? null : toMm(arc.lastChord),
  chords: arc.chords,
  gapMm: toMm(arc.gap),
  bandMm: toMm(arc.bandLength),
});

const gableAnswer = ({ rise, peakAt, courses, slopes }: LaidGable): NonNullable<Features['gable']> => ({
  riseMm: toMm(rise),
  peakAtMm: toMm(peakAt),
  courses,
  slopes: slopes.map(({ rises, length, degrees, capMm2, ...stretch }) => ({ ...span(stretch), rises, lengthMm: toMm(length), degrees, capM2: capMm2 / MM2_PER_M2 })),
});

const ledgeAnswer = ({ face, asked, bearing, course, spans, mitreStart, mitreEnd, concreteMm3 }: LaidLedge): Features['ledges'][number] => ({
  face,
  askedMm: toMm(asked),
  bearingMm: toMm(bearing),
  course,
  spans: spans.map(span),
  mitreStart,
  mitreEnd,
  concreteM3: concreteMm3 / MM3_PER_M3,
});

const taperAnswer = ({ faces, course, seatGain, spans, concreteMm3, upliftMm2 }: LaidTaper): NonNullable<Features['taper']> => ({
  faces,
  course,
  seatGainMm: toMm(seatGain),
  spans: spans.map(span),
  concreteM3: concreteMm3 / MM3_PER_M3,
  upliftM2: upliftMm2 / MM2_PER_M2,
});
