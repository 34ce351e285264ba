import { radiusBand } from '../../../../src/domain/reinforcement/rules/radius-band.rule.js';
import { joint, laidArc, laidJob, times } from '../../../support/laid.js';
import { CORES } from '../../../support/rule-range.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const JOINTS = [joint(8, 'chord'), joint(16, 'chord'), joint(24, 'chord')];

const applies: readonly Applies[] = [
  {
    name: 'two courses: a strap of 252 in = 21 ft each; 3 joints x 16 in x 2 faces = 8 ft of foam; 600 x 0.5 = 300 lb/ft, 400 lb a course',
    job: laidJob({ walls: [{ length: 240, courses: times(2, { joints: JOINTS }), features: { arc: laidArc(252, 4) } }] }),
    materials: [['STRAP-1x3', 'S1', 'A', 1, 21], ['STRAP-1x3', 'S1', 'A', 2, 21], ['FOAM-24', 'S1', 'A', 1, 8], ['FOAM-24', 'S1', 'A', 2, 8]],
    says: [['Curve of 4 chords', 'a strap round the convex face, 252 in (6401 mm)', '300 lb/ft', '400 lb (1.78 kN) a course', 'Foam 6 chord joints on both faces']],
  },
  {
    name: 'an opening of 40 in interrupts the first: 252 x 200 / 240 = 210 in; the second is ripped to 12 in: 2 joints x 12 x 2 = 4 ft',
    job: laidJob({
      walls: [{ length: 240, core: CORES[10], courses: [{ voids: [[100, 140]], joints: [joint(8, 'chord')] }, { height: 12, joints: [joint(8, 'chord'), joint(16, 'chord')] }], features: { arc: laidArc(252, 4) } }],
    }),
    materials: [['STRAP-1x3', 'S1', 'A', 1, 17.5], ['STRAP-1x3', 'S1', 'A', 2, 21], ['FOAM-24', 'S1', 'A', 1, 32 / 12], ['FOAM-24', 'S1', 'A', 2, 4]],
    says: [['500 lb/ft', '667 lb', 'Foam 3 chord joints']],
  },
  {
    name: 'tape where the range says so',
    job: laidJob({ walls: [{ length: 240, courses: times(1), features: { arc: laidArc(252, 4) } }] }),
    range: { parameters: { radiusBandBy: 'tape' } },
    materials: [['TAPE-4', 'S1', 'A', 1, 21]],
    says: [['a tape round']],
  },
  {
    name: 'the joint of a straight wall with the curve it runs into is foamed under the wall that holds it',
    job: laidJob({ walls: [{ length: 48, courses: times(1, { joints: [joint(48, 'chord')] }) }] }),
    materials: [['FOAM-24', 'S1', 'A', 1, 32 / 12]],
    says: [],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  { name: 'a straight wall', job: laidJob({ walls: [{ length: 240, courses: times(2, { joints: [joint(48), joint(96, 'seam')] }) }] }) },
  { name: 'a curve too tight for chords', job: laidJob({ walls: [{ length: 240, courses: times(2), features: { arc: laidArc(252, 0, null) } }] }) },
];

testRule(radiusBand, applies, doesNotApply);
