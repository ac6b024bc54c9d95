/** What the view of the papers and the extension tell each other. */
import type { BookParts } from '../../documents/book/book.ts';

/** From the extension to the view. */
export type ToBookView =
  | { readonly kind: 'book'; readonly name: string; readonly parts: BookParts }
  | { readonly kind: 'nothing'; readonly reason: string };

/** From the view to the extension. */
export type FromBookView =
  | { readonly kind: 'ready' }
  /** Show the text of what was clicked: its name, and as what it is drawn. */
  | { readonly kind: 'open'; readonly id: string; readonly what: string }
  /** The papers as one file, to be kept. */
  | { readonly kind: 'save'; readonly name: string; readonly html: string };

/** Whether a message that came from the view is one that it sends: a view is not trusted. */
export function isFromBookView(message: unknown): message is FromBookView {
  if (typeof message !== 'object' || message === null || !('kind' in message)) return false;
  if (message.kind === 'ready') return true;
  const { name, html, id, what } = message as Record<string, unknown>;
  if (message.kind === 'open') return typeof id === 'string' && typeof what === 'string';
  return message.kind === 'save' && typeof name === 'string' && typeof html === 'string';
}

export function isToBookView(message: unknown): message is ToBookView {
  return (
    typeof message === 'object' &&
    message !== null &&
    'kind' in message &&
    ['book', 'nothing'].includes(String(message.kind))
  );
}
