interface Point {
  readonly 0: number;
  readonly 1: number;
}

/** A closed plan of one storey in inches, dimensioned to the foam face, walls A, B, C … in order. */
export function plan(name: string, corners: readonly Point[], openings: readonly object[] = [], height = '8\'-0"') {
  const marks = corners.map((_, index) => String.fromCharCode(65 + index));
  return {
    format: 'wallcourse/schedule@1',
    name,
    units: 'in',
    dimensionsTo: 'foam-face',
    range: 'HERON-16',
    storeys: [{ id: 'S1', height, grade: 'above', storeyAbove: false, closed: true }],
    walls: marks.map((mark, index) => ({
      mark,
      storey: 'S1',
      core: '6',
      from: corners[index],
      to: corners[(index + 1) % corners.length],
    })),
    openings,
  };
}

/** An ordinary shed: raises no ticket. */
export const shed = (name = 'Shed') =>
  plan(
    name,
    [
      [0, 0],
      [480, 0],
      [480, 336],
      [0, 336],
    ],
    [{ mark: 'D1', wall: 'A', at: 180, sill: 0, width: 36, height: 84, lining: 'buck', measured: 'concrete' }],
  );

/** A triangle of three equal sides: it turns by 120 degrees at every corner, which no unit of the demo range makes. */
export const triangle = (name = 'Prow', side = 480) =>
  plan(name, [
    [0, 0],
    [side, 0],
    [side / 2, (side * Math.sqrt(3)) / 2],
  ]);
