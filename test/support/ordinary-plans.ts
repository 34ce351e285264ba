import type { Dimension, OpeningRow, ScheduleDocument, StoreyRow, WallRow } from './schedule-document.js';

type Points = readonly (readonly [number, number])[];
type OpeningFigures = readonly [wall: string, at: Dimension, sill: Dimension, width: Dimension, height: Dimension, lining?: 'buck' | 'end-closure'];

const ring = (points: Points, wall: Pick<WallRow, 'storey' | 'core' | 'height'>, prefix: string): WallRow[] =>
  points.map((from, index) => ({ mark: `${prefix}${index + 1}`, ...wall, from, to: points[(index + 1) % points.length]! }));

const chain = (points: Points, wall: Pick<WallRow, 'storey' | 'core' | 'height'>, prefix: string): WallRow[] =>
  ring(points, wall, prefix).slice(0, -1);

const box = (width: number, depth: number, x = 0, y = 0): Points => [[x, y], [x + width, y], [x + width, y + depth], [x, y + depth]];

const openingsOf = (rows: readonly OpeningFigures[]): OpeningRow[] =>
  rows.map(([wall, at, sill, width, height, lining], index) => ({
    mark: `O${index + 1}`, wall, at, sill, width, height, ...(lining ? { lining } : {}),
  }));

interface PlanFigures {
  readonly name: string;
  readonly walls: readonly WallRow[];
  readonly units?: ScheduleDocument['units'];
  readonly dimensionsTo?: ScheduleDocument['dimensionsTo'];
  readonly height?: Dimension;
  readonly storey?: Partial<StoreyRow>;
  readonly storeys?: readonly StoreyRow[];
  readonly openings?: readonly OpeningFigures[];
}

const plan = ({ name, walls, units = 'in', dimensionsTo = 'foam-face', height = 96, storey, storeys, openings = [] }: PlanFigures): ScheduleDocument => ({
  format: 'wallcourse/schedule@1', name, units, dimensionsTo, range: 'HERON-16',
  storeys: storeys ?? [{ id: 'S1', height, grade: 'above', storeyAbove: false, closed: false, ...storey }],
  walls, openings: openingsOf(openings),
});

const S1 = { storey: 'S1', core: '6' } as const;

