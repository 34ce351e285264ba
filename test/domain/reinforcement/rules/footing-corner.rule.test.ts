import { footingCorner } from '../../../../src/domain/reinforcement/rules/footing-corner.rule.js';
import type { Junction } from '../../../../src/domain/takeoff/laid.js';
import { closure, junction, laidJob, laidLedge, leg, straight, times } from '../../../support/laid.js';
import { testRule, type Applies, type DoesNotApply } from '../../../support/rule-tester.js';

const SQUARE = { kind: 'corner', sku: 'SQ6-L', hand: 'left', junction: 'S1-J2' } as const;
const HINGED = { kind: 'corner-hinged', sku: 'HG6', hand: 'left', junction: 'S1-J2' } as const;

const corner = (course: number, piece: string, sku = 'SQ6-L'): Junction =>
  junction({ id: 'S1-J2', kind: 'corner', walls: ['A', 'B'], turn: 90, courses: [course], units: [{ course, hand: 'left', sku, piece }] });

const ledged = (course: number) =>
  laidJob({
    walls: [
      { mark: 'A', length: 240, courses: times(2), features: { ledges: [laidLedge(course, [[0, 245.5]])] } },
      { mark: 'B', length: 120, courses: times(2) },
    ],
    junctions: [junction({ id: 'S1-J2', kind: 'corner', walls: ['A', 'B'], turn: 90, courses: [1, 2], sku: 'SQ6', unit: 'corner', units: [{ course: 3 - course, hand: 'left', sku: 'SQ6-L', piece: 'c' }] })],
  });

const applies: readonly Applies[] = [
  {
    name: 'a square corner unit in course 1: one wire tie a face, once though both walls show the unit, on the arriving wall',
    job: laidJob({
      walls: [
        { mark: 'A', length: 240, courses: [{ pieces: [leg(208, 240, { id: 'c1', ...SQUARE })] }] },
        { mark: 'B', length: 120, courses: [{ pieces: [leg(0, 16, { id: 'c1', ...SQUARE, counted: false })] }] },
      ],
      junctions: [corner(1, 'c1')],
    }),
    materials: [['WIRE-16', 'S1', 'A', 1, 2]],
    stations: [['WIRE-16', 'A', 1, [240]]],
    says: [['At 1 corner or free end, station 240 in (6096 mm)', 'a wire tie on each face']],
  },
  {
    name: 'a hinged corner unit as well',
    job: laidJob({
      walls: [
        { mark: 'A', length: 240, courses: [{ pieces: [leg(219, 240, { id: 'h1', ...HINGED })] }] },
        { mark: 'B', length: 120, courses: [{ pieces: [leg(0, 13, { id: 'h1', ...HINGED, counted: false })] }] },
      ],
      junctions: [corner(1, 'h1', 'HG6')],
    }),
    materials: [['WIRE-16', 'S1', 'A', 1, 2]],
    says: [['At 1 corner or']],
  },
  {
    name: 'a free wall: both of its ends, in course 1 only',
    job: laidJob({ walls: [{ length: 240, courses: times(2, { pieces: [closure(0, 'end'), closure(237.5, 'end')] }) }] }),
    materials: [['WIRE-16', 'S1', 'A', 1, 4]],
    stations: [['WIRE-16', 'A', 1, [0, 240]]],
    says: [['At 2 corners and free ends, station 0 in (0 mm), station 240 in']],
  },
  {
    name: 'strapped instead: a strap of 2 ft on each face',
    job: laidJob({ walls: [{ length: 240, courses: [{ pieces: [closure(0, 'end')] }] }] }),
    range: { parameters: { footingCornerBy: 'strap' } },
    materials: [['STRAP-1x3', 'S1', 'A', 1, 4]],
    says: [['a strap of 24 in (610 mm) on each face']],
  },
  {
    name: "a wall on a raised footing: the unit stands in its course 1 and in course 2 of the arriving wall, whose own course 1 ends free",
    job: laidJob({
      walls: [
        { mark: 'A', length: 240, courses: [{ pieces: [closure(237.5, 'end')] }, { pieces: [leg(208, 240, { id: 'c2', ...SQUARE })] }] },
        { mark: 'B', length: 120, courses: [{ pieces: [leg(0, 16, { id: 'c2', ...SQUARE, counted: false })] }] },
      ],
      junctions: [corner(2, 'c2')],
    }),
    materials: [['WIRE-16', 'S1', 'A', 2, 2], ['WIRE-16', 'S1', 'A', 1, 2]],
    stations: [['WIRE-16', 'A', 1, [240]], ['WIRE-16', 'A', 2, [240]]],
    says: [['At 1 corner or free end'], ['At 1 corner or free end']],
  },
  {
    name: 'a corner that a ledge mitres in course 1, where no unit stands',
    job: ledged(1),
    materials: [['WIRE-16', 'S1', 'A', 1, 2]],
    stations: [['WIRE-16', 'A', 1, [240]]],
    says: [['At 1 corner or']],
  },
];

const doesNotApply: readonly DoesNotApply[] = [
  { name: 'a corner that a ledge mitres in course 2', job: ledged(2) },
  { name: 'a storey that stands on a storey', job: laidJob({ onFooting: false, walls: [{ length: 240, courses: [{ pieces: [closure(0, 'end')] }] }] }) },
  { name: 'a closed jamb', job: laidJob({ walls: [{ length: 240, courses: [{ pieces: [closure(60, 'jamb'), straight(62.5, 110.5, [70])] }] }] }) },
  {
    name: 'a corner unit in course 2 of both walls',
    job: laidJob({
      walls: [
        { mark: 'A', length: 240, courses: [{}, { pieces: [leg(208, 240, { id: 'c2', ...SQUARE })] }] },
        { mark: 'B', length: 120, courses: [{}, { pieces: [leg(0, 16, { id: 'c2', ...SQUARE, counted: false })] }] },
      ],
      junctions: [corner(2, 'c2')],
    }),
  },
  {
    name: 'a turn that no unit makes',
    job: laidJob({ walls: [{ length: 240, courses: times(1) }], junctions: [junction({ id: 'S1-J2', kind: 'unsettled', walls: ['A', 'B'], turn: 130 })] }),
  },
];

testRule(footingCorner, applies, doesNotApply);
