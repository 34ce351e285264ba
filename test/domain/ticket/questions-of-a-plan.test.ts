import { describe, expect, it } from '@jest/globals';
import { QUESTION_NUMBERS } from '../../../src/domain/ticket/question-numbers.js';
import { measure } from '../../../src/domain/pipeline.js';
import { heron, loopOf, scheduleOf, type OpeningInput, type WallInput } from '../../support/small-schedules.js';
import type { Pour } from '../../../src/domain/schedule/schedule.js';

const rad = (degrees: number): number => (degrees * Math.PI) / 180;
/** Two walls of 20 ft that meet at a turn to the left. */
const bend = (turn: number): WallInput[] => [
  { mark: 'A', from: [0, 0], to: [240, 0] },
  { mark: 'B', from: [240, 0], to: [240 + 240 * Math.cos(rad(turn)), 240 * Math.sin(rad(turn))] },
];
const square = loopOf([[0, 0], [480, 0], [480, 336], [0, 336]]);
const door: OpeningInput = { mark: 'D1', wall: 'A', at: 50, sill: 0, width: 36, height: 80 };
const FAST: Pour = { riseMPerH: 1.8288, concreteC: 190 / 9, cement: 'I', retarder: false, slumpMm: 150 };

interface OddPlan {
  readonly what: string;
  readonly walls: readonly WallInput[];
  readonly openings?: readonly OpeningInput[];
  readonly height?: number;
  readonly pour?: Pour;
  readonly key: string;
}

const ODD: readonly OddPlan[] = [
  { what: 'a turn that no unit makes', walls: bend(7.5), key: 'turn-not-made turnDeg=7.5 core=6' },
  { what: 'an acute turn', walls: bend(130), key: 'turn-acute turnDeg=130.0 core=6' },
  { what: 'walls that cross', walls: [{ mark: 'A', from: [0, 0], to: [240, 0] }, { mark: 'B', from: [120, -120], to: [120, 120], core: '8' }], key: 'walls-cross core=6 otherCore=8' },
  { what: 'a corner of two cores', walls: [{ mark: 'A', from: [0, 0], to: [240, 0] }, { mark: 'B', from: [240, 0], to: [240, 240], core: '8' }], key: 'core-change turnDeg=90.0 core=6 otherCore=8' },
  { what: 'a skewed tee', walls: [...square, { mark: 'P', from: [240, 0], to: [390, 150] }], key: 'tee-skewed angleDeg=45.0 core=6 throughCore=6' },
  { what: 'a tall wall', walls: square, height: 160, key: 'single-lift-height heightMm=4064.0' },
  { what: 'an opening near a corner', walls: square, openings: [{ ...door, at: 20 }], key: 'opening-near-corner' },
  { what: 'a narrow pier', walls: square, openings: [{ ...door, at: 100 }, { ...door, mark: 'D2', at: 150 }], key: 'pier-narrow' },
  { what: 'a pour over the rating', walls: square, pour: FAST, key: 'pressure-over-rating pressurePsf=921 ratedPsf=750 core=6' },
];

describe('questions of a measured plan', () => {
  it.each(ODD)('$what asks $key', ({ walls, openings = [], height = 96, pour = null, key }) => {
    const { questions, findings } = measure({ ...scheduleOf(walls, { openings, height }), pour }, heron());
    expect(questions.map((question) => question.key)).toContain(key);
    for (const { code, numbers } of findings) {
      const deciding: readonly string[] | 'every' = QUESTION_NUMBERS[code];
      if (deciding !== 'every' && deciding.length > 0) expect(deciding.filter((name) => name in numbers).length).toBeGreaterThanOrEqual(1);
    }
    for (const { text } of questions) expect(text).not.toMatch(/undefined|NaN|\[object/);
  });

  it('an answer settles its question for good, and a changed number asks again', () => {
    const plan = scheduleOf(bend(130));
    const [question] = measure(plan, heron()).questions;
    const advice = [{ question: question?.key ?? '', lifts: (question?.findings ?? []).map(({ code, storey, wall }) => ({ code, storey, wall })), text: 'Form the corner by hand.' }];
    expect(measure(plan, heron(), advice)).toMatchObject({ questions: [], lifted: [{ code: 'turn-acute' }] });
    expect(measure(scheduleOf(bend(131)), heron(), advice).questions.map(({ key }) => key)).toEqual(['turn-acute turnDeg=131.0 core=6']);
  });

  it('a plain rectangle asks nothing', () => {
    const { questions, findings } = measure(scheduleOf(square, { openings: [door] }), heron());
    expect(questions).toEqual([]);
    expect(findings.map(({ code }) => code).sort()).toEqual(['bars-not-checked', 'lintel-load-not-stated', 'pour-not-stated', 'site-not-stated']);
  });
});
