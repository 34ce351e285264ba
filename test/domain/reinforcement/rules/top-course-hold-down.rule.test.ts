import { topCourseHoldDown } from '../../../../src/domain/reinforcement/rules/top-course-hold-down.rule.js';
import { joint, junction, laidGable, laidJob, laidTaper, parted, times } from '../../../support/laid.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const FOUR_JOINTS = [joint(48), joint(96), joint(144), joint(192)];

const applies: readonly Applies[] = [
  {
    name: '20 ft: every 2nd web is 16 in, 15 strips a face of 2 ft = 60 ft; a cable tie at each of 4 head joints',
    job: laidJob({ walls: [{ length: 240, courses: [{ joints: [joint(24)] }, { joints: FOUR_JOINTS }] }] }),
    materials: [['TAPE-4', 'S1', 'A', 2, 60], ['CTIE-14', 'S1', 'A', 2, 4]],
    stations: [['CTIE-14', 'A', 2, [48, 96, 144, 192]]],
    says: [['every 2 webs (16 in (406 mm)), both faces', 'a cable tie between neighbours at every head joint']],
  },
  {
    name: 'an opening to the top parts the run: ceil(100/16) + ceil(104/16) = 7 + 7 = 14 strips a face = 56 ft',
    job: laidJob({ walls: [{ length: 240, courses: [...times(5), { voids: [[100, 136]], joints: [joint(48), joint(188, 'leg')] }] }] }),
    materials: [['TAPE-4', 'S1', 'A', 6, 56], ['CTIE-14', 'S1', 'A', 6, 2]],
    says: [['Top course']],
  },
  {
    name: 'wire ties where the range says so, every web where it says 1: 30 strips a face',
    job: laidJob({ onFooting: false, walls: [{ length: 240, courses: [...times(5), { joints: [joint(48)] }] }] }),
    range: { parameters: { holdDownTieBy: 'wire-tie', holdDownEveryWebs: 1 } },
    materials: [['TAPE-4', 'S1', 'A', 6, 120], ['WIRE-16', 'S1', 'A', 6, 1]],
    says: [['every 1 web (8 in', 'a wire tie']],
  },
  {
    name: 'a wall of one course has nothing below to tape to; its joints are tied',
    job: laidJob({ walls: [{ length: 240, courses: [{ joints: FOUR_JOINTS }] }] }),
    materials: [['CTIE-14', 'S1', 'A', 1, 4]],
    says: [['Top course']],
  },
  {
    name: 'a wall of 20 ft parted at a mark takes what it takes in one: 15 strips a face, 7 + 8, not 7 + 9',
    job: laidJob(parted({ length: 100, courses: times(2) }, { length: 140, courses: times(2) })),
    materials: [['TAPE-4', 'S1', 'A', 2, 28], ['TAPE-4', 'S1', 'B', 2, 32]],
    says: [['Top course']],
  },
  {
    name: 'with the second part drawn the other way round and an opening in it: ceil(130/16) = 9, ceil(80/16) = 5',
    job: laidJob(parted({ length: 100, courses: times(2) }, { length: 140, reversed: true, courses: [{}, { voids: [[80, 110]] }] })),
    materials: [['TAPE-4', 'S1', 'A', 2, 28], ['TAPE-4', 'S1', 'B', 2, 28]],
    // Along the line the parts of 16 in beyond the mark begin at 112, 128 (2 in are left) and behind the opening at 160: own stations are 240 less.
    stations: [['TAPE-4', 'A', 2, [8, 24, 40, 56, 72, 88, 98]], ['TAPE-4', 'B', 2, [8, 24, 40, 56, 72, 111, 120]]],
    says: [['Top course']],
  },
  {
    name: 'a gable of 40 in over 60: courses step in by 12 in a side; course 3 lies open 12 + 12, course 4 the same, course 5 over 24 to 36: 2, 2 and ceil(12/16) strips a face; course 2 lies under the slope',
    job: laidJob({
      walls: [{
        length: 60, gableCourses: 3,
        courses: [
          {}, { joints: [joint(48)] },
          { joints: [joint(12), joint(30)] }, { from: 12, to: 48, joints: [joint(20), joint(30)] }, { height: 8, from: 24, to: 36, joints: [joint(30)] },
        ],
        features: { gable: laidGable(40, [[30, 50], [30, 50]], 3) },
      }],
    }),
    materials: [
      ['TAPE-4', 'S1', 'A', 3, 8], ['TAPE-4', 'S1', 'A', 4, 8], ['TAPE-4', 'S1', 'A', 5, 4],
      ['CTIE-14', 'S1', 'A', 3, 1], ['CTIE-14', 'S1', 'A', 4, 1], ['CTIE-14', 'S1', 'A', 5, 1],
    ],
    stations: [['TAPE-4', 'A', 3, [6, 54]], ['CTIE-14', 'A', 3, [12]]],
    says: [['On the gable the same up every slope']],
  },
  {
    name: 'beside a level wall of its line: the level top of 100 in takes 7 strips a face in course 2, the gable 1 + 1 and ceil(36/16) = 3 in courses 3 and 4',
    job: laidJob(parted(
      { length: 100, courses: times(2) },
      { length: 60, courses: [...times(3), { from: 12, to: 48 }], gableCourses: 2, features: { gable: laidGable(26, [[30, 40], [30, 40]], 2) } },
    )),
    materials: [['TAPE-4', 'S1', 'A', 2, 28], ['TAPE-4', 'S1', 'B', 3, 8], ['TAPE-4', 'S1', 'B', 4, 12]],
    says: [['Top course'], ['On the gable']],
  },
  {
    name: 'a taper mitred at a corner: node to node, 240 / 16 = 15 and ceil(120 / 16) = 8 strips a face, not to the tips',
    job: laidJob({
      walls: [
        { mark: 'A', length: 240, courses: [{}, { to: 245.5 }], features: { taper: laidTaper('one', 2, [[0, 245.5]]) } },
        { mark: 'B', length: 120, courses: [{}, { from: -9 }], features: { taper: laidTaper('one', 2, [[-9, 120]]) } },
      ],
      junctions: [junction({ id: 'S1-J2', kind: 'corner', walls: ['A', 'B'], turn: 90, courses: [1, 2], sku: 'SQ6', unit: 'corner', units: [{ course: 1, hand: 'left', sku: 'SQ6-L', piece: 'c1' }] })],
    }),
    materials: [['TAPE-4', 'S1', 'A', 2, 60], ['TAPE-4', 'S1', 'B', 2, 32]],
    says: [['Top course']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [{ name: 'a storey without walls', job: laidJob({ walls: [] }) }];

testRule(topCourseHoldDown, applies, doesNotApply);
