/** What the drawing's view and the extension tell each other. Neither takes anything that does not look as it should. */
import type { Scene } from '../../documents/drawing/scene.ts';
import type { DrawnPlace, ThingsAt } from '../../server/protocol.ts';

/** From the extension to the view. */
export type ToView =
  | {
      readonly kind: 'scene';
      /** Address of the plan: another plan is another picture. */
      readonly plan: string;
      /** Null: as the one that is shown. */
      readonly scene: Scene | null;
      /** The text has errors: this is the last picture that could be read whole. */
      readonly stale: boolean;
      readonly place: string | null;
      readonly places: readonly DrawnPlace[];
      readonly onlyPlaces: boolean;
    }
  /** What the cursor's statement speaks of. */
  | { readonly kind: 'cursor'; readonly at: ThingsAt | null }
  /** There is no plan to draw; or no server to ask, and then the last picture stays. */
  | { readonly kind: 'nothing'; readonly reason: string; readonly keep: boolean };

/** From the view to the extension. */
export type FromView =
  | { readonly kind: 'ready' }
  /** Draw this place, or all of the plan. */
  | { readonly kind: 'place'; readonly place: string | null }
  /** Show the text of a thing. */
  | { readonly kind: 'open'; readonly id: string; readonly what: ThingKind }
  | { readonly kind: 'export'; readonly format: 'svg' | 'png'; readonly base64: string };

export type ThingKind = 'room' | 'node' | 'source' | 'destination' | 'wire' | 'ribbon';

const thingKinds: readonly string[] = ['room', 'node', 'source', 'destination', 'wire', 'ribbon'];

export function isThingKind(value: unknown): value is ThingKind {
  return typeof value === 'string' && thingKinds.includes(value);
}

/** Longer than any name or any two ends of a cable. */
const LONGEST_ID = 10_000;

/** Whether a message that came from the view is one that it sends: a view is not trusted. */
export function isFromView(message: unknown): message is FromView {
  if (!isRecord(message)) return false;
  const { kind, id, what, place, format, base64 } = message;
  switch (kind) {
    case 'ready':
      return true;
    case 'place':
      return place === null || isId(place);
    case 'open':
      return isId(id) && isThingKind(what);
    case 'export':
      return (
        (format === 'svg' || format === 'png') &&
        typeof base64 === 'string' &&
        /^[A-Za-z0-9+/]*={0,2}$/.test(base64)
      );
    default:
      return false;
  }
}

/** Whether a message is one that the extension sends. */
export function isToView(message: unknown): message is ToView {
  if (!isRecord(message)) return false;
  const { kind, plan, scene, stale, place, places, at, reason } = message;
  switch (kind) {
    case 'scene':
      return (
        typeof plan === 'string' &&
        (scene === null || isScene(scene)) &&
        typeof stale === 'boolean' &&
        (place === null || typeof place === 'string') &&
        Array.isArray(places)
      );
    case 'cursor':
      return at === null || (isRecord(at) && typeof at.kind === 'string' && Array.isArray(at.names));
    case 'nothing':
      return typeof reason === 'string';
    default:
      return false;
  }
}

function isScene(value: unknown): boolean {
  const lists = ['pictures', 'rooms', 'boxes', 'wires', 'ribbons', 'situations'];
  return (
    isRecord(value) && typeof value.title === 'string' && lists.every((list) => Array.isArray(value[list]))
  );
}

function isRecord(value: unknown): value is Record<string, unknown> {
  return typeof value === 'object' && value !== null;
}

function isId(value: unknown): value is string {
  return typeof value === 'string' && value.length <= LONGEST_ID;
}
