import { pairedUnit } from '../../../../src/domain/reinforcement/rules/paired-unit.rule.js';
import { laidJob, leg, type CourseSketch } from '../../../support/laid.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

/** One corner's unit in each of some courses, hands taking turns and the left one first; both walls show every half. */
function halves(id: string, courses: number, counted: boolean): readonly CourseSketch[] {
  return Array.from({ length: courses }, (_, index) => ({
    pieces: [leg(0, 24, { id: `${id}-${index + 1}`, kind: 'corner-pair', sku: 'DP6', hand: index % 2 === 0 ? 'left' : 'right', junction: id, counted })],
  }));
}

const corner = (id: string, courses: number) => [
  { mark: `${id}a`, length: 120, courses: halves(id, courses, true) },
  { mark: `${id}b`, length: 120, courses: halves(id, courses, false) },
];

const THREE_CORNERS = [...corner('J1', 5), ...corner('J2', 5), ...corner('J3', 5)];

const applies: readonly Applies[] = [
  {
    name: '5 courses x 3 corners = 9 + 6 halves = 9 blanks (worked figure of decision 18)',
    job: laidJob({ walls: THREE_CORNERS }),
    materials: [],
    says: [['DP6', 'This storey takes 9 left and 6 right', 'the job takes 9 left and 6 right, which is 9 blanks']],
  },
  {
    name: 'halves that fit either way: 15 halves from 8 blanks',
    job: laidJob({ walls: THREE_CORNERS }),
    range: { pairedHands: 'either' },
    materials: [],
    says: [['which is 8 blanks']],
  },
  {
    name: 'two storeys draw on one stock: 3 + 2 twice is 6 + 4, 6 blanks',
    job: laidJob({ id: 'S1', walls: corner('J1', 5) }, { id: 'S2', walls: corner('J2', 5) }),
    materials: [],
    says: [['This storey takes 3 left and 2 right', 'the job takes 6 left and 4 right, which is 6 blanks'], ['This storey takes 3 left and 2 right', '6 blanks']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  {
    name: 'a square corner unit, sold by the hand',
    job: laidJob({ walls: [{ length: 120, courses: [{ pieces: [leg(0, 32, { id: 'c', kind: 'corner', sku: 'SQ6-L', hand: 'left', junction: 'J1' })] }] }] }),
  },
];

testRule(pairedUnit, applies, doesNotApply);
