/** Adds to the list that a map keeps for a key. */
export function add<K, V>(map: Map<K, V[]>, key: K, value: V): void {
  const list = map.get(key);
  if (list === undefined) map.set(key, [value]);
  else list.push(value);
}

/** Items of a list that are not in another one; quick where the two differ in one stretch only. */
export function goneFrom<T>(before: readonly T[], now: readonly T[]): readonly T[] {
  const most = Math.min(before.length, now.length);
  let ahead = 0;
  while (ahead < most && before[ahead] === now[ahead]) ahead++;
  let behind = 0;
  while (behind < most - ahead && before.at(-1 - behind) === now.at(-1 - behind)) behind++;
  const left = new Set(now.slice(ahead, now.length - behind));
  return before.slice(ahead, before.length - behind).filter((one) => !left.has(one));
}

export function swap<T>(list: T[], before: T, now: T): void {
  const at = list.indexOf(before);
  if (at >= 0) list[at] = now;
}

/** The number of the first item from which on all are so, by halving. */
export function firstFrom<T>(items: readonly T[], isSo: (item: T) => boolean): number {
  let [low, high] = [0, items.length];
  while (low < high) {
    const middle = (low + high) >> 1;
    if (isSo(items[middle]!)) high = middle;
    else low = middle + 1;
  }
  return low;
}
