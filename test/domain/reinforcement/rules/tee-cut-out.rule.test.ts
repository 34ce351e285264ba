import { teeCutOut } from '../../../../src/domain/reinforcement/rules/tee-cut-out.rule.js';
import { inches } from '../../../../src/domain/quantity/length.js';
import type { Junction } from '../../../../src/domain/takeoff/laid.js';
import { junction, laidJob, times } from '../../../support/laid.js';
import { CORES } from '../../../support/rule-range.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const tee = (cut: readonly [number, number], courses: readonly number[], turn = 90): Junction =>
  junction({
    id: 'S1-J3', kind: 'tee', walls: ['A', 'P'], turn, courses,
    tee: { through: 'A', branch: 'P', cutFrom: inches(cut[0]), cutTo: inches(cut[1]), side: 'left' },
  });

const walls = [{ mark: 'A', length: 240, courses: times(2) }, { mark: 'P', length: 120, courses: times(2) }];

const applies: readonly Applies[] = [
  {
    name: 'branch core 8 in, two courses: bar 8 + 2 x 8 + 2 x 12 = 48 in, one wire tie, joint 2 x 16 in; force 600 x 8 x 16 / 144 = 533 lb',
    job: laidJob({ walls: walls.map((wall) => ({ ...wall, core: CORES[8] })), junctions: [tee([116, 124], [1, 2])] }),
    materials: [
      ['WIRE-16', 'S1', 'A', 1, 1], ['WIRE-16', 'S1', 'A', 2, 1],
      ['STRAP-1x3', 'S1', 'A', 1, 32 / 12], ['STRAP-1x3', 'S1', 'A', 2, 32 / 12],
      ['FOAM-24', 'S1', 'A', 1, 32 / 12], ['FOAM-24', 'S1', 'A', 2, 32 / 12],
      ['BAR-4', 'S1', 'A', 1, 4], ['BAR-4', 'S1', 'A', 2, 4],
    ],
    says: [['Tee of P on A', '8 in (203 mm) wide', 'one #4 bar of 48 in (1219 mm)', 'web 2 of P', 'take up the slack and no more', '533 lb (2.37 kN)']],
  },
  {
    name: 'branch core 6 in at 600 psf and 16 in: 400 lb a course (worked figure of decision 9); bar 6 + 16 + 24 = 46 in',
    job: laidJob({ walls, junctions: [tee([117, 123], [1])] }),
    materials: [['WIRE-16', 'S1', 'A', 1, 1], ['STRAP-1x3', 'S1', 'A', 1, 32 / 12], ['FOAM-24', 'S1', 'A', 1, 32 / 12], ['BAR-4', 'S1', 'A', 1, 46 / 12]],
    says: [['one #4 bar of 46 in', '400 lb (1.78 kN)']],
  },
  {
    name: 'a ripped course of 12 in: butt joint 2 x 12 in',
    job: laidJob({ walls: walls.map((wall) => ({ ...wall, courses: [{ height: 12, ripped: true }] })), junctions: [tee([117, 123], [1])] }),
    materials: [['WIRE-16', 'S1', 'A', 1, 1], ['STRAP-1x3', 'S1', 'A', 1, 2], ['FOAM-24', 'S1', 'A', 1, 2], ['BAR-4', 'S1', 'A', 1, 46 / 12]],
    says: [['300 lb']],
  },
  {
    name: 'a pin bar that the range does not list is a finding',
    job: laidJob({ walls, junctions: [tee([117, 123], [1])] }),
    range: { parameters: { teePinBar: '#9' } },
    materials: [['WIRE-16', 'S1', 'A', 1, 1], ['STRAP-1x3', 'S1', 'A', 1, 32 / 12], ['FOAM-24', 'S1', 'A', 1, 32 / 12]],
    says: [['Tee of P on A']],
    findings: ['hold outside-method S1 {"rule":"tee-cut-out","material":"bar #9","measuredIn":"ft"}'],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  { name: 'a tee in which no course has both walls', job: laidJob({ walls, junctions: [tee([117, 123], [])] }) },
  { name: 'a crossing', job: laidJob({ walls, junctions: [junction({ id: 'S1-J3', kind: 'crossing', walls: ['A', 'P'], courses: [1, 2] })] }) },
];

testRule(teeCutOut, applies, doesNotApply);
