import type { Piece } from './piece.ts';

/** Which pieces of a file are not those that were there before. */
export interface ChangedPieces {
  readonly first: number;
  readonly removed: readonly Piece[];
  readonly added: readonly Piece[];
}

/** Compares what a file was made of with what it is made of; a piece that was read anew is another piece. */
export function changedPieces(before: readonly Piece[], now: readonly Piece[]): ChangedPieces {
  const most = Math.min(before.length, now.length);
  let first = 0;
  while (first < most && before[first] === now[first]) first++;
  let behind = 0;
  while (behind < most - first && before[before.length - 1 - behind] === now[now.length - 1 - behind])
    behind++;
  return {
    first,
    removed: before.slice(first, before.length - behind),
    added: now.slice(first, now.length - behind),
  };
}
