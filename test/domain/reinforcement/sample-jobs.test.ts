import { readFileSync } from 'node:fs';
import { describe, expect, it } from '@jest/globals';
import { measure, type Measurement } from '../../../src/domain/pipeline.js';
import { readScheduleDocument } from '../../../src/domain/schedule/index.js';
import { heron } from '../../support/small-schedules.js';

// The rules on the sample jobs: quantities worked by hand beside each case from the drawing and the demo range's common practice.

function sample(job: string): Measurement {
  const range = heron();
  const { panel, parameters, code, courseHeight, cores } = range;
  const contexts = {
    range: code, cores: [...cores.keys()], courseHeight, buckThickness: parameters.buckThickness, panel,
    coreWidths: new Map([...cores.values()].map((core) => [core.code, core.width])),
  };
  const document: unknown = JSON.parse(readFileSync(new URL(`../../../shared/samples/${job}.schedule.json`, import.meta.url), 'utf8'));
  const schedule = readScheduleDocument(document, contexts);
  if (!schedule.ok) throw new Error(JSON.stringify(schedule.error));
  return measure(schedule.value, range);
}

/** What a rule takes of a material at a wall, in one course or in all. */
const taken = ({ materials }: Measurement, rule: string, sku: string, wall: string, course?: number): number =>
  materials.filter((line) => line.sku === sku).flatMap(({ because }) => because)
    .filter((cause) => cause.rule === rule && cause.wall === wall && (course === undefined || cause.course === course))
    .reduce((sum, { quantity }) => sum + quantity, 0);
const told = ({ instructions }: Measurement, rule: string, wall: string | null): string => instructions.filter((each) => each.rule === rule && each.wall === wall).map(({ text }) => text).join('\n');

describe('Lantern Hall', () => {
  const hall = sample('lantern-hall');
  const slope = Math.hypot(168, 54);

  it.each([
    { rule: 'mitred-ledge', sku: 'TAPE-4', wall: 'South', course: 3, feet: 8, why: 'four strips of 2 ft across the mitre with East' },
    { rule: 'gable-edge', sku: 'BOARD-1x4', wall: 'East', course: undefined, feet: (4 * slope) / 12, why: 'two slopes of 168 over 54 in, 17.8 degrees, both faces' },
    { rule: 'gable-edge', sku: 'BOARD-1x4', wall: 'East', course: 11, feet: (4 * slope * 6) / 54 / 12, why: '6 in of the rise of 54 stand in the last course' },
    { rule: 'taper-top-edge', sku: 'STRAP-1x3', wall: 'South', course: 7, feet: 419 / 12, why: 'axis 528 - 13 = 515 in less legs of 22.5 - 6.5 and 38.5 - 6.5 in less a window of 48' },
    { rule: 'radius-band', sku: 'STRAP-1x3', wall: 'Garden', course: 1, feet: (120 * Math.PI - 36) / 12, why: 'a quarter of 240 in on the convex face, which is the dimension line, less a door of 36' },
    { rule: 'radius-band', sku: 'FOAM-24', wall: 'Garden', course: 2, feet: (15 * 16 * 2) / 12, why: '18 chords of 20 in have 17 joints; the door takes two' },
    { rule: 'top-course-hold-down', sku: 'TAPE-4', wall: 'West', course: 8, feet: 32, why: 'each slope leaves 16 x 168 / 54 = 49.8 in open: 4 strips, two slopes, two faces of 2 ft' },
    { rule: 'top-course-hold-down', sku: 'TAPE-4', wall: 'West', course: 11, feet: 12, why: '336 x 6 / 54 = 37.3 in: 3 strips, two faces of 2 ft' },
    { rule: 'top-course-hold-down', sku: 'TAPE-4', wall: 'West', course: 7, feet: 0, why: 'the gable stands on it' },
  ])('$rule on $wall $course: $feet ft of $sku, $why', ({ rule, sku, wall, course, feet }) => expect(taken(hall, rule, sku, wall, course)).toBeCloseTo(feet, 6));

  it('chords are not tied one by one; those of the top course are, as everywhere', () => {
    expect(taken(hall, 'short-piece', 'CTIE-14', 'Garden')).toBe(0);
    expect(taken(hall, 'top-course-hold-down', 'CTIE-14', 'Garden')).toBe(15);
  });

  it('the mitre of two ledges on 8 in: 2 x 600 x (8 x 16 + extra) / 144 x sin 45', () => {
    const extra = (heron().ledge?.extraSectionMm2 ?? NaN) / 645.16;
    expect(told(hall, 'mitred-ledge', 'South')).toContain(`${Math.round((1200 * (128 + extra) * Math.SQRT1_2) / 144)} lb`);
  });

  it('the bank steps from 10 to 6 in flush inside: 4 in outside, a seat of 1.5 in, 125 lb/ft of uplift, 32 ft of cleat', () => {
    expect(told(hall, 'core-change-cleat', 'Bank')).toMatch(/on the outside cleat 384 in .* set back 4 in .* a seat of 1\.5 in .* 125 lb\/ft/);
  });

  it('a door of 6 ft by 7 in 8 in: 4 spreaders, 3 posts, 400 lb/ft, 800 lb on each; a window through to the top has no post', () => {
    expect(told(hall, 'buck-bracing', 'South')).toMatch(/D1 .* 4 spreaders .* 400 lb\/ft .* 800 lb/);
    expect(told(hall, 'lintel-shore', 'South')).toMatch(/D1 .* 3 posts .* 400 lb\/ft .* 800 lb/);
    expect(told(hall, 'lintel-shore', 'South')).not.toContain('W1');
    expect(told(hall, 'sill-pour', 'South')).toMatch(/^Sill of W1 .* 400 lb\/ft .* 1600 lb/);
  });
});

describe('Mill Lane House', () => {
  const house = sample('mill-lane-house');

  it.each([
    { wall: 'D1', feet: (2 * 455) / 12, why: 'two runs over its whole axis' },
    { wall: 'C1', feet: (2 * 433) / 12, why: 'H1 stands on it from 88.5 in and reaches 6.5 further: 515 - 82' },
    { wall: 'Q1', feet: (2 * 442) / 12, why: 'a branch of 455 less 6.5 in at both ends' },
    { wall: 'G1', feet: 0, why: 'the garage carries nothing' },
  ])('top-protect on $wall: $feet ft of cover, $why', ({ wall, feet }) => expect(taken(house, 'top-protect', 'MASK-12', wall)).toBeCloseTo(feet, 9));

  it('nothing is masked on the storey that carries none', () => {
    const storeys = house.materials.filter(({ sku }) => sku === 'MASK-12').flatMap(({ because }) => because.map(({ storey }) => storey));
    expect([...new Set(storeys)]).toEqual(['S1']);
  });
});
