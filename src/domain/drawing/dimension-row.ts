import type { Nm } from '../quantity/length.js';
import { besideLines, tierLabels } from './label-tiers.js';
import { TEXT_MM } from './sheet.js';
import type { Sheet } from './sheet.js';

/** One measured part of a row; `texts` from the fullest wording to the shortest. */
export interface RowPart {
  readonly from: Nm;
  readonly to: Nm;
  readonly texts: readonly string[];
}

const PAD_MM = 1.2;
const TEXT_ABOVE_MM = 1.7;
const TIER_MM = 3.3;
const ROW_MM = 5.4;

/**
 * A row of dimensions under the object. Texts that do not fit between their ticks hang below the line on leaders.
 *
 * @param line     height of the dimension line [nm]
 * @param measured height of the object's edge, where extension lines start [nm]
 * @param crossing places where extension lines of farther rows run through the texts
 * @returns height of the next row's dimension line [nm]
 */
export function dimensionRow(
  sheet: Sheet,
  parts: readonly RowPart[],
  line: Nm,
  measured: Nm,
  bounds: { readonly left: Nm; readonly right: Nm },
  crossing: readonly Nm[] = [],
): Nm {
  const fitting = parts.map((part) => fittingText(sheet, part, crossing));
  const hung = parts.filter((_, i) => fitting[i] === null);
  const shortest = (part: RowPart): string => part.texts.at(-1) ?? '';
  const tiers = tierLabels(
    hung.map((part) => {
      const width = sheet.widthOf(shortest(part), TEXT_MM.small);
      return { centre: besideLines((part.from + part.to) / 2, width + sheet.mm(PAD_MM), crossing), width };
    }),
    sheet.mm(PAD_MM),
    bounds,
  );
  parts.forEach((part, i) => {
    const fit = fitting[i] ?? null;
    const middle = Math.round((part.from + part.to) / 2);
    const tier = fit === null ? tiers[hung.indexOf(part)] : undefined;
    const textAt =
      tier === undefined
        ? { x: fit?.centre ?? middle, y: line + sheet.mm(TEXT_ABOVE_MM) }
        : { x: tier.centre, y: line - sheet.mm(TIER_MM * (tier.tier + 1)) };
    if (tier !== undefined)
      sheet.line('dimension', { x: middle, y: line }, { x: tier.centre, y: textAt.y + sheet.mm(TEXT_ABOVE_MM * 0.8) });
    sheet.dimension(
      { x: part.from, y: measured },
      { x: part.to, y: measured },
      { x: part.from, y: line },
      { x: part.to, y: line },
      fit?.text ?? shortest(part),
      textAt,
    );
  });
  const deepest = Math.max(0, ...tiers.map((tier) => tier.tier + 1));
  return line - sheet.mm(ROW_MM + deepest * TIER_MM);
}

/** The fullest wording that stands between a part's ticks clear of the lines that cross the row, as near to the middle as they let it. */
function fittingText(sheet: Sheet, { from, to, texts }: RowPart, crossing: readonly Nm[]): { readonly text: string; readonly centre: Nm } | null {
  const middle = Math.round((from + to) / 2);
  for (const text of texts) {
    const width = sheet.widthOf(text, TEXT_MM.small) + sheet.mm(PAD_MM);
    if (width > to - from) continue;
    const centre = besideLines(middle, width, crossing);
    const clear = crossing.every((line) => Math.abs(line - centre) >= width / 2);
    if (clear && Math.abs(centre - middle) <= (to - from - width) / 2) return { text, centre };
  }
  return null;
}
