import { describe, expect, it } from '@jest/globals';
import { junctionDetail } from '../../../src/domain/drawing/index.js';
import type { Drawing } from '../../../src/domain/drawing/index.js';
import { BAY_HOUSE, demoRange, drawnStorey } from '../../support/drawn-job.js';
import { clippedTexts, overlappingTexts, textsOf } from '../../support/drawn-text.js';
import { SHEET_HEADER } from '../../support/drawn-wall.js';
import type { Junction } from '../../../src/domain/takeoff/index.js';

const RANGE = demoRange();
const STOREY = drawnStorey(BAY_HOUSE, RANGE);
const words = (drawing: Drawing): string[] => textsOf(drawing).map(({ text }) => text);
const junctionOf = (...marks: string[]): Junction => {
  const found = STOREY.junctions.find(
    ({ walls }) => marks.length === walls.length && marks.every((mark) => walls.includes(mark)),
  );
  if (found === undefined) throw new Error(`no junction of ${marks.join()}`);
  return found;
};
const detail = (marks: string[], units: 'in' | 'mm' = 'in', psf: number | null = null): Drawing =>
  junctionDetail(junctionOf(...marks), STOREY, RANGE, units, SHEET_HEADER, psf);

describe('junctionDetail of a corner', () => {
  it('shows both ways in which the courses are laid, with the legs of the range on the convex face', () => {
    const texts = words(detail(['J', 'K']));
    // SQ6: 37 1/2 in and 21 1/2 in
    expect(texts.filter((text) => text === `3'-1 1/2" long leg`)).toHaveLength(2);
    expect(texts.filter((text) => text === `1'-9 1/2" short leg`)).toHaveLength(2);
    const captions = texts.filter((text) => text.startsWith('Courses'));
    expect(captions.map((text) => text.split(': ')[1]).sort()).toEqual(['SQ6-L', 'SQ6-R']);
    expect(captions.map((text) => text.split(': ')[0]).sort()).toEqual(['Courses 1, 3, 5, 7', 'Courses 2, 4, 6']);
  });

  it('says what thrust its bracing takes: 2 · 600 psf · 1/2 ft · sin(22.5°) = 230 lb/ft for a bay corner', () => {
    expect(words(detail(['A', 'B'], 'in', 600))).toContain('230 lb/ft of height at 600 psf');
    // 229.61 lb/ft × 4.4482216 N/lb ÷ 0.3048 m/ft = 3.35 kN/m; 600 psf = 28.7 kPa
    expect(words(detail(['A', 'B'], 'mm', 600))).toContain('3.35 kN/m of height at 28.7 kPa');
    expect(words(detail(['A', 'B']))).toContain('outward thrust');
  });

  it('names turn, unit and walls', () => {
    expect(words(detail(['G', 'H']))).toContain('corner of G, H, turn 67.5° left');
    expect(words(detail(['A', 'B']))).toContain('corner of A, B, turn 45° right');
    expect(words(detail(['A', 'B']))).toContain('Sawn from a paired blank');
    expect(words(detail(['G', 'H']))).toContain('Hinged unit: cut the inner hinge wall away, the core runs through');
  });

  it('says so where the range has no unit', () => {
    const sharp = drawnStorey(
      {
        walls: [
          ['A', [0, 0], [300, 0]],
          ['B', [300, 0], [150, 200]],
        ],
      },
      RANGE,
    );
    const junction = sharp.junctions.find(({ kind }) => kind === 'corner') as Junction;
    expect(junction.unit).toBeNull();
    const drawing = junctionDetail(junction, sharp, RANGE, 'in', SHEET_HEADER);
    expect(words(drawing).some((text) => text.includes('no unit of the range, by advice'))).toBe(true);
    expect([overlappingTexts(drawing), clippedTexts(drawing)]).toEqual([[], []]);
  });
});

describe('junctionDetail of a tee', () => {
  it('shows cut-out, pin and push: 600 psf × 6 in × 16 in = 400 lb per course (decision 9)', () => {
    const texts = words(detail(['K', 'P'], 'in', 600));
    expect(texts).toContain('6" cut out');
    // cut-out 6 + 2 × web spacing 8 + 2 × embedment 12 = 46 in
    expect(texts).toContain(`3'-10" pin ${RANGE.parameters.teePinBar}`);
    expect(texts).toContain('400 lb per course at 600 psf');
    expect(texts).toContain('Pin wired to web 2 of P');
    // the branch is drawn with its outside on y = 230, so its axis is 235.5 in; K starts at y = 440
    expect(texts).toContain(`Branch P meets K 17'-0 1/2" from its start`);
  });
});

describe('every junction of the bay house', () => {
  it.each(STOREY.junctions.map(({ id, kind }) => ({ id, kind })))(
    '$id, $kind: letters apart, inside the sheet, on a page',
    ({ id }) => {
      for (const units of ['in', 'mm'] as const) {
        const drawing = junctionDetail(
          STOREY.junctions.find((junction) => junction.id === id) as Junction,
          STOREY,
          RANGE,
          units,
          SHEET_HEADER,
          750,
        );
        expect([overlappingTexts(drawing), clippedTexts(drawing)]).toEqual([[], []]);
        expect(drawing.width / drawing.scale / 1e6).toBeLessThanOrEqual(392);
        expect(drawing.height / drawing.scale / 1e6).toBeLessThanOrEqual(232);
      }
    },
  );
});
