/**
 * The word of a list that is nearest in spelling, if one is near enough to be meant: at most a third of the letters
 * differ (Damerau–Levenshtein distance, adjacent swaps count once).
 */
export function nearest(word: string, among: Iterable<string>): string | undefined {
  if (word.length > 60) return undefined;
  let best: string | undefined;
  let bestDistance = Math.floor(Math.max(word.length, 3) / 3) + 1;
  for (const candidate of among) {
    if (Math.abs(candidate.length - word.length) >= bestDistance) continue;
    const distance = distanceBelow(word, candidate, bestDistance);
    if (distance < bestDistance) {
      best = candidate;
      bestDistance = distance;
    }
  }
  return best;
}

/** The edit distance of two words, or `limit` where it is not below. */
function distanceBelow(a: string, b: string, limit: number): number {
  let beforeLast: number[] = [];
  let last = Array.from({ length: b.length + 1 }, (_, j) => j);
  for (let i = 1; i <= a.length; i++) {
    const row = [i];
    let least = i;
    for (let j = 1; j <= b.length; j++) {
      const same = a[i - 1] === b[j - 1];
      let value = Math.min(last[j]! + 1, row[j - 1]! + 1, last[j - 1]! + (same ? 0 : 1));
      const swapped = i > 1 && j > 1 && a[i - 1] === b[j - 2] && a[i - 2] === b[j - 1];
      if (swapped) value = Math.min(value, beforeLast[j - 2]! + 1);
      row.push(value);
      least = Math.min(least, value);
    }
    if (least >= limit) return limit;
    beforeLast = last;
    last = row;
  }
  return last[b.length]!;
}
