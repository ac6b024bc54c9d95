// The parser calls Object.groupBy, which Node 20 lacks. Entry points import this first.
Object.groupBy ??= function groupBy<K extends PropertyKey, T>(
  items: Iterable<T>,
  keyOf: (item: T, index: number) => K,
) {
  const groups = Object.create(null) as Record<K, T[]>;
  let index = 0;
  for (const item of items) {
    const key = keyOf(item, index++);
    groups[key] ??= [];
    groups[key].push(item);
  }
  return groups;
};
