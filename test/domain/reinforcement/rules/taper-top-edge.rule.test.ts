import { taperTopEdge } from '../../../../src/domain/reinforcement/rules/taper-top-edge.rule.js';
import { junction, laidJob, laidLedge, laidTaper, times } from '../../../support/laid.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const applies: readonly Applies[] = [
  {
    name: 'one-way, between the legs from 30 to 210 in: one lip of 15 ft; 3 x 180 in2 lean over, 3.75 ft2 x 600 = 2250 lb, 150 lb/ft',
    job: laidJob({ walls: [{ length: 240, courses: times(6), features: { taper: laidTaper('one', 6, [[30, 210]], 540) } }] }),
    materials: [['STRAP-1x3', 'S1', 'A', 6, 15]],
    says: [['Screw a strap along the slim lip', '180 in (4572 mm) a lip', 'station 30 in (762 mm)', '2250 lb (10.01 kN) in all (150 lb/ft)']],
  },
  {
    name: 'two-way with an opening: two lips of 100 + 104 in = 34 ft',
    job: laidJob({ walls: [{ length: 240, courses: times(6), features: { taper: laidTaper('both', 6, [[0, 100], [136, 240]]) } }] }),
    materials: [['STRAP-1x3', 'S1', 'A', 6, 34]],
    says: [['both slim lips', '204 in (5182 mm) a lip']],
  },
  {
    name: 'round a corner: node to node, 20 and 10 ft, not to the mitre tips; thrust of the mitre 2 x 600 x 0.5 x 4/3 x sin 45 = 566 lb, told once',
    job: laidJob({
      walls: [
        { mark: 'A', length: 240, courses: [{}, { to: 245.5 }], features: { taper: laidTaper('one', 2, [[0, 245.5]]) } },
        { mark: 'B', length: 120, courses: [{}, { from: -5.5 }], features: { taper: laidTaper('one', 2, [[-5.5, 120]]) } },
      ],
      junctions: [junction({ id: 'S1-J2', kind: 'corner', walls: ['A', 'B'], turn: 90, courses: [1, 2], sku: 'SQ6', unit: 'corner', units: [{ course: 1, hand: 'left', sku: 'SQ6-L', piece: 'c1' }] })],
    }),
    materials: [['STRAP-1x3', 'S1', 'A', 2, 20], ['STRAP-1x3', 'S1', 'B', 2, 10]],
    says: [['At the corner with B, station 240 in', '566 lb'], ['120 in (3048 mm) a lip']],
  },
  {
    name: 'a board where the range says so',
    job: laidJob({ walls: [{ length: 240, courses: times(6), features: { taper: laidTaper('one', 6, [[0, 240]]) } }] }),
    range: { parameters: { taperEdgeBy: 'board' } },
    materials: [['BOARD-1x4', 'S1', 'A', 6, 20]],
    says: [['Screw a board']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  { name: 'a plain top course', job: laidJob({ walls: [{ length: 240, courses: times(6) }] }) },
  { name: 'a ledge', job: laidJob({ walls: [{ length: 240, courses: times(6), features: { ledges: [laidLedge(6, [[0, 240]])] } }] }) },
  { name: 'a taper whose course an opening takes whole', job: laidJob({ walls: [{ length: 36, courses: times(6), features: { taper: laidTaper('one', 6, []) } }] }) },
];

testRule(taperTopEdge, applies, doesNotApply);
