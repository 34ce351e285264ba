import { lintelShore } from '../../../../src/domain/reinforcement/rules/lintel-shore.rule.js';
import { laidGable, laidJob, opening, times } from '../../../support/laid.js';
import { CORES } from '../../../support/rule-range.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const applies: readonly Applies[] = [
  {
    name: 'a door of 36 in: ceil(36 / 24) = 2 posts; 300 lb/ft at 600 psf and 6 in (decision 28), 600 lb on a post',
    job: laidJob({ walls: [{ length: 240, courses: times(6), features: { openings: [opening('D1', [60, 96], [0, 84])] } }] }),
    materials: [],
    says: [['Head of D1 at station 60 in (1524 mm), 36 in (914 mm) wide: 2 posts under it, not more than 24 in (610 mm) apart', '300 lb/ft (4.38 kN/m) of length', '600 lb (2.67 kN) on a post', 'by others']],
  },
  {
    name: 'a slot of 20 in closed by end closures: one post of 300 x 20 / 12 = 500 lb',
    job: laidJob({ walls: [{ length: 240, courses: times(6), features: { openings: [opening('W1', [60, 80], [40, 72], 'end-closure')] } }] }),
    materials: [],
    says: [['1 post under', '500 lb']],
  },
  {
    name: '72 in, posts every 36 where the range says so, core 10: 2 posts of 1500 lb',
    job: laidJob({ walls: [{ length: 240, core: CORES[10], courses: times(6), features: { openings: [opening('W1', [60, 132], [40, 72])] } }] }),
    range: { parameters: { lintelPost: 914_400_000 } },
    materials: [],
    says: [['2 posts', '1500 lb']],
  },
  {
    name: "a door as high as its wall's stack, under a gable",
    job: laidJob({ walls: [{ length: 60, courses: times(7), gableCourses: 1, features: { openings: [opening('D1', [12, 48], [0, 96])], gable: laidGable(16, [[30, 34], [30, 34]], 1) } }] }),
    materials: [],
    says: [['2 posts']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  { name: 'an opening through to the top', job: laidJob({ walls: [{ length: 240, courses: times(6), features: { openings: [opening('D1', [60, 96], [0, 96])] } }] }) },
  { name: 'a wall without openings', job: laidJob({ walls: [{ length: 240, courses: times(6) }] }) },
];

testRule(lintelShore, applies, doesNotApply);
