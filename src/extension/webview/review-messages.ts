/** What the view of a comparison and the extension tell each other. */
import type { ShownReview } from '../../server/protocol/review.ts';

/** From the extension to the view. */
export type ToReviewView =
  | { readonly kind: 'review'; readonly review: ShownReview }
  | { readonly kind: 'nothing'; readonly reason: string };

/** From the view to the extension: places by their number, so that no address comes from the view. */
export type FromReviewView =
  | { readonly kind: 'ready' }
  /** Show the text of an entry. */
  | { readonly kind: 'open'; readonly section: number; readonly entry: number };

/** Whether a message that came from the view is one that it sends: a view is not trusted. */
export function isFromReviewView(message: unknown): message is FromReviewView {
  if (typeof message !== 'object' || message === null) return false;
  const { kind, section, entry } = message as Record<string, unknown>;
  return kind === 'ready' || (kind === 'open' && isCount(section) && isCount(entry));
}

function isCount(value: unknown): boolean {
  return typeof value === 'number' && Number.isSafeInteger(value) && value >= 0;
}

/** Whether a message is one that the extension sends. */
export function isToReviewView(message: unknown): message is ToReviewView {
  if (typeof message !== 'object' || message === null) return false;
  const { kind, review, reason } = message as Record<string, unknown>;
  if (kind === 'nothing') return typeof reason === 'string';
  if (kind !== 'review' || typeof review !== 'object' || review === null) return false;
  return 'sections' in review && Array.isArray(review.sections) && 'scenes' in review;
}
