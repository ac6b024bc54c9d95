import type { Analysis } from './model.ts';
import type { Show } from './show.ts';

const shows = new WeakMap<Analysis, Show>();

export function keepShow(analysis: Analysis, show: Show): void {
  shows.set(analysis, show);
}

/** What an analysis was made with, for questions that come later: what goes dark, how far a picture gets. */
export function showOf(analysis: Analysis): Show {
  const show = shows.get(analysis);
  if (!show) throw new Error('Only an analysis that `analyse` made can be searched');
  return show;
}
