import { sillPour } from '../../../../src/domain/reinforcement/rules/sill-pour.rule.js';
import { coreChange, laidJob, opening, times } from '../../../support/laid.js';
import { CORES } from '../../../support/rule-range.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const applies: readonly Applies[] = [
  {
    name: 'a window of 48 in, 40 in up: lifted with 300 lb/ft, 300 x 4 = 1200 lb',
    job: laidJob({ walls: [{ length: 240, courses: times(6), features: { openings: [opening('W1', [60, 108], [40, 72])] } }] }),
    materials: [],
    says: [['Sill of W1 at station 60 in (1524 mm), 48 in (1219 mm) long, 40 in (1016 mm) up', 'open or holed', '300 lb/ft', '1200 lb (5.34 kN) in all', 'by others']],
  },
  {
    name: 'a sill on a change of the core is as wide as the core under it: 500 lb/ft of 10 in',
    job: laidJob({ walls: [{ length: 240, core: CORES[10], courses: times(6), features: { openings: [opening('W1', [60, 84], [48, 72], 'end-closure')], coreChanges: [coreChange(4, CORES[6], 'outside', -2)] } }] }),
    materials: [],
    says: [['500 lb/ft', '1000 lb']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  { name: 'a door', job: laidJob({ walls: [{ length: 240, courses: times(6), features: { openings: [opening('D1', [60, 96], [0, 84])] } }] }) },
  { name: 'a wall without openings', job: laidJob({ walls: [{ length: 240, courses: times(6) }] }) },
];

testRule(sillPour, applies, doesNotApply);
