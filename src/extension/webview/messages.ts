/** What the drawing's view and the extension tell each other. */
import type { Scene } from '../../documents/drawing/scene.ts';

/** From the extension to the view. */
export type ToView =
  | {
      readonly kind: 'scene';
      /** Name of the plan's file, for exports. */
      readonly name: string;
      readonly scene: Scene;
      /** The text has errors: this is the last picture that could be read whole. */
      readonly stale: boolean;
    }
  /** The thing whose statement the cursor stands in. */
  | { readonly kind: 'cursor'; readonly id: string | null }
  | { readonly kind: 'nothing'; readonly reason: string };

/** From the view to the extension. */
export type FromView =
  | { readonly kind: 'ready' }
  /** Show the text of a thing. */
  | { readonly kind: 'open'; readonly id: string; readonly what: ThingKind }
  | {
      readonly kind: 'export';
      readonly name: string;
      readonly format: 'svg' | 'png';
      readonly base64: string;
    };

export type ThingKind = 'room' | 'node' | 'source' | 'destination' | 'wire' | 'ribbon';

const thingKinds: readonly string[] = ['room', 'node', 'source', 'destination', 'wire', 'ribbon'];

export function isThingKind(value: unknown): value is ThingKind {
  return typeof value === 'string' && thingKinds.includes(value);
}

/** Whether a message that came from the view is one that it sends: a view is not trusted. */
export function isFromView(message: unknown): message is FromView {
  if (typeof message !== 'object' || message === null || !('kind' in message)) return false;
  const { kind } = message;
  if (kind === 'ready') return true;
  if (kind === 'open')
    return (
      'id' in message && typeof message.id === 'string' && 'what' in message && isThingKind(message.what)
    );
  if (kind !== 'export') return false;
  const { name, format, base64 } = message as Record<string, unknown>;
  return typeof name === 'string' && (format === 'svg' || format === 'png') && typeof base64 === 'string';
}

/** Whether a message is one that the extension sends. */
export function isToView(message: unknown): message is ToView {
  return (
    typeof message === 'object' &&
    message !== null &&
    'kind' in message &&
    ['scene', 'cursor', 'nothing'].includes(String(message.kind))
  );
}
