import { z } from 'zod';
import { listOf } from '../contract/contract.schemas.js';
import { FindingAnswer } from './findings.schemas.js';

const Hand = z.enum(['left', 'right']).nullable();
const Count = z.number().int().min(0).max(2_000_000_000);

export const BecauseAnswer = z
  .object({
    rule: z.string(),
    storey: z.string().nullable(),
    wall: z.string().nullable(),
    course: Count.nullable(),
    quantity: z.number(),
    atMm: z.array(z.number()).meta({ description: "Axis stations from the wall's own from, in order; of what runs along the wall the ends of its stretches" }),
  })
  .meta({ id: 'Because' });

const Stack = z
  .object({
    courses: Count,
    strips: Count,
    rippedMm: z.number().nullable(),
    heightMm: z.number(),
    deviationMm: z.number(),
  })
  .meta({ id: 'Stack' });

const Unit = z
  .object({
    sku: z.string(),
    kind: z.string(),
    core: z.string(),
    hand: Hand,
    pieces: Count,
    bought: Count,
    spare: Count,
    lowerBound: Count,
  })
  .meta({ id: 'Unit' });

const MaterialUse = z
  .object({
    sku: z.string(),
    kind: z.string(),
    quantity: z.number(),
    unit: z.enum(['ft', 'each']),
    because: z.array(BecauseAnswer),
  })
  .meta({ id: 'MaterialUse' });

const Piece = z
  .object({
    id: z.string(),
    fromMm: z.number(),
    toMm: z.number(),
    kind: z.string(),
    sku: z.string(),
    hand: Hand,
    why: z.string(),
    inside: z.boolean(),
    lengthMm: z.number().meta({ description: 'Of the whole piece as it is sawn: longer than its span across a mark and where an end is cut on the skew or mitred' }),
    slope: z
      .object({ fromHeightMm: z.number(), toHeightMm: z.number(), peakAtMm: z.number().nullable(), peakHeightMm: z.number().nullable() })
      .meta({ id: 'PieceSlope' })
      .nullable()
      .meta({ description: 'Heights left at its ends under a gable' }),
  })
  .meta({ id: 'Piece' });

const Course = z
  .object({
    n: Count,
    core: z.string(),
    fromMm: z.number().meta({ description: 'Where the forms of this course begin: `trimStartMm`, but for an end left free above a lower neighbour, which runs to its end as drawn' }),
    toMm: z.number().meta({ description: 'Where they end: `lengthMm − trimEndMm`, with the same exception' }),
    bottomMm: z.number(),
    heightMm: z.number(),
    voids: z.array(z.object({ fromMm: z.number(), toMm: z.number(), opening: z.string() }).meta({ id: 'CourseVoid' })),
    pieces: z.array(Piece),
  })
  .meta({ id: 'Course' });

const LaidStrip = z
  .object({
    afterCourse: Count,
    bottomMm: z.number(),
    heightMm: z.number(),
    sku: z.string(),
    runs: z.array(z.object({ fromMm: z.number(), toMm: z.number() }).meta({ id: 'StripRun' })),
  })
  .meta({ id: 'LaidStrip' });

const Span = z.object({ fromMm: z.number(), toMm: z.number() }).meta({ id: 'Span' });

const ArcAnswer = z
  .object({
    turns: z.enum(['left', 'right']),
    axisRadiusMm: z.number(),
    concaveRadiusMm: z.number().meta({ description: 'Radius of the foam face on which the chords touch' }),
    chordMm: z.number().nullable().meta({ description: 'Null where no chord fits the allowed gap: no forms are counted' }),
    lastChordMm: z.number().nullable(),
    chords: Count,
    gapMm: z.number(),
    bandMm: z.number(),
  })
  .meta({ id: 'RadiusWall' });

const GableAnswer = z
  .object({
    riseMm: z.number(),
    peakAtMm: z.number(),
    courses: Count,
    slopes: z.array(
      z.object({ fromMm: z.number(), toMm: z.number(), rises: z.string(), lengthMm: z.number(), degrees: z.number(), capM2: z.number() }).meta({ id: 'GableSlope' }),
    ),
  })
  .meta({ id: 'Gable' });

const LedgeAnswer = z
  .object({
    face: z.enum(['outside', 'inside']),
    askedMm: z.number(),
    bearingMm: z.number(),
    course: Count,
    spans: z.array(Span),
    mitreStart: z.boolean(),
    mitreEnd: z.boolean(),
    concreteM3: z.number().meta({ description: 'Beyond the wall\'s own core; part of the wall\'s concrete' }),
  })
  .meta({ id: 'Ledge' });

const TaperAnswer = z
  .object({ faces: z.enum(['one', 'both']), course: Count, seatGainMm: z.number(), spans: z.array(Span), concreteM3: z.number(), upliftM2: z.number() })
  .meta({ id: 'TaperTop' });

const CoreChangeAnswer = z
  .object({
    course: Count,
    atMm: z.number(),
    core: z.string(),
    flush: z.enum(['outside', 'inside', 'centre']),
    seatOutsideMm: z.number(),
    seatInsideMm: z.number(),
  })
  .meta({ id: 'CoreChange' });

