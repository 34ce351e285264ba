import { shortPiece } from '../../../../src/domain/reinforcement/rules/short-piece.rule.js';
import { closure, joint, laidJob, leg, notch, parted, straight } from '../../../support/laid.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const applies: readonly Applies[] = [
  {
    name: 'a piece without a web: 2 ft of tape on each face',
    job: laidJob({ walls: [{ length: 54, courses: [{ pieces: [straight(0, 48, [4, 12]), straight(48, 54, [], { cutEnds: 1 })], joints: [joint(48)] }] }] }),
    materials: [['TAPE-4', 'S1', 'A', 1, 4]],
    says: [['Across 1 piece without a web: tape of 24 in (610 mm) on each face.']],
  },
  {
    name: 'a seam, in each course',
    job: laidJob({
      walls: [{
        length: 70.5,
        courses: [
          { pieces: [straight(0, 48, [4]), straight(48, 70.5, [52], { why: 'seam', cutEnds: 1 })], joints: [joint(48, 'seam')] },
          { pieces: [straight(0, 48, [4]), straight(48, 70.5, [52], { why: 'seam', cutEnds: 1 })], joints: [joint(48, 'seam')] },
        ],
      }],
    }),
    materials: [['TAPE-4', 'S1', 'A', 1, 4], ['TAPE-4', 'S1', 'A', 2, 4]],
    says: [['Across 1 seam'], ['Across 1 seam']],
  },
  {
    name: 'a seam piece without a web is strapped once: the strip over the joint laps the piece',
    job: laidJob({ walls: [{ length: 52.5, courses: [{ pieces: [straight(0, 48, [4]), straight(48, 52.5, [], { why: 'seam' })], joints: [joint(48, 'seam')] }] }] }),
    materials: [['TAPE-4', 'S1', 'A', 1, 4]],
    says: [['Across 1 seam:']],
  },
  {
    name: 'a screwed strap where the range says so',
    job: laidJob({ walls: [{ length: 6, courses: [{ pieces: [straight(0, 6, [])] }] }] }),
    range: { parameters: { shortPieceBy: 'strap' } },
    materials: [['STRAP-1x3', 'S1', 'A', 1, 4]],
    says: [['a screwed strap of 24 in']],
  },
  {
    name: 'a window head 12 in into the course leaves 4 in of foam over it, in two pieces: one notch',
    job: laidJob({
      walls: [{
        length: 96,
        courses: [{
          pieces: [
            straight(0, 48, [4], { notches: [notch('W1', 30, 48, 0, 12)] }),
            straight(48, 96, [52], { notches: [notch('W1', 48, 66, 0, 12)] }),
          ],
          joints: [joint(48)],
        }],
      }],
    }),
    materials: [['TAPE-4', 'S1', 'A', 1, 4]],
    says: [['Across 1 notch with less than 8 in (203 mm) of foam left']],
  },
  {
    name: 'a pipe hole with 6 in under it and 6 in over it is one notch',
    job: laidJob({ walls: [{ length: 48, courses: [{ pieces: [straight(0, 48, [4], { notches: [notch('W1', 20, 24, 6, 10)] })] }] }] }),
    materials: [['TAPE-4', 'S1', 'A', 1, 4]],
    says: [['Across 1 notch with']],
  },
  {
    name: 'a piece sawn at both ends is tied to its neighbour',
    job: laidJob({ walls: [{ length: 68, courses: [{ pieces: [straight(0, 48, [4]), straight(48, 68, [52], { cutEnds: 2 })], joints: [joint(48)] }] }] }),
    materials: [['CTIE-14', 'S1', 'A', 1, 1]],
    says: [['Tie 1 piece sawn at both ends to its neighbour with a cable tie.']],
  },
  {
    name: 'two such pieces, each with its own tie',
    job: laidJob({ walls: [{ length: 40, courses: [{ pieces: [straight(0, 20, [4], { cutEnds: 2 }), straight(20, 40, [24], { cutEnds: 2 })], joints: [joint(20)] }] }] }),
    materials: [['CTIE-14', 'S1', 'A', 1, 2]],
    says: [['Tie 2 pieces sawn at both ends to their neighbours with a cable tie.']],
  },
  {
    name: 'with a wire tie where the range says so',
    job: laidJob({ walls: [{ length: 68, courses: [{ pieces: [straight(0, 48, [4]), straight(48, 68, [52], { cutEnds: 2 })], joints: [joint(48)] }] }] }),
    range: { parameters: { holdDownTieBy: 'wire-tie' } },
    materials: [['WIRE-16', 'S1', 'A', 1, 1]],
    says: [['with a wire tie.']],
  },
  {
    name: 'a form across a mark without a web in either wall: once, in the wall that counts it',
    job: laidJob(parted(
      { length: 4, courses: [{ pieces: [straight(0, 4, [], { id: 'x' })] }] },
      { length: 3, courses: [{ pieces: [straight(0, 3, [], { id: 'x', counted: false })] }] },
    )),
    materials: [['TAPE-4', 'S1', 'A', 1, 4]],
    says: [['1 piece without a web']],
  },
  {
    name: 'a piece across a mark, sawn at both ends, is tied at its joint in the other wall',
    job: laidJob(parted(
      { length: 4, courses: [{ pieces: [straight(0, 4, [], { id: 'x', cutEnds: 2 })] }] },
      { length: 64, courses: [{ pieces: [straight(0, 16, [4], { id: 'x', counted: false, cutEnds: 2 }), straight(16, 64, [20])], joints: [joint(16)] }] },
    )),
    materials: [['CTIE-14', 'S1', 'A', 1, 1]],
    says: [['Tie 1 piece']],
  },
  {
    name: 'an opening across a mark is one notch, in the wall where it begins',
    job: laidJob(parted(
      { length: 48, courses: [{ pieces: [straight(0, 48, [4], { notches: [notch('W1', 30, 48, 0, 12)] })] }] },
      { length: 48, courses: [{ pieces: [straight(0, 48, [4], { notches: [notch('W1', 0, 20, 0, 12)] })], joints: [] }] },
    )),
    materials: [['TAPE-4', 'S1', 'A', 1, 4]],
    says: [['Across 1 notch']],
  },
  {
    name: 'a last chord without a web is strapped like any piece',
    job: laidJob({ walls: [{ length: 11, courses: [{ pieces: [straight(0, 8, [4], { why: 'chord', cutEnds: 2 }), straight(8, 11, [], { why: 'chord', cutEnds: 2 })], joints: [joint(8, 'chord')] }] }] }),
    materials: [['TAPE-4', 'S1', 'A', 1, 4]],
    says: [['Across 1 piece without a web']],
  },
  {
    name: 'ledge and taper forms count like straight ones',
    job: laidJob({
      walls: [{
        length: 68,
        courses: [
          { pieces: [straight(0, 48, [4]), straight(48, 68, [52], { kind: 'ledge', sku: 'LG6', cutEnds: 2 })], joints: [joint(48, 'unit')] },
          { pieces: [straight(0, 62, [4]), straight(62, 68, [], { kind: 'taper-top', sku: 'TT6-1' })], joints: [joint(62)] },
        ],
      }],
    }),
    materials: [['TAPE-4', 'S1', 'A', 2, 4], ['CTIE-14', 'S1', 'A', 1, 1]],
    says: [['Tie 1 piece'], ['Across 1 piece without a web']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  {
    name: 'chords, sawn at both ends: the band of the curve holds them',
    job: laidJob({ walls: [{ length: 16, courses: [{ pieces: [straight(0, 8, [4], { why: 'chord', cutEnds: 2 }), straight(8, 16, [12], { why: 'chord', cutEnds: 2 })], joints: [joint(8, 'chord')] }] }] }),
  },
  { name: 'pieces with webs, sawn at one end', job: laidJob({ walls: [{ length: 72, courses: [{ pieces: [straight(0, 48, [4]), straight(48, 72, [52], { cutEnds: 1 })], joints: [joint(48)] }] }] }) },
  {
    name: 'a notch that leaves 8 in under and nothing over',
    job: laidJob({ walls: [{ length: 48, courses: [{ pieces: [straight(0, 48, [4], { notches: [notch('W1', 20, 40, 8, 16)] })] }] }] }),
  },
  { name: 'corner units and closures, which show no webs', job: laidJob({ walls: [{ length: 48, courses: [{ pieces: [leg(0, 32, { id: 'c', kind: 'corner', sku: 'SQ6-L', hand: 'left', junction: 'J1' }), closure(45.5, 'end')] }] }] }) },
  { name: 'a piece sawn at both ends with no neighbour to tie to', job: laidJob({ walls: [{ length: 20, courses: [{ pieces: [straight(0, 20, [4], { cutEnds: 2 })] }] }] }) },
  {
    name: 'a form across a mark whose web stands in the other wall, which is drawn the other way round',
    job: laidJob(parted(
      { length: 44, courses: [{ pieces: [straight(40, 44, [], { id: 'x' })] }] },
      { length: 44, reversed: true, courses: [{ pieces: [straight(0, 44, [4, 12], { id: 'x', counted: false })] }] },
    )),
  },
];

testRule(shortPiece, applies, doesNotApply);
