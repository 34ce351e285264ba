/**
 * A row of a wall table: greatest height of the wall and of the backfill [ft], and the cell for 30, 45 and 60 psf/ft of lateral load.
 *
 * Cells as printed: `#5 @ 41` is bar #5 every 41 in, NR none required, DR design required; a letter behind is the table's note.
 */
export type WallTableRow = readonly [heightFt: number, backfillFt: number, psf30: string, psf45: string, psf60: string];

/**
 * Vertical bars of flat basement walls, 1 1/4 in from the inside face, by nominal thickness [in]. Grade 60, 2500 psi.
 *
 * irc-2018 Table R404.1.2(8), the same in irc-2021; read in a public transcription that compares four state printings. The cell 8 in, 9 ft, 6 ft,
 * 60 psf/ft is disputed: the building code's twin table prints #5 @ 39.
 */
export const INSIDE_FACE_TABLE: Readonly<Record<number, readonly WallTableRow[]>> = {
  6: [
    [5, 4, 'NR', 'NR', 'NR'], [5, 5, 'NR', 'NR', 'NR'], [6, 4, 'NR', 'NR', 'NR'], [6, 5, 'NR', 'NR', '#4 @ 35'],
    [6, 6, 'NR', '#5 @ 48', '#5 @ 36'], [7, 4, 'NR', 'NR', 'NR'], [7, 5, 'NR', 'NR', '#5 @ 47'],
    [7, 6, 'NR', '#5 @ 42', '#6 @ 43'], [7, 7, '#5 @ 46', '#6 @ 42', '#6 @ 34'], [8, 4, 'NR', 'NR', 'NR'],
    [8, 5, 'NR', '#4 @ 38', '#5 @ 43'], [8, 6, '#4 @ 37', '#5 @ 37', '#6 @ 37'], [8, 7, '#5 @ 40', '#6 @ 37', '#6 @ 34'],
    [8, 8, '#6 @ 43', '#6 @ 34', '#6 @ 27'], [9, 4, 'NR', 'NR', 'NR'], [9, 5, 'NR', '#4 @ 35', '#5 @ 40'],
    [9, 6, '#4 @ 34', '#6 @ 48', '#6 @ 36'], [9, 7, '#5 @ 36', '#6 @ 34', '#6 @ 33'],
    [9, 8, '#6 @ 38', '#6 @ 33', '#6 @ 24'], [9, 9, '#6 @ 34', '#6 @ 26', '#6 @ 19'], [10, 4, 'NR', 'NR', 'NR'],
    [10, 5, 'NR', '#4 @ 33', '#5 @ 38'], [10, 6, '#5 @ 48', '#6 @ 45', '#6 @ 34'],
    [10, 7, '#6 @ 47', '#6 @ 34', '#6 @ 30'], [10, 8, '#6 @ 34', '#6 @ 30', '#6 @ 22'],
    [10, 9, '#6 @ 34', '#6 @ 23', 'DR'], [10, 10, '#6 @ 28', 'DR j', 'DR'],
  ],
  8: [
    [5, 4, 'NR', 'NR', 'NR'], [5, 5, 'NR', 'NR', 'NR'], [6, 4, 'NR', 'NR', 'NR'], [6, 5, 'NR', 'NR l', 'NR l'],
    [6, 6, 'NR', 'NR', 'NR'], [7, 4, 'NR', 'NR', 'NR'], [7, 5, 'NR', 'NR', 'NR'], [7, 6, 'NR', 'NR', '#5 @ 48'],
    [7, 7, 'NR', '#5 @ 46', '#6 @ 48'], [8, 4, 'NR', 'NR', 'NR'], [8, 5, 'NR', 'NR l', 'NR'],
    [8, 6, 'NR l', 'NR', '#5 @ 43'], [8, 7, 'NR', '#5 @ 41', '#6 @ 43'], [8, 8, '#5 @ 47', '#6 @ 43', '#6 @ 32'],
    [9, 4, 'NR', 'NR', 'NR'], [9, 5, 'NR', 'NR l', 'NR'], [9, 6, 'NR l', 'NR', '#6 @ 39'],
    [9, 7, 'NR', '#5 @ 37', '#6 @ 38'], [9, 8, '#5 @ 41', '#6 @ 38', '#6 @ 29'], [9, 9, '#6 @ 46', '#6 @ 30', '#6 @ 23'],
    [10, 4, 'NR', 'NR', 'NR'], [10, 5, 'NR', 'NR l', 'NR'], [10, 6, 'NR l', 'NR', '#5 @ 37'],
    [10, 7, 'NR', '#6 @ 48', '#6 @ 35'], [10, 8, '#5 @ 38', '#6 @ 34', '#6 @ 26'],
    [10, 9, '#6 @ 41', '#6 @ 27', '#6 @ 22'], [10, 10, '#6 @ 33', '#6 @ 23', '#6 @ 22'],
  ],
  10: [
    [5, 4, 'NR', 'NR', 'NR'], [5, 5, 'NR', 'NR', 'NR'], [6, 4, 'NR', 'NR', 'NR'], [6, 5, 'NR', 'NR', 'NR'],
    [6, 6, 'NR', 'NR', 'NR'], [7, 4, 'NR', 'NR', 'NR'], [7, 5, 'NR', 'NR', 'NR'], [7, 6, 'NR', 'NR', 'NR l'],
    [7, 7, 'NR', 'NR l', 'NR'], [8, 4, 'NR', 'NR', 'NR'], [8, 5, 'NR', 'NR', 'NR'], [8, 6, 'NR', 'NR', 'NR l'],
    [8, 7, 'NR', 'NR l', 'NR'], [8, 8, 'NR l', 'NR', '#6 @ 44'], [9, 4, 'NR', 'NR', 'NR'], [9, 5, 'NR', 'NR', 'NR'],
    [9, 6, 'NR', 'NR', 'NR l'], [9, 7, 'NR', 'NR', '#5 @ 37'], [9, 8, 'NR l', '#5 @ 37', '#6 @ 39'],
    [9, 9, 'NR', '#6 @ 41', '#6 @ 30'], [10, 4, 'NR', 'NR', 'NR'], [10, 5, 'NR', 'NR', 'NR'], [10, 6, 'NR', 'NR', 'NR'],
    [10, 7, 'NR', 'NR', '#6 @ 48'], [10, 8, 'NR', '#6 @ 47', '#6 @ 35'], [10, 9, '#4 @ 48', '#6 @ 35', '#6 @ 27'],
    [10, 10, '#6 @ 45', '#6 @ 29', '#6 @ 22'],
  ],
  12: [
    [5, 4, 'NR', 'NR', 'NR'], [5, 5, 'NR', 'NR', 'NR'], [6, 4, 'NR', 'NR', 'NR'], [6, 5, 'NR', 'NR', 'NR'],
    [6, 6, 'NR', 'NR', 'NR'], [7, 4, 'NR', 'NR', 'NR'], [7, 5, 'NR', 'NR', 'NR'], [7, 6, 'NR', 'NR', 'NR'],
    [7, 7, 'NR', 'NR', 'NR'], [8, 4, 'NR', 'NR', 'NR'], [8, 5, 'NR', 'NR', 'NR'], [8, 6, 'NR', 'NR', 'NR'],
    [8, 7, 'NR', 'NR', 'NR'], [8, 8, 'NR', 'NR', 'NR'], [9, 4, 'NR', 'NR', 'NR'], [9, 5, 'NR', 'NR', 'NR'],
    [9, 6, 'NR', 'NR', 'NR'], [9, 7, 'NR', 'NR', 'NR l'], [9, 8, 'NR', 'NR l', '#4 @ 48 m'],
    [9, 9, 'NR', 'NR', '#6 @ 39'], [10, 4, 'NR', 'NR', 'NR'], [10, 5, 'NR', 'NR', 'NR'], [10, 6, 'NR', 'NR', 'NR'],
    [10, 7, 'NR', 'NR', 'NR l'], [10, 8, 'NR', 'NR l', '#6 @ 45 m'], [10, 9, 'NR l', '#4 @ 48 m', '#6 @ 34'],
    [10, 10, 'NR', '#6 @ 38', '#6 @ 28'],
  ],
};