/** Twenty plans such as come in every week. By the settled decisions none raises an advise or a hold. */
export const ORDINARY_PLANS: readonly ScheduleDocument[] = [
  plan({
    name: 'rectangle with a door and windows', walls: ring(box(480, 336), S1, 'A'), storey: { closed: true },
    openings: [['A1', 60, 0, 36, 84], ['A1', 180, 36, 48, 48], ['A2', 120, 36, 36, 48], ['A3', 200, 32, 72, 52]],
  }),
  plan({ name: 'rectangle, nine feet', walls: ring(box(36, 24), S1, 'A'), units: 'ft', height: 9, openings: [['A1', 10, 3, 6, 4], ['A3', 5, 0, 3, 7]] }),
  plan({ name: 'L in feet', units: 'ft', height: 8, walls: ring([[0, 0], [44, 0], [44, 18], [24, 18], [24, 36], [0, 36]], S1, 'L'), openings: [['L1', 20, 0, 8, 7]] }),
  plan({
    name: 'U in millimetres', units: 'mm', height: 2438.4,
    walls: ring([[0, 0], [15_000, 0], [15_000, 9_000], [10_000, 9_000], [10_000, 5_000], [5_000, 5_000], [5_000, 9_000], [0, 9_000]], { storey: 'S1', core: '8' }, 'U'),
    openings: [['U1', 3_000, 900, 1_200, 1_200], ['U1', 7_000, 0, 2_400, 2_100]],
  }),
  plan({
    name: 'T', walls: ring([[120, 0], [300, 0], [300, 160], [420, 160], [420, 360], [0, 360], [0, 160], [120, 160]], S1, 'T'),
    openings: [['T1', 70, 0, 40, 80], ['T5', 60, 30, 60, 44]],
  }),
  plan({
    name: 'courtyard', storey: { closed: true },
    walls: [...ring(box(720, 600), { storey: 'S1', core: '8' }, 'A'), ...ring([[200, 180], [200, 400], [480, 400], [480, 180]], { storey: 'S1', core: '8' }, 'C')],
    openings: [['C2', 100, 0, 72, 84], ['A1', 300, 0, 72, 84]],
  }),
  plan({
    name: 'bay window', height: 108,
    walls: ring([[0, 0], [144, 0], [216, -72], [312, -72], [384, 0], [528, 0], [528, 336], [0, 336]], S1, 'B'),
    openings: [['B3', 30, 24, 36, 60], ['B6', 120, 0, 36, 84]],
  }),
  plan({
    name: 'octagon', dimensionsTo: 'axis', height: 120,
    walls: ring(Array.from({ length: 8 }, (_, n) => [200 * Math.cos((n * Math.PI) / 4), 200 * Math.sin((n * Math.PI) / 4)] as const), { storey: 'S1', core: '8' }, 'O'),
    openings: [['O1', 58, 0, 36, 84]],
  }),
  plan({
    name: 'one corner of 67.5', walls: chain([[0, 0], [240, 0], [240 + 200 * Math.cos((67.5 * Math.PI) / 180), 200 * Math.sin((67.5 * Math.PI) / 180)]], S1, 'H'),
  }),
  plan({ name: 'garden wall', walls: chain([[0, 0], [20, 0]], S1, 'G'), units: 'ft', height: 8 }),
  plan({
    name: 'two walls of ten below ground', storey: { grade: 'below' }, height: 120,
    walls: chain([[0, 0], [300, 0], [300, 260]], { storey: 'S1', core: '10' }, 'R'),
  }),
  plan({
    name: 'rectangle with a partition', walls: [...ring(box(480, 336), S1, 'A'), ...chain([[220, 11], [220, 325]], S1, 'P')],
    openings: [['P1', 100, 0, 36, 84], ['A1', 80, 36, 48, 48], ['A1', 320, 36, 48, 48]],
  }),
  plan({
    name: 'two partitions, one thinner and ending free', storey: { closed: true },
    walls: [...ring(box(600, 400), { storey: 'S1', core: '8' }, 'A'), ...chain([[200, 13], [200, 387]], S1, 'P'), ...chain([[400, 13], [400, 160]], { storey: 'S1', core: '4' }, 'Q')],
    openings: [['A1', 60, 36, 60, 48], ['A1', 280, 36, 60, 48], ['A3', 60, 0, 36, 84]],
  }),
  plan({
    name: 'two storeys',
    storeys: [
      { id: 'S1', height: 108, grade: 'above', storeyAbove: true, closed: true },
      { id: 'S2', height: 96, grade: 'above', storeyAbove: false, closed: true, on: 'S1' },
    ],
    walls: [...ring(box(432, 312), { storey: 'S1', core: '8' }, 'A'), ...ring(box(432, 312), { storey: 'S2', core: '8' }, 'B')],
    openings: [['A1', 48, 0, 36, 84], ['A2', 100, 36, 60, 48], ['B1', 48, 36, 48, 48], ['B3', 240, 36, 72, 48]],
  }),
  plan({
    name: 'house with a lower garage', height: 128,
    walls: [...ring(box(480, 360), S1, 'A'), ...chain([[477, 60], [720, 60], [720, 300], [477, 300]], { ...S1, height: 96 }, 'G')],
    openings: [['G2', 24 + 48, 0, 96, 80], ['A1', 200, 0, 36, 84]],
  }),
  plan({
    name: 'basement, ten feet of eight', storey: { grade: 'below', storeyAbove: true, closed: true }, height: "10'-0\"", units: 'ft',
    walls: ring(box(40, 30), { storey: 'S1', core: '8' }, 'A'), openings: [['A1', "12'-6\"", "6'-0\"", "4'-0\"", "2'-0\""]],
  }),
  plan({
    name: 'twelve metres by nine', units: 'mm', height: 2_700, dimensionsTo: 'concrete-face',
    walls: ring(box(12_000, 9_000), S1, 'A'), openings: [['A1', 2_000, 0, 1_000, 2_100], ['A3', 5_000, 900, 1_800, 1_200]],
  }),
  plan({
    name: 'in words', units: 'ft', height: "9'-4\"",
    walls: [
      { mark: 'A', ...S1, from: ["0'-0\"", "0'-0\""], to: ["32'-6 1/2\"", "0'-0\""] }, { mark: 'B', ...S1, from: ["32'-6 1/2\"", "0'-0\""], to: ["32'-6 1/2\"", "24'-0\""] },
      { mark: 'C', ...S1, from: ["32'-6 1/2\"", "24'-0\""], to: ["0'-0\"", "24'-0\""] }, { mark: 'D', ...S1, from: ["0'-0\"", "24'-0\""], to: ["0'-0\"", "0'-0\""] },
    ],
    openings: [['A', "6'-0\"", 0, "3'-0\"", "6'-8\""], ['A', "14'-0\"", "3'-0\"", "5'-0\"", "4'-0\""]],
  }),
  plan({
    name: 'by lengths and turns', units: 'ft', height: 8,
    walls: [
      { mark: 'A', ...S1, length: 30, start: { joint: 'free' } },
      { mark: 'B', ...S1, length: 24, start: { joint: 'corner', turn: 90, with: { wall: 'A', end: 'end' } } },
      { mark: 'C', ...S1, length: 18, start: { joint: 'corner', turn: 45, with: { wall: 'B', end: 'end' } }, end: { joint: 'free' } },
    ],
  }),
  plan({
    name: 'three free walls, jambs closed', height: 104,
    walls: [...chain([[0, 0], [300, 0]], { storey: 'S1', core: '4' }, 'X'), ...chain([[0, 200], [263, 200]], { storey: 'S1', core: '6' }, 'Y'), ...chain([[0, 400], [180, 400]], { storey: 'S1', core: '10' }, 'Z')],
    openings: [['X1', 100, 0, 40, 80, 'end-closure'], ['Y1', 60, 32, 60, 48, 'end-closure'], ['Z1', 72, 0, 36, 80]],
  }),
];
