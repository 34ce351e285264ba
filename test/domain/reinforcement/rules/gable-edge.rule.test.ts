import { inches } from '../../../../src/domain/quantity/length.js';
import { gableEdge } from '../../../../src/domain/reinforcement/rules/gable-edge.rule.js';
import { laidGable, laidJob, times, type WallSketch } from '../../../support/laid.js';
import { CORES } from '../../../support/rule-range.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

/** Two courses under a gable of 40 in: courses 3 and 4 of 16 in and course 5 of 8. */
const gabled = (length: number, slopes: readonly (readonly [number, number])[], rest: Partial<WallSketch> = {}): WallSketch => ({
  length, courses: [...times(4), { height: 8 }], gableCourses: 3, features: { gable: laidGable(40, slopes, 3) }, ...rest,
});

/** 5, 12, 13: 40 in over 96 is 104 long at 22.6 degrees. 4, 3, 5: 40 over 30 is 50 long at 53.1 degrees. */
const FLAT = [96, 104] as const;
const STEEP = [30, 50] as const;

const applies: readonly Applies[] = [
  {
    name: 'two slopes of 104 in, both faces: 416 in; 16/40 of each slope, 41.6 in, lies in a whole course: 4 x 41.6 / 12 ft',
    job: laidJob({ walls: [gabled(192, [FLAT, FLAT])] }),
    materials: [['BOARD-1x4', 'S1', 'A', 3, 166.4 / 12], ['BOARD-1x4', 'S1', 'A', 4, 166.4 / 12], ['BOARD-1x4', 'S1', 'A', 5, 83.2 / 12]],
    says: [['Slope from station 0 in (0 mm) to station 96 in', '104 in (2642 mm) a face'], ['station 96 in (2438 mm) to station 192 in']],
  },
  {
    name: 'a steep slope beside a flat one: 20 x (2 + 2 boards over 6 in) + 41.6 x 2 = 163.2 in a course; cap holds 300 lb/ft',
    job: laidJob({ walls: [gabled(126, [STEEP, FLAT])] }),
    materials: [['BOARD-1x4', 'S1', 'A', 3, 13.6], ['BOARD-1x4', 'S1', 'A', 4, 13.6], ['BOARD-1x4', 'S1', 'A', 5, 6.8]],
    says: [['At 53.1 degrees', '2 boards side by side', '300 lb/ft (4.38 kN/m) of slope at 600 psf'], ['104 in']],
  },
  {
    name: 'one slope, core 10 in: three boards over it; 20 x (2 + 3) = 100 in a course',
    job: laidJob({ walls: [gabled(30, [STEEP], { core: CORES[10] })] }),
    materials: [['BOARD-1x4', 'S1', 'A', 3, 100 / 12], ['BOARD-1x4', 'S1', 'A', 4, 100 / 12], ['BOARD-1x4', 'S1', 'A', 5, 50 / 12]],
    says: [['3 boards side by side']],
  },
  {
    name: 'wider boards: one covers 6 in; the limit itself is steep',
    job: laidJob({ walls: [gabled(30, [STEEP])] }),
    range: { parameters: { gableBoardWidth: inches(7.5), gableSteepFromDeg: (Math.atan2(40, 30) * 180) / Math.PI } },
    materials: [['BOARD-1x4', 'S1', 'A', 3, 5], ['BOARD-1x4', 'S1', 'A', 4, 5], ['BOARD-1x4', 'S1', 'A', 5, 2.5]],
    says: [['1 board side by side']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [{ name: 'a level top', job: laidJob({ walls: [{ length: 240, courses: times(6) }] }) }];

testRule(gableEdge, applies, doesNotApply);
