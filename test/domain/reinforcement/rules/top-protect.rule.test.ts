import { topProtect } from '../../../../src/domain/reinforcement/rules/top-protect.rule.js';
import { carried, laidArc, laidGable, laidJob, times } from '../../../support/laid.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const applies: readonly Applies[] = [
  {
    name: 'a storey above that is only declared: every wall of full height, two runs, less an opening to the top; the lower garage wall not',
    job: laidJob({
      storeyAbove: true,
      walls: [
        { mark: 'A', length: 240, courses: times(2) },
        { mark: 'B', length: 120, courses: [{}, { voids: [[40, 76]] }] },
        { mark: 'G', length: 120, courses: times(1) },
      ],
    }),
    materials: [['MASK-12', 'S1', 'A', 2, 40], ['MASK-12', 'S1', 'B', 2, 14]],
    stations: [['MASK-12', 'A', 2, [0, 240]], ['MASK-12', 'B', 2, [0, 40, 76, 120]]],
    says: [['2 runs of cover', 'stand: 240 in (6096 mm)'], ['84 in (2134 mm)']],
  },
  {
    name: 'a wall above stands on the first 120 in: 120 + half of 11 in, twice; the wall beside carries nothing',
    job: laidJob({ storeyAbove: true, walls: [{ mark: 'A', length: 240, courses: times(2), features: { carries: [carried(0, 120)] } }, { mark: 'B', length: 120, courses: times(2) }] }),
    materials: [['MASK-12', 'S1', 'A', 2, 251 / 12]],
    stations: [['MASK-12', 'A', 2, [0, 125.5]]],
    says: [['stand: 125.5 in']],
  },
  {
    name: 'two walls above that meet at 120 in: the whole 240 once',
    job: laidJob({ storeyAbove: true, walls: [{ length: 240, courses: times(2), features: { carries: [carried(120, 240, 'V'), carried(0, 120)] } }] }),
    materials: [['MASK-12', 'S1', 'A', 2, 40]],
    stations: [['MASK-12', 'A', 2, [0, 240]]],
    says: [['stand: 240 in']],
  },
  {
    name: 'a curve, whose load nothing tells, is masked whole beside a wall that carries',
    job: laidJob({
      storeyAbove: true,
      walls: [{ mark: 'A', length: 240, courses: times(2), features: { carries: [carried(0, 240)] } }, { mark: 'R', length: 180, courses: times(2), features: { arc: laidArc(190, 20) } }],
    }),
    materials: [['MASK-12', 'S1', 'A', 2, 40], ['MASK-12', 'S1', 'R', 2, 30]],
    says: [['240 in'], ['stand: 180 in']],
  },
  {
    name: 'one run of tape where the range says so',
    job: laidJob({ storeyAbove: true, walls: [{ length: 240, courses: times(2) }] }),
    range: { parameters: { topProtectBy: 'tape', topProtectFaces: 1 } },
    materials: [['TAPE-4', 'S1', 'A', 2, 20]],
    says: [['1 run of tape']],
  },
  {
    name: 'a range without a cover says so',
    job: laidJob({ storeyAbove: true, walls: [{ length: 240, courses: times(2) }] }),
    range: { materials: [] },
    materials: [],
    says: [['stand: 240 in']],
    findings: ['hold outside-method S1 {"rule":"top-protect","material":"cover","measuredIn":"ft"}'],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  { name: 'the topmost storey', job: laidJob({ walls: [{ length: 240, courses: times(2) }] }) },
  { name: 'a gable under a declared storey', job: laidJob({ storeyAbove: true, walls: [{ length: 60, courses: times(3), gableCourses: 1, features: { gable: laidGable(16, [[30, 34], [30, 34]], 1) } }] }) },
];

testRule(topProtect, applies, doesNotApply);
