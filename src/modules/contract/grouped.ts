/** Rows by key, in the order in which they came. */
export function grouped<K, R>(rows: readonly R[], key: (row: R) => K): Map<K, R[]> {
  const groups = new Map<K, R[]>();
  for (const row of rows) {
    const group = groups.get(key(row));
    if (group) group.push(row);
    else groups.set(key(row), [row]);
  }
  return groups;
}
