import { describe, expect, it } from '@jest/globals';
import { takeOff, type Takeoff } from '../../src/domain/takeoff/index.js';
import { canonicalSchedule } from '../support/canonical-schedule.js';
import { ORDINARY_PLANS } from '../support/ordinary-plans.js';
import { featured, ledge, rectangle } from '../support/features.js';
import { heron } from '../support/small-schedules.js';
import { differences } from './differences.js';
import { brokenLaws } from './laid-laws.js';
import { slowTakeoff } from './slow-takeoff.js';

type Loose<T> = { -readonly [K in keyof T]: Loose<T[K]> };
type Spoil = (takeoff: Loose<Takeoff>) => void;

const range = heron();
const document = ORDINARY_PLANS.find(({ name }) => name === 'bay window')!;
const slow = slowTakeoff(document);
const good = takeOff(canonicalSchedule(document), range);
const wall = (takeoff: Loose<Takeoff>) => takeoff.laid.storeys[0]!.walls[0]!;

function faultsAfter(spoil: Spoil): string[] {
  const spoilt = structuredClone(good) as Loose<Takeoff>;
  spoil(spoilt);
  return [...brokenLaws(spoilt, range), ...differences(spoilt, slow)];
}

describe('a spoilt take-off is found out', () => {
  it('the unspoilt one is not', () => {
    expect([...brokenLaws(good, range), ...differences(good, slow)]).toEqual([]);
  });

  const spoils: readonly [what: string, spoil: Spoil][] = [
    ['a piece left out', (takeoff) => wall(takeoff).courses[2]!.pieces.splice(2, 1)],
    ['a piece one nanometre short', (takeoff) => { wall(takeoff).courses[2]!.pieces[2]!.to -= 1; }],
    ['a joint not told', (takeoff) => wall(takeoff).courses[0]!.headJoints.splice(1, 1)],
    ['a course an inch too high', (takeoff) => { wall(takeoff).courses[3]!.height += 25_400_000; }],
    ['a course left out', (takeoff) => wall(takeoff).courses.pop()],
    ['two pieces of one id', (takeoff) => { wall(takeoff).courses[1]!.pieces[2]!.id = wall(takeoff).courses[1]!.pieces[1]!.id; }],
    ['a web moved', (takeoff) => {
      const piece = wall(takeoff).courses[0]!.pieces.find(({ cutEnds, webs }) => cutEnds > 0 && webs && webs.length > 1)!;
      piece.webs![0]! += 1;
    }],
    ['a leg of the other length', (takeoff) => {
      const pieces = wall(takeoff).courses[0]!.pieces;
      pieces.find(({ kind }) => kind !== 'straight')!.to += 25_400_000;
    }],
    ['a hand that does not alternate', (takeoff) => {
      const units = takeoff.laid.storeys[0]!.junctions.find(({ unit }) => unit === 'corner')!.units;
      units[1]!.hand = units[0]!.hand;
    }],
    ['a form bought too few', (takeoff) => { takeoff.units.find(({ kind }) => kind === 'straight')!.bought -= 1; }],
    ['a bound over what is bought', (takeoff) => { takeoff.units.find(({ kind }) => kind === 'straight')!.lowerBound += 1_000; }],
    ['no spares', (takeoff) => { takeoff.units.find(({ kind }) => kind === 'straight')!.spare = 0; }],
    ['a pair bought too few', (takeoff) => { takeoff.units.find(({ kind }) => kind === 'corner-pair')!.bought -= 1; }],
    ['a corner unit miscounted', (takeoff) => { takeoff.units.find(({ kind }) => kind === 'corner')!.pieces += 1; }],
    ['a part missing from the cut list', (takeoff) => takeoff.cuts[0]!.parts.pop()],
    ['a form of the cut list overfull', (takeoff) => { takeoff.cuts[0]!.parts.at(-1)!.offset += range.formLength; }],
    ['a bond break that is none', (takeoff) => takeoff.bondBreaks.push({ storey: 'S1', wall: 'B1', course: 2, at: 1, distance: 0, cause: 'tee' })],
    ['an axis a tenth of a millimetre long', (takeoff) => { wall(takeoff).length += 100_000; }],
    ['concrete a hundred-millionth too much', (takeoff) => { takeoff.concrete[0]!.nm3 += takeoff.concrete[0]!.nm3 / 100_000_000n; }],
    ['a quarter yard less ordered', (takeoff) => { takeoff.concrete[0]!.orderYd3 -= 0.25; }],
    ['a seam not told', (takeoff) => takeoff.findings.splice(takeoff.findings.findIndex(({ code }) => code === 'seam'), 1)],
    ['another stack', (takeoff) => { wall(takeoff).stack.ripped = null; }],
  ];
  it.each(spoils)('%s', (_, spoil) => {
    expect(faultsAfter(spoil).length).toBeGreaterThanOrEqual(1);
  });

  it('a bond break left out', () => {
    const tees = ORDINARY_PLANS.find(({ name }) => name === 'two partitions, one thinner and ending free')!;
    const takeoff = structuredClone(takeOff(canonicalSchedule(tees), range)) as Loose<Takeoff>;
    const joint = takeoff.laid.storeys[0]!.walls[0]!.courses[0]!.headJoints[2]!;
    const above = takeoff.laid.storeys[0]!.walls[0]!.courses[1]!;
    const piece = above.pieces.find(({ from, to }) => from < joint.at && to > joint.at)!;
    above.headJoints.push({ at: joint.at, kind: 'module' });
    above.pieces.push({ ...piece, id: 'new', from: joint.at });
    piece.to = joint.at;
    expect(brokenLaws(takeoff, range).some((fault) => fault.startsWith('bond break not listed'))).toBe(true);
  });
});

describe('a spoilt mitre is found out', () => {
  const features = ['A', 'B', 'C', 'D'].map((mark, index) => ledge(mark, 48, 0, index % 2 === 0 ? 480 : 336));
  const mitred = takeOff(featured(rectangle(480, 336), features), range);
  const after = (spoil: Spoil): string[] => {
    const spoilt = structuredClone(mitred) as Loose<Takeoff>;
    spoil(spoilt);
    return brokenLaws(spoilt, range);
  };

  it('the unspoilt one is not', () => expect(brokenLaws(mitred, range)).toEqual([]));

  it.each<[string, Spoil]>([
    ['a mitred course a nanometre long', (takeoff) => {
      const course = wall(takeoff).courses[2]!;
      course.to += 1;
      course.pieces.at(-1)!.to += 1;
    }],
    ['a ledge that is not told', (takeoff) => { for (const each of takeoff.laid.storeys[0]!.walls) each.ledges.splice(0); }],
    ['a mitre that is not told', (takeoff) => { wall(takeoff).ledges[0]!.mitreStart = false; }],
    ['a corner unit where none stands', (takeoff) => { takeoff.laid.storeys[0]!.junctions[0]!.units.splice(1, 1); }],
    ['a ledge form bought too few', (takeoff) => { takeoff.units.find(({ kind }) => kind === 'ledge')!.bought -= 1; }],
    ['spares of ledge forms', (takeoff) => { takeoff.units.find(({ kind }) => kind === 'ledge')!.spare = 1; }],
    ['a bond break at a ledge not told', (takeoff) => takeoff.laid.storeys[0]!.walls[0]!.courses[2]!.headJoints.push({ at: takeoff.laid.storeys[0]!.walls[0]!.courses[1]!.headJoints[0]!.at, kind: 'unit' })],
  ])('%s', (_, spoil) => {
    expect(after(spoil)).not.toEqual([]);
  });
});
