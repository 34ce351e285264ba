/**
 * The least number of stock pieces by trying every arrangement: each part goes into every opened stock piece that still
 * takes it, or into a new one. Written without the kerf trick of the solver: a stock piece takes parts while the parts and
 * the cuts between them are no longer than the stock.
 *
 * @param lengths at most about ten parts, none longer than the stock
 */
export function bruteForceBins(lengths: readonly number[], stock: number, kerf: number): number {
  let best = lengths.length;
  const contents: number[][] = [];
  const fits = (content: readonly number[], length: number): boolean =>
    [...content, length].reduce((sum, part) => sum + part, 0) + content.length * kerf <= stock;
  const place = (index: number): void => {
    if (contents.length >= best) return;
    if (index === lengths.length) {
      best = contents.length;
      return;
    }
    const length = lengths[index]!;
    for (const content of contents) {
      if (!fits(content, length)) continue;
      content.push(length);
      place(index + 1);
      content.pop();
    }
    contents.push([length]);
    place(index + 1);
    contents.pop();
  };
  place(0);
  return best;
}
