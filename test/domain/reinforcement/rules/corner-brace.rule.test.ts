import { cornerBrace } from '../../../../src/domain/reinforcement/rules/corner-brace.rule.js';
import type { Junction } from '../../../../src/domain/takeoff/laid.js';
import { coreChange, junction, laidJob, strip, times } from '../../../support/laid.js';
import { CORES } from '../../../support/rule-range.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const corner = (rest: Partial<Junction> = {}): Junction => junction({ id: 'S1-J2', kind: 'corner', walls: ['A', 'B'], turn: 90, courses: [1, 2], ...rest });
const walls = (core = CORES[6] as (typeof CORES)[6 | 8 | 10], other = core) => [{ mark: 'A', core, length: 240, courses: times(2) }, { mark: 'B', core: other, length: 120, courses: times(2) }];

const applies: readonly Applies[] = [
  {
    name: '90 degrees, 6 in: 2 x 600 x 0.5 x sin 45 = 424 lb/ft over 32 in = 1131 lb',
    job: laidJob({ walls: walls(), junctions: [corner()] }),
    materials: [],
    says: [['Corner of A and B, station 240 in (6096 mm), turn 90 degrees: 2 verticals, 32 in (813 mm) high, on its convex side (the outside)', '424 lb/ft (6.19 kN/m)', '1131 lb (5.03 kN) in all', 'by others']],
  },
  {
    name: 'a strip between the courses is height too: 35 in x 424 / 12 = 1237 lb; three verticals at a re-entrant corner',
    job: laidJob({ walls: walls().map((wall) => ({ ...wall, strips: [strip(1, [[0, 240]])] })), junctions: [corner({ turn: -90 })] }),
    range: { parameters: { cornerBraceVerticals: 3 } },
    materials: [],
    says: [['turn -90 degrees: 3 verticals, 35 in (889 mm) high, on its convex side (the inside)', '1237 lb']],
  },
  {
    name: 'two cores of 6 and 10 in at 90 degrees: 600 x sqrt(0.25 + 0.6944) = 583 lb/ft (decision 4)',
    job: laidJob({ walls: walls(CORES[6], CORES[10]), junctions: [corner()] }),
    materials: [],
    says: [['583 lb/ft']],
  },
  {
    name: 'a core that changes at course 2 is one corner: 566 lb/ft of the 8 in below, (566 + 424) x 16 / 12 = 1320 lb',
    job: laidJob({
      walls: walls(CORES[8]).map((wall) => ({ ...wall, features: { coreChanges: [coreChange(2, CORES[6], 'outside', -1)] } })),
      junctions: [corner({ courses: [1] }), corner({ id: 'S1-J2-L2', courses: [2] })],
    }),
    materials: [],
    says: [['32 in (813 mm) high', '566 lb/ft', '1320 lb']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  { name: 'straight on', job: laidJob({ walls: walls(), junctions: [corner({ kind: 'straight', turn: 0 })] }) },
  { name: 'a tee', job: laidJob({ walls: walls(), junctions: [corner({ kind: 'tee' })] }) },
  { name: 'a corner in whose courses one wall stands alone', job: laidJob({ walls: walls(), junctions: [corner({ courses: [] })] }) },
];

testRule(cornerBrace, applies, doesNotApply);
