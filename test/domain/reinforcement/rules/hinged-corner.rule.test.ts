import { hingedCorner } from '../../../../src/domain/reinforcement/rules/hinged-corner.rule.js';
import type { Junction } from '../../../../src/domain/takeoff/laid.js';
import { coreChange, junction, laidJob, times } from '../../../support/laid.js';
import { CORES } from '../../../support/rule-range.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const hinged = (turn: number, courses: readonly number[]): Junction =>
  junction({
    id: 'S1-J2', kind: 'corner', walls: ['A', 'B'], turn, courses, sku: 'HG6', unit: 'corner-hinged',
    units: courses.map((course) => ({ course, hand: 'left', sku: 'HG6', piece: `h${course}` })),
  });

const walls = [{ mark: 'A', length: 240, courses: times(2) }, { mark: 'B', length: 120, courses: times(2) }];

const applies: readonly Applies[] = [
  {
    name: 'turn 60, two courses: 4 strips of 2 ft a unit; thrust 2 x 600 x 0.5 x sin 30 = 300 lb/ft',
    job: laidJob({ walls, junctions: [hinged(60, [1, 2])] }),
    materials: [['TAPE-4', 'S1', 'A', 1, 8], ['TAPE-4', 'S1', 'A', 2, 8]],
    says: [['Corner of A and B', '4 strips of tape, 24 in (610 mm) each', '300 lb/ft (4.38 kN/m)', '600 psf (from the pour as planned)']],
  },
  {
    name: 'the other hand of the turn thrusts as much: turn -60, core 10 in: 2 x 600 x 10/12 x sin 30 = 500 lb/ft',
    job: laidJob({ walls: walls.map((wall) => ({ ...wall, core: CORES[10] })), junctions: [hinged(-60, [1])] }),
    materials: [['TAPE-4', 'S1', 'A', 1, 8]],
    says: [['500 lb/ft (7.30 kN/m)']],
  },
  {
    name: 'six strips of 18 in where the range says so: 9 ft a unit',
    job: laidJob({ walls, junctions: [hinged(67.5, [1])] }),
    range: { parameters: { hingedCornerStrips: 6, tapeStripLength: 457_200_000 } },
    materials: [['TAPE-4', 'S1', 'A', 1, 9]],
    says: [['6 strips of tape, 18 in (457 mm) each', '333 lb/ft']],
  },
  {
    name: 'a range without tape cannot hold the hinge, and says so',
    job: laidJob({ walls, junctions: [hinged(60, [1, 2])] }),
    range: { materials: [] },
    materials: [],
    says: [['Corner of A and B']],
    findings: ['hold outside-method S1 {"rule":"hinged-corner","material":"tape","measuredIn":"ft"}'],
  },
  {
    name: 'above a change of the core the thrust is that of the narrower: 2 x 600 x 0.5 x sin 30 = 300 lb/ft',
    job: laidJob({ walls: walls.map((wall) => ({ ...wall, core: CORES[10], features: { coreChanges: [coreChange(2, CORES[6], 'outside' as const, -2)] } })), junctions: [hinged(60, [2])] }),
    materials: [['TAPE-4', 'S1', 'A', 2, 8]],
    says: [['300 lb/ft']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  {
    name: 'a square corner unit',
    job: laidJob({
      walls,
      junctions: [
        junction({
          id: 'S1-J2', kind: 'corner', walls: ['A', 'B'], turn: 90, courses: [1], sku: 'SQ6', unit: 'corner',
          units: [{ course: 1, hand: 'left', sku: 'SQ6-L', piece: 'c1' }],
        }),
      ],
    }),
  },
  { name: 'a turn that no unit makes', job: laidJob({ walls, junctions: [junction({ id: 'S1-J2', kind: 'unsettled', walls: ['A', 'B'], turn: 130, courses: [1, 2] })] }) },
];

testRule(hingedCorner, applies, doesNotApply);
