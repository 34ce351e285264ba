import { endClosure } from '../../../../src/domain/reinforcement/rules/end-closure.rule.js';
import type { Material } from '../../../../src/domain/range/range.js';
import { closure, coreChange, laidJob, straight, times } from '../../../support/laid.js';
import { CORES, MATERIALS } from '../../../support/rule-range.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

/** The test range with a stated strength of its 4 in tape. */
const tapeOf = (strengthLbPerIn: number, size = '4 in'): readonly Material[] =>
  MATERIALS.map((material) => (material.kind === 'tape' ? { ...material, size, strengthLbPerIn } : material));

const freeWall = (core: (typeof CORES)[6 | 10], courses: number) =>
  laidJob({ walls: [{ core, length: 240, courses: times(courses, { pieces: [closure(0, 'end'), closure(237.5, 'end')] }) }] });

const applies: readonly Applies[] = [
  {
    name: 'strength not stated: tape and board, 2 ft of each for every closure and course; 400 lb at 600 psf, 6 in, 16 in (decision 27)',
    job: freeWall(CORES[6], 2),
    materials: [['TAPE-4', 'S1', 'A', 1, 4], ['TAPE-4', 'S1', 'A', 2, 4], ['BOARD-1x4', 'S1', 'A', 1, 4], ['BOARD-1x4', 'S1', 'A', 2, 4]],
    says: [['Core 6', '400 lb (1.78 kN)', 'the strength of the tape is not stated', '4 closures with 24 in (610 mm) of board']],
  },
  {
    name: 'core 10 in pushes with 667 lb (decision 27); two legs of 4 in at 80 lb/in hold 640: board',
    job: freeWall(CORES[10], 1),
    range: { materials: tapeOf(80) },
    materials: [['TAPE-4', 'S1', 'A', 1, 4], ['BOARD-1x4', 'S1', 'A', 1, 4]],
    says: [['Core 10', '667 lb', 'the force is more than the tape holds', '2 closures']],
  },
  {
    name: 'the same tape holds the 400 lb of a 6 in core: tape alone',
    job: freeWall(CORES[6], 1),
    range: { materials: tapeOf(80) },
    materials: [['TAPE-4', 'S1', 'A', 1, 4]],
    says: [['The tape holds it']],
  },
  {
    name: 'exactly as strong as the force is strong enough: 2 x 4 in x 50 lb/in = 400 lb',
    job: freeWall(CORES[6], 1),
    range: { materials: tapeOf(50) },
    materials: [['TAPE-4', 'S1', 'A', 1, 4]],
    says: [['The tape holds it']],
  },
  {
    name: 'a width that cannot be read is a strength that is not known',
    job: freeWall(CORES[6], 1),
    range: { materials: tapeOf(500, 'wide') },
    materials: [['TAPE-4', 'S1', 'A', 1, 4], ['BOARD-1x4', 'S1', 'A', 1, 4]],
    says: [['the strength of the tape is not stated']],
  },
  {
    name: 'jambs closed in the courses an opening meets',
    job: laidJob({ walls: [{ length: 240, courses: [{ pieces: [straight(0, 48, [4]), closure(57.5, 'jamb'), closure(96, 'jamb')] }, {}] }] }),
    materials: [['TAPE-4', 'S1', 'A', 1, 4], ['BOARD-1x4', 'S1', 'A', 1, 4]],
    says: [['2 closures']],
  },
  {
    name: 'one instruction for each core of a storey, a ripped course no more than a full one',
    job: laidJob({
      walls: [
        { mark: 'A', core: CORES[6], length: 240, courses: [{ pieces: [closure(0, 'end')] }, { height: 12, pieces: [closure(0, 'end')] }] },
        { mark: 'B', core: CORES[10], length: 240, courses: [{ pieces: [closure(0, 'end')] }] },
      ],
    }),
    range: { materials: tapeOf(80) },
    materials: [['TAPE-4', 'S1', 'A', 1, 2], ['TAPE-4', 'S1', 'A', 2, 2], ['TAPE-4', 'S1', 'B', 1, 2], ['BOARD-1x4', 'S1', 'B', 1, 2]],
    says: [['Core 6', '400 lb', 'The tape holds it'], ['Core 10', '667 lb', '1 closure with']],
  },
  {
    name: 'above a change of the core the closures hold what the narrower one presses: 667 lb at 10 in below, 400 lb at 6 in',
    job: laidJob({ walls: [{ core: CORES[10], length: 240, courses: times(2, { pieces: [closure(0, 'end')] }), features: { coreChanges: [coreChange(2, CORES[6], 'outside', -2)] } }] }),
    range: { materials: tapeOf(80) },
    materials: [['TAPE-4', 'S1', 'A', 1, 2], ['TAPE-4', 'S1', 'A', 2, 2], ['BOARD-1x4', 'S1', 'A', 1, 2]],
    says: [['Core 10', '667 lb', '1 closure with'], ['Core 6', '400 lb', 'The tape holds it']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [{ name: 'a wall between two corners, without closures', job: laidJob({ walls: [{ length: 240, courses: [{ pieces: [straight(0, 48, [4])] }] }] }) }];

testRule(endClosure, applies, doesNotApply);
