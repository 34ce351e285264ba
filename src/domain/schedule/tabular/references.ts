type Fields = Record<string, unknown>;

/**
 * Writes marks that tables name in another case or with other spaces as the row that has them does: `1ST FLOOR` for `1st floor`. Only
 * where no mark is written so exactly and just one differs by no more than that; every other name is left for its error.
 */
export function alignReferences(document: Fields): void {
  const walls = rowsOf(document, 'walls');
  const storeys = rowsOf(document, 'storeys');
  const wallMark = aligner(walls, 'mark');
  const storeyId = aligner(storeys, 'id');
  for (const wall of walls) {
    align(wall, 'storey', storeyId);
    for (const joint of [wall['start'], wall['end']]) {
      if (!isFields(joint)) continue;
      align(joint, 'on', wallMark);
      if (isFields(joint['with'])) align(joint['with'], 'wall', wallMark);
    }
  }
  for (const storey of storeys) align(storey, 'on', storeyId);
  for (const row of [...rowsOf(document, 'openings'), ...rowsOf(document, 'features')]) align(row, 'wall', wallMark);
}

const isFields = (value: unknown): value is Fields => typeof value === 'object' && value !== null && !Array.isArray(value);
const rowsOf = (document: Fields, key: string): readonly Fields[] => (document[key] as readonly Fields[] | undefined) ?? [];
const textOf = (value: unknown): string | undefined =>
  typeof value === 'string' ? value.trim() : typeof value === 'number' ? String(value) : undefined;
const folded = (text: string): string => text.toLowerCase().replace(/\s+/gu, '');

/** The mark a name stands for, by the marks of a list's rows; undefined where it stands for itself or for none. */
function aligner(rows: readonly Fields[], key: string): (name: string) => string | undefined {
  const exact = new Set<string>();
  const alike = new Map<string, Set<string>>();
  for (const row of rows) {
    const mark = textOf(row[key]);
    if (mark === undefined) continue;
    exact.add(mark);
    alike.set(folded(mark), (alike.get(folded(mark)) ?? new Set()).add(mark));
  }
  return (name) => {
    const [only, another] = alike.get(folded(name)) ?? [];
    return exact.has(name) || another !== undefined ? undefined : only;
  };
}

function align(row: Fields, key: string, meant: (name: string) => string | undefined): void {
  const name = textOf(row[key]);
  const mark = name === undefined ? undefined : meant(name);
  if (mark !== undefined) row[key] = mark;
}
