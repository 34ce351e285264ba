import { coreChangeCleat } from '../../../../src/domain/reinforcement/rules/core-change-cleat.rule.js';
import { coreChange, laidJob, times } from '../../../support/laid.js';
import { CORES } from '../../../support/rule-range.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const applies: readonly Applies[] = [
  {
    name: '10 to 6 in, flush outside: set back 4 in inside, seat 4 - 2.5 = 1.5 in (decision 24); lifted with 600 x 2.5 / 12 = 125 lb/ft over 240 - 36 in',
    job: laidJob({ walls: [{ length: 240, core: CORES[10], courses: [{}, { voids: [[100, 136]] }], features: { coreChanges: [coreChange(2, CORES[6], 'outside', -2, [0, 1.5])] } }] }),
    materials: [],
    says: [['Core 10 changes to 6 at 16 in (406 mm), under course 2: on the inside cleat 204 in (5182 mm)', 'set back 4 in', 'a seat of 1.5 in', '125 lb/ft', 'by others']],
  },
  {
    name: '8 to 6 in about the centre: 1 in on both sides, 600 / 12 = 50 lb/ft, no seat (decision 24)',
    job: laidJob({ walls: [{ length: 240, core: CORES[8], courses: times(2), features: { coreChanges: [coreChange(2, CORES[6], 'centre', 0)] } }] }),
    materials: [],
    says: [['on the outside cleat 240 in (6096 mm) under the panel, which is set back 1 in (25 mm) and is lifted with up to 50 lb/ft (0.73 kN/m); on the inside cleat']],
  },
  {
    name: '6 to 8 in, flush inside: the outer panel overhangs by 2 in',
    job: laidJob({ walls: [{ length: 240, core: CORES[6], courses: times(2), features: { coreChanges: [coreChange(2, CORES[8], 'inside', -1)] } }] }),
    materials: [],
    says: [['on the outside close and shore 240 in (6096 mm) of soffit, where the panel overhangs by 2 in']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [{ name: 'one core from foot to top', job: laidJob({ walls: [{ length: 240, courses: times(2) }] }) }];

testRule(coreChangeCleat, applies, doesNotApply);
