import type { Measurement } from '../../../src/domain/pipeline.js';
import { inches, type Nm } from '../../../src/domain/quantity/length.js';
import type { LaidWall } from '../../../src/domain/takeoff/laid.js';

const core = { code: '6', width: inches(6), family: 'flat', ratedPressurePsf: 750 } as const;
const area = (a: Nm, b: Nm) => BigInt(a) * BigInt(b);

/** A free wall of one form, 48 in long, one course of 16 in, a 6 in core, an opening of 8 in by 16 in. */
export const wall: LaidWall = {
  mark: 'A',
  storey: 'S1',
  core,
  thickness: inches(11),
  base: 0,
  askedHeight: inches(16.125),
  length: inches(48),
  startOffset: inches(5.5),
  dimensionLength: inches(48),
  trimStart: 0,
  trimEnd: inches(1),
  outside: 'right',
  axisFrom: { x: 0, y: 0 },
  axisTo: { x: inches(48), y: 0 },
  stack: { courses: 1, strips: 0, ripped: null, height: inches(16), deviation: -inches(0.125) },
  alternatives: [{ courses: 2, strips: 0, ripped: inches(8), height: inches(24), deviation: inches(7.875) }],
  courses: [
    {
      n: 1,
      bottom: 0,
      height: inches(16),
      ripped: false,
      top: true,
      from: 0,
      to: inches(47),
      voids: [{ from: inches(20), to: inches(28), opening: 'D1' }],
      pieces: [
        {
          id: 'S1-A-1-1',
          from: 0,
          to: inches(20),
          kind: 'straight',
          sku: 'ST6',
          hand: null,
          why: 'starter',
          inside: false,
          counted: true,
          junction: null,
          pieceLength: inches(20),
          cutEnds: 1,
          webs: [inches(4), inches(12)],
          slope: null, notches: [],
        },
      ],
      headJoints: [],
    },
  ],
  strips: [
    {
      afterCourse: 1,
      bottom: inches(16),
      height: inches(3),
      sku: 'HS6',
      runs: [{ from: 0, to: inches(48) }],
      pieces: [{ length: inches(48) }],
    },
  ],
  openings: [],
  arc: null,
  gable: null,
  ledges: [],
  taper: null,
  coreChanges: [],
  carries: [],
  startJunction: 'S1-J1',
  endJunction: 'S1-J2',
  concreteNm3: area(inches(40), inches(16)) * BigInt(inches(6)),
  faceNm2: area(inches(48), inches(16)),
  openingNm2: area(inches(8), inches(16)),
};

export const measurement: Measurement = {
  engine: '0.1.0',
  range: { code: 'HERON-16', version: 1 },
  takeoff: {
    laid: {
      storeys: [
        {
          id: 'S1',
          grade: 'above',
          storeyAbove: false,
          onFooting: true,
          walls: [wall],
          junctions: [
            {
              id: 'S1-J1',
              kind: 'free-end',
              turn: 0,
              walls: ['A'],
              sku: null,
              unit: null,
              at: { x: 0, y: 0 },
              courses: [1],
              tee: null,
              units: [],
            },
          ],
        },
      ],
    },
    units: [
      {
        sku: 'ST6',
        kind: 'straight',
        core: '6',
        hand: null,
        pieces: 2,
        bought: 1,
        spare: 1,
        lowerBound: 1,
        because: [{ rule: 'course', storey: 'S1', wall: 'A', course: 1, quantity: 1 }],
      },
      { sku: 'EC6', kind: 'end-closure', core: '6', hand: null, pieces: 2, bought: 2, spare: 0, lowerBound: 2, because: [] },
    ],
    cuts: [
      {
        storey: 'S1',
        sku: 'ST6',
        form: 1,
        parts: [{ piece: 'S1-A-1-1', offset: 0, length: inches(20), wall: 'A', course: 1, turned: false }],
        offcut: inches(28),
      },
    ],
    bondBreaks: [{ storey: 'S1', wall: 'A', course: 1, at: inches(20), distance: inches(4), cause: 'opening' }],
    concrete: [{ storey: 'S1', nm3: area(inches(40), inches(16)) * BigInt(inches(6)), orderYd3: 0.75 }],
    findings: [],
  },
  materials: [
    {
      sku: 'TAPE-4',
      kind: 'tape',
      size: '4 in',
      pack: { quantity: 150, unit: 'ft' },
      quantity: 12,
      unit: 'ft',
      because: [{ rule: 'end-closure', storey: 'S1', wall: 'A', course: 1, quantity: 12 }],
    },
  ],
  instructions: [{ rule: 'end-closure', storey: 'S1', wall: 'A', course: 1, text: 'Tape the closure on both faces.' }],
  checks: [],
  bracing: [
    {
      storey: 'S1', side: 'inside', spacing: inches(72), count: 1,
      walls: [{ mark: 'A', braces: [{ at: inches(12), reason: 'free-end', width: inches(72), height: inches(16), axial: 4.5, horizontal: 2.7, uplift: null }] }],
      cases: [{ forms: 'empty', topLoad: 1.5, governs: 'minimum-load' }, { forms: 'filled', topLoad: null, governs: 'outside-method' }],
      trace: [], source: 'hanna-formwork section on bracing', defaults: [], notes: [], findings: [],
    },
  ],
  checklist: [],
  findings: [],
  lifted: [],
  questions: [],
};