const CarriedAnswer = z
  .object({ storey: z.string(), wall: z.string(), core: z.string(), fromMm: z.number(), toMm: z.number(), seatOutsideMm: z.number(), seatInsideMm: z.number() })
  .meta({ id: 'CarriedWall' });

export const WallAnswer = z
  .object({
    mark: z.string(),
    storey: z.string(),
    core: z.string(),
    lengthMm: z.number(),
    startOffsetMm: z.number(),
    trimStartMm: z.number(),
    trimEndMm: z.number(),
    stack: Stack,
    alternatives: z.array(Stack),
    concreteM3: z.number(),
    arc: ArcAnswer.nullable(),
    gable: GableAnswer.nullable(),
    ledges: z.array(LedgeAnswer),
    taper: TaperAnswer.nullable(),
    coreChanges: z.array(CoreChangeAnswer),
    carries: z.array(CarriedAnswer).meta({ description: 'Walls of the storey above that stand on this one' }),
    courses: z.array(Course).optional(),
    strips: z.array(LaidStrip).optional(),
  })
  .meta({ id: 'WallTakeoff' });
export type WallAnswer = z.infer<typeof WallAnswer>;

const JunctionAnswer = z
  .object({
    id: z.string(),
    kind: z.enum(['free-end', 'straight', 'corner', 'tee', 'crossing', 'unsettled']),
    turn: z.number(),
    walls: z.array(z.string()),
    sku: z.string().nullable(),
  })
  .meta({ id: 'Junction' });

const CutAnswer = z
  .object({
    storey: z.string(),
    sku: z.string(),
    form: Count,
    parts: z.array(
      z
        .object({ piece: z.string(), offsetMm: z.number(), lengthMm: z.number(), wall: z.string(), course: Count, turned: z.boolean().meta({ description: 'Sawn upside down beside the slope of its neighbour' }) })
        .meta({ id: 'CutPart' }),
    ),
    offcutMm: z.number(),
  })
  .meta({ id: 'Cut' });

const BondBreakAnswer = z
  .object({
    storey: z.string(),
    wall: z.string(),
    course: Count,
    atMm: z.number(),
    distanceMm: z.number(),
    cause: z.string(),
  })
  .meta({ id: 'BondBreak' });

export const TakeoffTotals = z
  .object({
    forms: Count,
    concreteM3: z.number(),
    concreteYd3: z.number(),
    orderYd3: z.number(),
    faceM2: z.number(),
    openingM2: z.number(),
  })
  .meta({ id: 'TakeoffTotals' });

export const TakeoffAnswer = z
  .object({
    revision: Count,
    engine: z.string(),
    range: z.object({ code: z.string(), version: Count }).meta({ id: 'RangeVersion' }),
    totals: TakeoffTotals,
    units: z.array(Unit),
    materials: z.array(MaterialUse),
    walls: z.array(WallAnswer),
    junctions: z.array(JunctionAnswer),
    concrete: z.array(
      z.object({ storey: z.string(), concreteM3: z.number(), orderYd3: z.number() }).meta({ id: 'StoreyConcrete' }),
    ),
    bondBreaks: z.array(BondBreakAnswer),
    instructions: z.array(
      z
        .object({
          rule: z.string(),
          storey: z.string(),
          wall: z.string().nullable(),
          course: Count.nullable(),
          text: z.string(),
        })
        .meta({ id: 'CrewInstruction' }),
    ),
    cuts: z.array(CutAnswer).optional(),
  })
  .meta({ id: 'Takeoff' });
export type TakeoffAnswer = z.infer<typeof TakeoffAnswer>;

export const TakeoffQuery = z.object({
  detail: z.enum(['courses']).optional().meta({ description: '`courses` adds every piece of every course and the cut list' }),
});
export type TakeoffQuery = z.infer<typeof TakeoffQuery>;

const TraceStep = z
  .object({
    name: z.string(),
    equation: z.string(),
    substituted: z.string(),
    value: z.number(),
    unit: z.string(),
    source: z.string(),
  })
  .meta({ id: 'TraceStep' });

export const CheckAnswer = z
  .object({
    check: z.string(),
    storey: z.string(),
    core: z.string().nullable(),
    results: z.record(z.string(), z.union([z.number(), z.string()])),
    places: z
      .array(
        z
          .object({ wall: z.string(), course: Count.nullable(), atMm: z.number().nullable(), results: z.record(z.string(), z.union([z.number(), z.string()])) })
          .meta({ id: 'CheckPlace' }),
      )
      .meta({ description: 'Where the answer differs from place to place; empty where one holds for the storey' }),
    trace: z.array(TraceStep),
    source: z.string(),
    defaults: z.array(z.string()),
    notes: z.array(z.string()),
    findings: z.array(FindingAnswer),
  })
  .meta({ id: 'Check' });
export type CheckAnswer = z.infer<typeof CheckAnswer>;
export const CheckList = listOf('CheckList', CheckAnswer);
export { TraceStep };
