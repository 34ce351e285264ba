/** From here on a storey takes a third horizontal bar. irc-2018 Table R404.1.2(1), as quoted in public pages. */
const TALL_FT = 8;

/** Horizontal bars of a storey of concrete wall, by its height. */
export function horizontalBars(heightFt: number): string {
  return heightFt <= TALL_FT ? '2 × #4: within 12 in of the top, near mid-height' : '3 × #4: within 12 in of the top, near the third points';
}
