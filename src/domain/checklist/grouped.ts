/** What has one key together, keys and what they hold in the order in which they come. */
export function grouped<T, K>(all: readonly T[], keyOf: (each: T) => K): ReadonlyMap<K, readonly T[]> {
  const groups = new Map<K, T[]>();
  for (const each of all) {
    const group = groups.get(keyOf(each));
    if (group) group.push(each);
    else groups.set(keyOf(each), [each]);
  }
  return groups;
}
