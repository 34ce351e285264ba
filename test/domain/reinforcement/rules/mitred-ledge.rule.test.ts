import { mitredLedge } from '../../../../src/domain/reinforcement/rules/mitred-ledge.rule.js';
import type { Junction } from '../../../../src/domain/takeoff/laid.js';
import { coreChange, junction, laidJob, laidLedge, laidTaper, times, type WallSketch } from '../../../support/laid.js';
import { CORES } from '../../../support/rule-range.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

/** A corner of A and B in three courses; no unit stands in those that are mitred. */
const corner = (mitred: readonly number[], turn = 90): Junction =>
  junction({
    id: 'S1-J2', kind: 'corner', walls: ['A', 'B'], turn, courses: [1, 2, 3], sku: 'SQ6', unit: 'corner',
    units: [1, 2, 3].filter((n) => !mitred.includes(n)).map((course) => ({ course, hand: 'left', sku: 'SQ6-L', piece: `c${course}` })),
  });

const A = (features: WallSketch['features'] = {}): WallSketch => ({ mark: 'A', length: 240, courses: [{}, { to: 245.5 }, {}], features });
const B = (features: WallSketch['features'] = {}): WallSketch => ({ mark: 'B', length: 120, courses: [{}, { from: -5.5 }, {}], features });
const BOTH = [A({ ledges: [laidLedge(2, [[0, 245.5]], { end: true })] }), B({ ledges: [laidLedge(2, [[-5.5, 120]], { start: true })] })];

const applies: readonly Applies[] = [
  {
    name: 'ledges of 48 in2 meet: 4 strips of 2 ft, once, on the arriving wall; section (96 + 48) / 144 = 1 ft2, 2 x 600 x 1 x sin 45 = 849 lb',
    job: laidJob({ walls: BOTH, junctions: [corner([2])] }),
    range: { ledgeIn2: 48 },
    materials: [['TAPE-4', 'S1', 'A', 2, 8]],
    says: [['Corner of A and B, station 240 in (6096 mm)', '4 strips of tape, 24 in (610 mm) each', 'Brace the outside', '849 lb (3.77 kN) at 600 psf']],
  },
  {
    name: 'one ledge only: sections 1 and 2/3 ft2, 600 x sqrt(1 + 4/9) = 721 lb',
    job: laidJob({ walls: [A({ ledges: [laidLedge(2, [[0, 245.5]])] }), B()], junctions: [corner([2])] }),
    range: { ledgeIn2: 48 },
    materials: [['TAPE-4', 'S1', 'A', 2, 8]],
    says: [['721 lb']],
  },
  {
    name: 'a ledge that stops within the leg mitres the corner with straight forms: the core alone, 2 x 600 x 2/3 x sin 45 = 566 lb',
    job: laidJob({ walls: [A({ ledges: [laidLedge(2, [[0, 230]])] }), B()], junctions: [corner([2])] }),
    range: { ledgeIn2: 48 },
    materials: [['TAPE-4', 'S1', 'A', 2, 8]],
    says: [['566 lb']],
  },
  {
    name: 'a re-entrant corner of 60 degrees is braced inside; the other wall drawn against the walk; 2 x 600 x 1 x sin 30 = 600 lb',
    job: laidJob({
      walls: [A({ ledges: [laidLedge(2, [[0, 245.5]])] }), { mark: 'B', length: 120, reversed: true, courses: [{}, { to: 125.5 }, {}], features: { ledges: [laidLedge(2, [[0, 125.5]])] } }],
      junctions: [corner([2], -60)],
    }),
    range: { ledgeIn2: 48 },
    materials: [['TAPE-4', 'S1', 'A', 2, 8]],
    says: [['Brace the inside', '600 lb']],
  },
  {
    name: 'six strips of 18 in',
    job: laidJob({ walls: BOTH, junctions: [corner([2])] }),
    range: { parameters: { hingedCornerStrips: 6, tapeStripLength: 457_200_000 } },
    materials: [['TAPE-4', 'S1', 'A', 2, 9]],
    says: [['6 strips of tape, 18 in']],
  },
  {
    name: 'above a change of the core it is the core that stands there: 8 in below, 6 in from course 2',
    job: laidJob({ walls: BOTH.map((wall) => ({ ...wall, core: CORES[8], features: { ...wall.features, coreChanges: [coreChange(2, CORES[6], 'outside', -1)] } })), junctions: [corner([2])] }),
    range: { ledgeIn2: 48 },
    materials: [['TAPE-4', 'S1', 'A', 2, 8]],
    says: [['849 lb']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  { name: 'a ledge clear of the corner, whose unit stays', job: laidJob({ walls: [A({ ledges: [laidLedge(2, [[60, 160]])] }), B()], junctions: [corner([])] }) },
  { name: 'a taper top that goes round', job: laidJob({ walls: [A({ taper: laidTaper('one', 2, [[0, 245.5]]) }), B({ taper: laidTaper('one', 2, [[-5.5, 120]]) })], junctions: [corner([2])] }) },
  { name: 'a ledge to a free end', job: laidJob({ walls: [{ length: 240, courses: times(3), features: { ledges: [laidLedge(2, [[0, 240]])] } }] }) },
];

testRule(mitredLedge, applies, doesNotApply);
