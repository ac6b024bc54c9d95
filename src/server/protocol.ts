/**
 * What our extension and our server say to each other beyond the language server protocol. Every message is optional
 * for another editor: the server does without.
 */

import type { BookParts } from '../documents/book/book.ts';
import type { Scene } from '../documents/drawing/scene.ts';

/** What the extension tells when it starts the server. */
export interface StartOptions {
  /** URI of the folder with the shipped library; the command line knows it by itself. */
  readonly library?: string;
  /** The editor asks for a reason by itself when a finding is accepted, with the command of that name. */
  readonly asksForReason?: boolean;
  /** The editor can show places in the text, with the command of that name. */
  readonly showsPlaces?: boolean;
  /** The editor opens the address of an explanation, as `explanationAddress` makes it. */
  readonly showsExplanations?: boolean;
}

/** Texts that the editor gets from the server, to read only. */
export const EXPLANATION_SCHEME = 'feedplot-explanation';

/** Where the editor shows what a check means: `feedplot-explanation:/link-overload.md`. */
export function explanationAddress(check: string): string {
  return `${EXPLANATION_SCHEME}:/${check}.md`;
}

/** Commands that the server puts behind a lens or an action, and that the editor carries out. */
export const clientCommands = {
  /** Arguments: `ReasonWanted`. */
  accept: 'feedplot.acceptFinding',
  /** Arguments: `PlacesShown`. */
  showPlaces: 'feedplot.showPlaces',
} as const;

/** A line to be written once a person has said why. */
export interface ReasonWanted {
  readonly uri: string;
  readonly position: TextPosition;
  /** The line, before and behind the reason. */
  readonly before: string;
  readonly after: string;
  /** What is accepted, for the question. */
  readonly message: string;
}

/** Places that belong together, and the one that they are asked from. */
export interface PlacesShown {
  readonly uri: string;
  readonly position: TextPosition;
  readonly places: readonly { readonly uri: string; readonly range: TextSpan }[];
}

export interface TextPosition {
  readonly line: number;
  readonly character: number;
}

export interface TextSpan {
  readonly start: TextPosition;
  readonly end: TextPosition;
}

/** Requests of the extension: the method, and what is asked and answered. */
export const serverRequests = {
  /** `HealthQuestion` -> `Health | null`: how the plan stands that a file belongs to. */
  health: 'feedplot/health',
  /** `DrawingQuestion` -> `Drawing | null`: what the drawing of a plan shows. */
  drawing: 'feedplot/drawing',
  /** `ThingQuestion` -> `PlaceInText | null`: where a thing of the drawing or a row of the papers is written. */
  thingPlace: 'feedplot/thingPlace',
  /** `ThingAtQuestion` -> `ThingsAt | null`: the things of the drawing that a position in the text speaks of. */
  thingAt: 'feedplot/thingAt',
  /** `BookQuestion` -> `Book | null`: the papers of a plan. */
  book: 'feedplot/book',
  /** `ExplanationQuestion` -> `string | null`: what a check means, as Markdown. */
  explanation: 'feedplot/explanation',
} as const;

export interface HealthQuestion {
  readonly uri: string;
}

/** How a plan stands, for a line at the edge of the window. */
export interface Health {
  /** URI of the plan's own file. */
  readonly plan: string;
  readonly title: string;
  readonly errors: number;
  readonly warnings: number;
  /** The network link with the most on it; null when nothing rides on any. */
  readonly worst: WorstLink | null;
}

export interface WorstLink {
  readonly name: string;
  /** As shown everywhere: `80.5 %`. */
  readonly share: string;
  readonly segment: string | null;
  readonly place: { readonly uri: string; readonly range: TextSpan };
}

/** Requests of the server for files that it cannot read by itself: in a browser, or on a remote file system. */
export const fileRequests = {
  /** `FileQuestion` -> `FileKind | null` */
  kind: 'feedplot/file/kind',
  /** `FileQuestion` -> `string`, the text */
  read: 'feedplot/file/read',
  /** `FileQuestion` -> `FolderEntry[]` */
  list: 'feedplot/file/list',
} as const;

export interface FileQuestion {
  readonly uri: string;
}

export type FileKind = 'file' | 'folder';

export interface FolderEntry {
  readonly uri: string;
  readonly kind: FileKind;
}

export interface DrawingQuestion {
  readonly uri: string;
  /** Only what stands in this place or is plugged into it; null: all of the plan. */
  readonly place: string | null;
  /** The drawing that is shown already: it is not sent again while nothing of it has changed. */
  readonly have: number | null;
}

/** What a plan's drawing shows. */
export interface Drawing {
  /** URI of the plan's own file. */
  readonly plan: string;
  /** The same as long as the drawing is. */
  readonly version: number;
  /** Null: as the one that is shown already. */
  readonly scene: Scene | null;
  /** The text has errors: this is the last drawing of it that was whole. */
  readonly stale: boolean;
  /** What is drawn: a place that there is, or null for all of the plan. */
  readonly place: string | null;
  /** Places that can be drawn alone. */
  readonly places: readonly DrawnPlace[];
  /** The plan is too large to be drawn as a whole. */
  readonly onlyPlaces: boolean;
}

export interface DrawnPlace {
  readonly name: string;
  readonly title: string;
}

/** A thing of a drawing, by its id and what it is drawn as. */
export interface ThingQuestion {
  readonly plan: string;
  readonly id: string;
  readonly what: string;
}

export interface PlaceInText {
  readonly uri: string;
  readonly range: TextSpan;
}

export interface ThingAtQuestion {
  readonly uri: string;
  readonly position: TextPosition;
}

/** What a position in the text speaks of, as it is drawn. */
export interface ThingsAt {
  /** A feed is drawn as its way, a picture as all that carries it. */
  readonly kind: 'thing' | 'room' | 'feed' | 'picture';
  readonly names: readonly string[];
}

export interface BookQuestion {
  readonly uri: string;
}

/** The papers of a plan; the view lays its drawings out. */
export interface Book {
  /** URI of the plan's own file. */
  readonly plan: string;
  readonly parts: BookParts;
}

export interface ExplanationQuestion {
  /** The name of a check. */
  readonly check: string;
}
