import type { Text } from './text.ts';

/** The smallest stretch that makes one text of another: what is the same at both ends is left out. */
export function narrowed(before: Text, now: string): { start: number; end: number; by: string } {
  const old = before.toString();
  const most = Math.min(old.length, now.length);
  let start = 0;
  while (start < most && old.charCodeAt(start) === now.charCodeAt(start)) start++;
  let behind = 0;
  while (
    behind < most - start &&
    old.charCodeAt(old.length - 1 - behind) === now.charCodeAt(now.length - 1 - behind)
  )
    behind++;
  return { start, end: old.length - behind, by: now.slice(start, now.length - behind) };
}
