import { rippedEdge } from '../../../../src/domain/reinforcement/rules/ripped-edge.rule.js';
import { laidJob, times } from '../../../support/laid.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const applies: readonly Applies[] = [
  {
    name: '20 ft of ripped top course: 20 ft of strap on each face',
    job: laidJob({ walls: [{ length: 240, courses: [...times(6), { height: 12, ripped: true }] }] }),
    materials: [['STRAP-1x3', 'S1', 'A', 7, 40]],
    says: [['Screw a strap along the sawn edge', 'both faces']],
  },
  {
    name: 'less an opening of 4 ft that reaches the top',
    job: laidJob({ walls: [{ length: 240, courses: [...times(6), { height: 12, ripped: true, voids: [[60, 108]] }] }] }),
    materials: [['STRAP-1x3', 'S1', 'A', 7, 32]],
    says: [['Screw a strap']],
  },
  {
    name: 'a board where the range says so',
    job: laidJob({ walls: [{ length: 240, courses: [{ height: 12, ripped: true }] }] }),
    range: { parameters: { rippedEdgeBy: 'board' } },
    materials: [['BOARD-1x4', 'S1', 'A', 1, 40]],
    says: [['Screw a board']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [{ name: 'a full top course', job: laidJob({ walls: [{ length: 240, courses: times(6) }] }) }];

testRule(rippedEdge, applies, doesNotApply);
