import { stripCourse } from '../../../../src/domain/reinforcement/rules/strip-course.rule.js';
import { junction, laidJob, laidLedge, parted, strip, times } from '../../../support/laid.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const applies: readonly Applies[] = [
  {
    name: '20 ft of strip: 240 / 16 = 15 tapes a face of 2 ft = 60 ft',
    job: laidJob({ walls: [{ length: 240, courses: times(2), strips: [strip(1, [[0, 240]])] }] }),
    materials: [['TAPE-4', 'S1', 'A', 1, 60]],
    stations: [['TAPE-4', 'A', 1, [8, 24, 40, 56, 72, 88, 104, 120, 136, 152, 168, 184, 200, 216, 232]]],
    says: [['1 height strip, on course 1', '24 in (610 mm) each, every 16 in (406 mm) on both faces']],
  },
  {
    name: 'mitred past its nodes at both corners, the strip is taped over the axis length only',
    job: laidJob({ walls: [{ length: 240, courses: times(2), strips: [strip(1, [[-5.5, 245.5]])] }] }),
    materials: [['TAPE-4', 'S1', 'A', 1, 60]],
    says: [['1 height strip, ']],
  },
  {
    name: 'a window of 36 in: ceil(50/16) + ceil(154/16) = 4 + 10 = 14 tapes a face = 56 ft; each strip for itself',
    job: laidJob({ walls: [{ length: 240, courses: times(3), strips: [strip(1, [[0, 50], [86, 240]]), strip(2, [[0, 240]])] }] }),
    materials: [['TAPE-4', 'S1', 'A', 1, 56], ['TAPE-4', 'S1', 'A', 2, 60]],
    says: [['2 height strips, on course 1, 2: ']],
  },
  {
    name: 'a remainder takes a tape of its own: 17 in is 2 tapes a face',
    job: laidJob({ walls: [{ length: 17, courses: times(2), strips: [strip(1, [[0, 17]])] }] }),
    materials: [['TAPE-4', 'S1', 'A', 1, 8]],
    stations: [['TAPE-4', 'A', 1, [8, 16.5]]],
    says: [['1 height strip, ']],
  },
  {
    name: 'parted at a mark, 20 ft of strip takes what it takes in one: 7 + 8 tapes a face',
    job: laidJob(parted({ length: 100, courses: times(2), strips: [strip(1, [[-5.5, 100]])] }, { length: 140, courses: times(2), strips: [strip(1, [[0, 145.5]])] })),
    materials: [['TAPE-4', 'S1', 'A', 1, 28], ['TAPE-4', 'S1', 'B', 1, 32]],
    stations: [['TAPE-4', 'A', 1, [8, 24, 40, 56, 72, 88, 98]], ['TAPE-4', 'B', 1, [20, 36, 52, 68, 84, 100, 116, 132]]],
    says: [['1 height strip, '], ['1 height strip, ']],
  },
  {
    name: 'on a ledge course that is mitred at its corner the tapes stop at the node: 15 and ceil(120/16) = 8 a face',
    job: laidJob({
      walls: [
        { mark: 'A', length: 240, courses: [{ to: 245.5 }, {}], strips: [strip(1, [[0, 245.5]])], features: { ledges: [laidLedge(1, [[0, 245.5]])] } },
        { mark: 'B', length: 120, courses: [{ from: -9 }, {}], strips: [strip(1, [[-9, 120]])] },
      ],
      junctions: [junction({ id: 'S1-J2', kind: 'corner', walls: ['A', 'B'], turn: 90, courses: [1, 2], sku: 'SQ6', unit: 'corner', units: [{ course: 2, hand: 'left', sku: 'SQ6-L', piece: 'c' }] })],
    }),
    materials: [['TAPE-4', 'S1', 'A', 1, 60], ['TAPE-4', 'S1', 'B', 1, 32]],
    says: [['1 height strip, '], ['1 height strip, ']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [{ name: 'a wall without strips', job: laidJob({ walls: [{ length: 240, courses: times(6) }] }) }];

testRule(stripCourse, applies, doesNotApply);
