import type { Label, Source } from '../../physics/working.ts';

/** A value with the words that stand behind it. */
interface Stated {
  readonly source?: string | undefined;
  readonly fromMemory: boolean;
}

const labels: readonly Label[] = ['published', 'second-hand', 'derived', 'common practice'];

/**
 * Where a value that a cable or an interface states comes from. By habit of the library the words in quotes end with
 * their label: `"IEEE 802.3 clause 55; second-hand"`.
 */
export function sourceOf({ source, fromMemory }: Stated): Source {
  if (source === undefined)
    return { source: 'as stated in the plan', label: fromMemory ? 'from memory' : 'second-hand' };
  if (fromMemory) return { source, label: 'from memory' };
  const label = labels.find((one) => source.endsWith(`; ${one}`));
  if (label) return { source: source.slice(0, -label.length - 2), label };
  return { source, label: source.startsWith('common practice') ? 'common practice' : 'published' };
}

/** Where the losses of a cable come from: the words of the first, the weakest label of all. */
export function sourceOfAll(stated: readonly Stated[]): Source {
  const sources = stated.map(sourceOf);
  const remembered = sources.find(({ label }) => label === 'from memory');
  return remembered ?? sources[0] ?? { source: 'as stated in the plan', label: 'second-hand' };
}
