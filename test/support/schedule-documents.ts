import { inches } from '../../src/domain/quantity/length.js';
import type { ScheduleContext } from '../../src/domain/schedule/index.js';

/** The demo range's figures that a schedule is checked against. */
export const HERON: ScheduleContext = {
  range: 'HERON-16',
  cores: ['4', '6', '8', '10'],
  coreWidths: new Map([4, 6, 8, 10].map((width) => [String(width), inches(width)])),
  panel: inches(2.5),
  courseHeight: inches(16),
  buckThickness: inches(1.5),
};

/** The rectangle of the design, 40'-0" x 28'-0", as a document that a test may change. */
export function rectangle(): any {
  return {
    format: 'wallcourse/schedule@1',
    name: 'Rectangle',
    units: 'in',
    dimensionsTo: 'foam-face',
    range: 'HERON-16',
    storeys: [{ id: 'S1', height: `9'-0"`, grade: 'above', storeyAbove: false, closed: true }],
    walls: [
      { mark: 'A', storey: 'S1', core: '6', from: [0, 0], to: [480, 0] },
      { mark: 'B', storey: 'S1', core: '6', from: [480, 0], to: [480, 336] },
      { mark: 'C', storey: 'S1', core: '6', from: [480, 336], to: [0, 336] },
      { mark: 'D', storey: 'S1', core: '6', from: [0, 336], to: [0, 0] },
    ],
    openings: [{ mark: 'D1', wall: 'A', at: 60, sill: 0, width: 36, height: 84, lining: 'buck', measured: 'concrete' }],
  };
}

/** The same rectangle with declared corners in place of coordinates. */
export function declaredRectangle(): any {
  const corner = (wall: string, end: string) => ({ joint: 'corner', turn: 90, with: { wall, end } });
  const lengths = { A: `40'-0"`, B: `28'-0"`, C: `40'-0"`, D: `28'-0"` };
  const marks = ['A', 'B', 'C', 'D'] as const;
  return {
    ...rectangle(),
    walls: marks.map((mark, index) => ({
      mark, storey: 'S1', core: '6', length: lengths[mark],
      start: corner(marks[(index + 3) % 4] ?? '', 'end'),
      end: corner(marks[(index + 1) % 4] ?? '', 'start'),
    })),
  };
}
