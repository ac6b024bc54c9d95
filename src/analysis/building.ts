/** A thing of the model while it is put together: its fields can still be set. */
export type Building<T> = { -readonly [K in keyof T]: T[K] };

/** Adds to a list of the model while it is put together. */
export function append<T>(list: readonly T[], item: T): void {
  (list as T[]).push(item);
}

/** The one empty list: there are thousands of lists with nothing in them. */
export const nothing: readonly never[] = [];

/** The list with one more item, the same list once it is not the empty one; the first item costs the least room. */
export function grown<T>(list: readonly T[], item: T): readonly T[] {
  if (list.length === 0) return [item];
  append(list, item);
  return list;
}
