import { footingFix } from '../../../../src/domain/reinforcement/rules/footing-fix.rule.js';
import { junction, laidJob, laidLedge, times } from '../../../support/laid.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const applies: readonly Applies[] = [
  {
    name: 'a wall of 20 ft: two beads of 20 ft under course 1, none under course 2',
    job: laidJob({ walls: [{ length: 240, courses: times(2) }] }),
    materials: [['FOAM-24', 'S1', 'A', 1, 40]],
    says: [['2 beads', 'Pack the forms level']],
  },
  {
    name: 'a door of 3 ft takes 2 x 3 ft away',
    job: laidJob({ walls: [{ length: 240, courses: [{ voids: [[60, 96]] }] }] }),
    materials: [['FOAM-24', 'S1', 'A', 1, 34]],
    says: [['2 beads']],
  },
  {
    name: 'a branch trimmed by 12 in at a tee: 19 ft of forms',
    job: laidJob({ walls: [{ length: 240, courses: [{ from: 12 }] }] }),
    materials: [['FOAM-24', 'S1', 'A', 1, 38]],
    says: [['2 beads']],
  },
  {
    name: 'one bead where the range says one face, each wall for itself',
    job: laidJob({ walls: [{ mark: 'A', length: 240, courses: times(1) }, { mark: 'B', length: 120, courses: times(1) }] }),
    range: { parameters: { footingBeadFaces: 1 } },
    materials: [['FOAM-24', 'S1', 'A', 1, 20], ['FOAM-24', 'S1', 'B', 1, 10]],
    says: [['1 bead of']],
  },
  {
    name: 'fixed by a track, for which a range has no material: said, not left out',
    job: laidJob({ walls: [{ length: 240, courses: times(2) }] }),
    range: { parameters: { footingFixBy: 'track' } },
    materials: [],
    says: [],
    findings: ['hold outside-method S1 {"rule":"footing-fix","footingFixBy":"track"}'],
  },
  {
    name: 'a ledge that mitres course 1 at a corner: beads node to node, 2 x 20 and 2 x 10 ft',
    job: laidJob({
      walls: [{ mark: 'A', length: 240, courses: [{ to: 245.5 }], features: { ledges: [laidLedge(1, [[0, 245.5]])] } }, { mark: 'B', length: 120, courses: [{ from: -5.5 }] }],
      junctions: [junction({ id: 'S1-J2', kind: 'corner', walls: ['A', 'B'], turn: 90, courses: [1], sku: 'SQ6', unit: 'corner' })],
    }),
    materials: [['FOAM-24', 'S1', 'A', 1, 40], ['FOAM-24', 'S1', 'B', 1, 20]],
    says: [['2 beads']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  { name: 'a storey that stands on a storey', job: laidJob({ onFooting: false, walls: [{ length: 240, courses: times(2) }] }) },
  { name: 'a storey without walls', job: laidJob({ walls: [] }) },
];

testRule(footingFix, applies, doesNotApply);
