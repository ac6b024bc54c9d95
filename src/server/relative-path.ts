/**
 * The way from one file to another as an import writes it.
 *
 * @returns undefined for files of different places, such as two disks.
 */
export function relativePath(from: string, to: string): string | undefined {
  const start = from.split('/').slice(0, -1);
  const end = to.split('/');
  let common = 0;
  while (common < start.length && start[common] === end[common]) common++;
  // The scheme and the authority.
  if (common < 3) return undefined;
  const up = start.slice(common).map(() => '..');
  return [...up, ...end.slice(common).map(decodeURIComponent)].join('/');
}
