/** A thing of the model while it is put together: its fields can still be set. */
export type Building<T> = { -readonly [K in keyof T]: T[K] };

/** Adds to a list of the model while it is put together. */
export function append<T>(list: readonly T[], item: T): void {
  (list as T[]).push(item);
}
