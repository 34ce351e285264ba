import { buckBracing } from '../../../../src/domain/reinforcement/rules/buck-bracing.rule.js';
import { coreChange, laidJob, opening, times } from '../../../support/laid.js';
import { CORES } from '../../../support/rule-range.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const applies: readonly Applies[] = [
  {
    name: 'a door of 84 in: ceil(84 / 24) = 4 spreaders of 600 lb at 600 psf and 6 in (decision 28)',
    job: laidJob({ walls: [{ length: 240, courses: times(6), features: { openings: [opening('D1', [60, 96], [0, 84])] } }] }),
    materials: [],
    says: [['Buck D1 at station 60 in (1524 mm): 4 spreaders between the jambs, 84 in (2134 mm) high, not more than 24 in (610 mm) apart, and 2 diagonals', '300 lb/ft', '600 lb (2.67 kN) on a spreader', 'by others']],
  },
  {
    name: 'a hole of 12 in takes one, which carries 300 lb/ft x 1 ft',
    job: laidJob({ walls: [{ length: 240, courses: times(6), features: { openings: [opening('W1', [60, 96], [40, 52])] } }] }),
    materials: [],
    says: [['1 spreader', '300 lb (1.33 kN) on a spreader']],
  },
  {
    name: 'exactly two distances take two; 16 in and one diagonal where the range says so; core 10 in: 500 x 16 / 12 = 667 lb',
    job: laidJob({ walls: [{ length: 240, core: CORES[10], courses: times(6), features: { openings: [opening('W1', [60, 96], [40, 72])] } }] }),
    range: { parameters: { buckSpreader: 406_400_000, buckDiagonals: 1 } },
    materials: [],
    says: [['2 spreaders', '1 diagonal.', '500 lb/ft', '667 lb']],
  },
  {
    name: 'a window over a change of the core is pushed by the wider one it stands in',
    job: laidJob({ walls: [{ length: 240, core: CORES[10], courses: times(6), features: { openings: [opening('W1', [60, 96], [40, 72])], coreChanges: [coreChange(4, CORES[6], 'outside', -2)] } }] }),
    materials: [],
    says: [['500 lb/ft']],
  },
  {
    name: 'one above it by the narrower',
    job: laidJob({ walls: [{ length: 240, core: CORES[10], courses: times(6), features: { openings: [opening('W1', [60, 96], [56, 72])], coreChanges: [coreChange(3, CORES[6], 'outside', -2)] } }] }),
    materials: [],
    says: [['300 lb/ft']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  { name: 'jambs closed by end closures', job: laidJob({ walls: [{ length: 240, courses: times(6), features: { openings: [opening('W1', [60, 96], [40, 72], 'end-closure')] } }] }) },
  { name: 'a wall without openings', job: laidJob({ walls: [{ length: 240, courses: times(6) }] }) },
];

testRule(buckBracing, applies, doesNotApply);
