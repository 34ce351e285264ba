import type { Nm } from '../quantity/length.js';

export interface RowLabel {
  /** Where it should stand, as its middle. */
  readonly centre: Nm;
  readonly width: Nm;
}

export interface PlacedLabel {
  readonly centre: Nm;
  /** 0 is the row nearest the object. */
  readonly tier: number;
}

/**
 * Rows for labels that stand side by side over (or under) the places they name, each on a leader.
 *
 * Narrow labels go first and so nearest; a label takes the nearest row in which it touches no other, and where its leader crosses
 * no label of a nearer row and no leader of a farther row crosses it. Where no row is so clean it takes the first free one.
 *
 * @param gap    free space kept between two labels of a row [nm]
 * @param bounds the sheet's edges; a label beyond them is pushed in [nm]
 * @returns one place per label, in the order given
 */
export function tierLabels(
  labels: readonly RowLabel[],
  gap: Nm,
  bounds: { readonly left: Nm; readonly right: Nm },
): PlacedLabel[] {
  const placed: (PlacedLabel & { left: Nm; right: Nm; leader: Nm })[] = [];
  const answers: PlacedLabel[] = labels.map((label) => ({ centre: label.centre, tier: 0 }));
  const order = labels.map((_, i) => i).sort((a, b) => (labels[a] as RowLabel).width - (labels[b] as RowLabel).width || a - b);
  for (const i of order) {
    const label = labels[i] as RowLabel;
    const half = label.width / 2;
    const centre = Math.round(Math.max(bounds.left + half, Math.min(bounds.right - half, label.centre)));
    const mine = { centre, left: centre - half, right: centre + half, leader: label.centre };
    const free = (tier: number): boolean =>
      placed.every((other) => other.tier !== tier || other.right + gap <= mine.left || other.left - gap >= mine.right);
    const clean = (tier: number): boolean =>
      placed.every((other) =>
        other.tier < tier ? !crosses(mine.leader, other, gap) : other.tier > tier ? !crosses(other.leader, mine, gap) : true,
      );
    const rows = Array.from({ length: placed.length + 1 }, (_, row) => row).filter(free);
    const tier = rows.find(clean) ?? rows[0] ?? 0;
    placed.push({ ...mine, tier });
    answers[i] = { centre, tier };
  }
  return answers;
}

/**
 * The middle of a label moved as little as it must be for no upright line to run through it: past the nearest line, or between two.
 *
 * @param width with the space kept free at both ends together [nm]
 */
export function besideLines(centre: Nm, width: Nm, lines: readonly Nm[]): Nm {
  const free = (at: Nm): boolean => lines.every((line) => Math.abs(line - at) >= width / 2);
  const places = [centre, ...lines.flatMap((line) => [line - Math.ceil(width / 2), line + Math.ceil(width / 2)])];
  const clear = places.filter(free).sort((a, b) => Math.abs(a - centre) - Math.abs(b - centre));
  return clear[0] ?? centre;
}

const crosses = (leader: Nm, label: { left: Nm; right: Nm }, gap: Nm): boolean =>
  leader > label.left - gap / 3 && leader < label.right + gap / 3;

/**
 * Levels spread so that neighbours are at least `gap` apart, order kept, each moved as little upward as it must be.
 *
 * @param levels ascending [nm]
 */
export function spreadLevels(levels: readonly Nm[], gap: Nm): Nm[] {
  const spread: Nm[] = [];
  for (const level of levels) spread.push(Math.max(level, (spread.at(-1) ?? -Infinity) + gap));
  return spread;
}
