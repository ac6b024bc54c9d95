/** What a comparison of two drawings shows of each thing: told by shapes and by stepping back, never by colour alone. */
import type { Placement, Point } from './placement.ts';
import { n } from './svg.ts';
import type { Theme } from './themes.ts';

export type Mark = 'added' | 'removed' | 'changed';

/** Marks by the id of a box or link; a part of the show has changes of its own. */
export interface SceneMarks {
  readonly always: readonly (readonly [id: string, mark: Mark])[];
  readonly bySegment: readonly { readonly segment: string | null; readonly changed: readonly string[] }[];
}

/** The id of the seat that a thing had which stands or is plugged elsewhere now. No name of a plan has a colon. */
export function seatOf(id: string): string {
  return `before:${id}`;
}

export function marksIn(
  { always, bySegment }: SceneMarks,
  segment: string | null,
): ReadonlyMap<string, Mark> {
  const here = bySegment.find((one) => one.segment === segment) ?? bySegment[0];
  return new Map([...(here?.changed ?? []).map((id): [string, Mark] => [id, 'changed']), ...always]);
}

/** How far what is as before steps back. */
const ASIDE = 0.34;

/**
 * Draws marks over drawn things: what was added has a plus in a ring, what is gone is dotted and has a minus, what is as
 * before steps back.
 *
 * @param things By kind and id, as `drawParts` gives them.
 */
export function markThings(
  things: ReadonlyMap<string, string>,
  marks: ReadonlyMap<string, Mark>,
  placement: Placement,
  theme: Theme,
): Map<string, string> {
  return new Map(
    [...things].map(([key, svg]) => {
      const space = key.indexOf(' ');
      const [kind, id] = [key.slice(0, space), key.slice(space + 1)];
      return [
        key,
        kind === 'room' || svg === '' ? svg : marked(svg, kind, id, marks.get(id), placement, theme),
      ];
    }),
  );
}

function marked(
  svg: string,
  kind: string,
  id: string,
  mark: Mark | undefined,
  placement: Placement,
  theme: Theme,
): string {
  if (mark === undefined) return `<g class="aside" opacity="${ASIDE}">${svg}</g>`;
  if (mark === 'changed') return svg;
  const at = spotOf(kind, id, placement);
  const ring = at ? ringAt(at, mark, theme) : '';
  // A stroke without dashes of its own takes these.
  const dots = mark === 'removed' ? ' stroke-dasharray="1.5 3.5"' : '';
  return `<g class="${mark}" role="group" aria-label="${mark}"${dots}>${svg}</g>${ring}`;
}

/** The corner of a box or ribbon where no number stands; before the label of a wire, or in its middle. */
function spotOf(kind: string, id: string, { boxes, ribbons, wires }: Placement): Point | undefined {
  if (kind !== 'wire') {
    const at = (kind === 'box' ? boxes : ribbons).get(id);
    return at && { x: at.x + at.width - 6, y: at.y };
  }
  const line = wires.get(id);
  if (!line) return undefined;
  const { label, points } = line;
  if (label) return { x: label.x - ringRadius - 2, y: label.y + label.height / 2 };
  return points[Math.floor(points.length / 2)];
}

const ringRadius = 8;

function ringAt({ x, y }: Point, mark: 'added' | 'removed', { ink, paper }: Theme): string {
  const arms = mark === 'added' ? `M${n(x - 4)} ${n(y)}h8M${n(x)} ${n(y - 4)}v8` : `M${n(x - 4)} ${n(y)}h8`;
  return `<g class="mark"><circle cx="${n(x)}" cy="${n(y)}" r="${ringRadius}" fill="${paper}" stroke="${ink}" stroke-width="1.6"/><path d="${arms}" fill="none" stroke="${ink}" stroke-width="2"/></g>`;
}
