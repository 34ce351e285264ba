import { describe, expect, it } from '@jest/globals';
import { finding } from '../../../src/domain/evidence/finding.js';
import { inches, toMm } from '../../../src/domain/quantity/length.js';
import {
  cutAnswer,
  findingAnswer,
  m2,
  m3,
  takeoffAnswer,
  wallAnswer,
  yd3,
} from '../../../src/modules/takeoffs/takeoff-answer.js';
import { FindingAnswer } from '../../../src/modules/takeoffs/findings.schemas.js';
import { TakeoffAnswer } from '../../../src/modules/takeoffs/takeoffs.schemas.js';
import { stored, unstored } from '../../../src/modules/takeoffs/stored-measurement.js';
import { measurement, wall } from './sample-measurement.js';

describe('units of the answer', () => {
  it('a cubic metre, a square metre and a cubic yard (0.9144 m exactly) are one', () => {
    expect(m2(10n ** 18n)).toBe(1);
    expect(m3(10n ** 27n)).toBe(1);
    expect(yd3(914_400_000n ** 3n)).toBe(1);
  });

  it('lengths print with at most six decimals, the nanometre being the last', () => {
    for (const length of [1, 396_875, 304_800_000, 123_456_789_012_345])
      expect(JSON.stringify(toMm(length))).toMatch(/^\d+(\.\d{1,6})?$/);
    expect(toMm(396_875)).toBe(0.396875);
  });
});

describe('takeoffAnswer', () => {
  const answer = takeoffAnswer(3, measurement);

  it('is what the contract says, nothing more', () => {
    expect(TakeoffAnswer.parse(answer)).toEqual(answer);
  });

  it('totals are those of the parts: one form and two closures bought, spares left out', () => {
    expect(answer.totals.forms).toBe(3);
    expect(answer.totals.concreteM3).toBeCloseTo(40 * 16 * 6 * 0.0254 ** 3, 12);
    expect(answer.totals.concreteYd3).toBeCloseTo((40 * 16 * 6) / 46_656, 12);
    expect(answer.totals.faceM2).toBeCloseTo(48 * 16 * 0.0254 ** 2, 12);
    expect(answer.totals.openingM2).toBeCloseTo(8 * 16 * 0.0254 ** 2, 12);
    expect(answer.totals.orderYd3).toBe(0.75);
  });

  it('shows courses only when asked', () => {
    expect(answer.walls[0]).toEqual({
      mark: 'A',
      storey: 'S1',
      core: '6',
      lengthMm: 1219.2,
      startOffsetMm: 139.7,
      trimStartMm: 0,
      trimEndMm: 25.4,
      stack: { courses: 1, strips: 0, rippedMm: null, heightMm: 406.4, deviationMm: -3.175 },
      alternatives: [{ courses: 2, strips: 0, rippedMm: 203.2, heightMm: 609.6, deviationMm: 200.025 }],
      concreteM3: answer.totals.concreteM3,
      arc: null,
      gable: null,
      ledges: [],
      taper: null,
      coreChanges: [],
      carries: [],
    });
    expect(wallAnswer(wall, true).courses).toEqual([
      {
        n: 1,
        core: '6',
        fromMm: 0,
        toMm: 1193.8,
        bottomMm: 0,
        heightMm: 406.4,
        voids: [{ fromMm: 508, toMm: 711.2, opening: 'D1' }],
        pieces: [
          { id: 'S1-A-1-1', fromMm: 0, toMm: 508, kind: 'straight', sku: 'ST6', hand: null, why: 'starter', inside: false, lengthMm: 508, slope: null },
        ],
      },
    ]);
  });

  it('lists cuts and bond breaks in millimetres', () => {
    expect(cutAnswer(measurement.takeoff.cuts[0]!)).toEqual({
      storey: 'S1',
      sku: 'ST6',
      form: 1,
      parts: [{ piece: 'S1-A-1-1', offsetMm: 0, lengthMm: 508, wall: 'A', course: 1, turned: false }],
      offcutMm: 711.2,
    });
    expect(answer.bondBreaks).toEqual([{ storey: 'S1', wall: 'A', course: 1, atMm: 508, distanceMm: 101.6, cause: 'opening' }]);
  });
});

describe('findingAnswer', () => {
  it('leaves out what the contract does not name', () => {
    const answer = findingAnswer(
      finding('seam', { storey: 'S1', walls: ['A', 'B'], course: 2, atMm: 100.5, numbers: { lengthMm: 6096 } }),
    );
    expect(FindingAnswer.parse(answer)).toEqual({
      code: 'seam',
      severity: 'note',
      storey: 'S1',
      wall: 'A',
      course: 2,
      atMm: 100.5,
      numbers: { lengthMm: 6096 },
      source: 'geometry',
    });
  });
});

describe('a stored measurement', () => {
  it('comes back digit for digit through JSON', () => {
    const parts = JSON.parse(JSON.stringify(stored(measurement))) as ReturnType<typeof stored>;
    expect(parts.walls[0]!.concreteNm3).toBe(String(BigInt(inches(40)) * BigInt(inches(16)) * BigInt(inches(6))));
    const { checklist: _, ...counted } = measurement;
    expect(unstored(parts)).toEqual(counted);
  });
});
