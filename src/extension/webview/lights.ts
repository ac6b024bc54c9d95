import type { Scene, SceneSituation } from '../../documents/drawing/scene.ts';
import type { ThingsAt } from '../../server/protocol.ts';

/** What the person looks at. */
export interface Looks {
  /** What the cursor's statement speaks of. */
  readonly cursor: ThingsAt | null;
  readonly selected: string | null;
  /** A feed that is followed from end to end. */
  readonly feed: string;
  readonly search: string;
}

export interface Lit {
  /** Things that were found, in order of drawing. */
  readonly found: readonly SVGGElement[];
}

/** Marks the cursor's things, what is selected and found, and steps back what a followed feed does not pass. */
export function light(
  things: readonly SVGGElement[],
  scene: Scene,
  situation: SceneSituation | undefined,
  looks: Looks,
): Lit {
  const cursor = idsOf(looks.cursor, scene, situation);
  const trace = situation?.traces.find(({ feed }) => feed === looks.feed);
  const passes = trace && new Set(trace.passes);
  const wanted = looks.search.trim().toLocaleLowerCase();
  const found: SVGGElement[] = [];
  for (const thing of things) {
    const id = thing.dataset.id ?? '';
    const isRoom = thing.dataset.kind === 'room';
    const words = thing.getAttribute('aria-label') ?? '';
    const isFound = wanted !== '' && !isRoom && words.toLocaleLowerCase().includes(wanted);
    if (isFound) found.push(thing);
    const isAside = (passes !== undefined && !passes.has(id)) || (wanted !== '' && !isFound);
    mark(thing, 'cursor', cursor.has(isRoom ? `room ${id}` : id));
    mark(thing, 'selected', !isRoom && id === looks.selected);
    mark(thing, 'found', isFound);
    mark(thing, 'onway', !isRoom && passes?.has(id) === true);
    mark(thing, 'aside', !isRoom && isAside);
    for (const strand of thing.querySelectorAll<SVGGElement>('.strand'))
      mark(strand, 'aside', trace !== undefined && strand.dataset.picture !== `${trace.picture}`);
  }
  return { found };
}

function mark(thing: Element, name: string, on: boolean): void {
  if (thing.classList.contains(name) !== on) thing.classList.toggle(name, on);
}

function idsOf(
  at: ThingsAt | null,
  scene: Scene,
  situation: SceneSituation | undefined,
): ReadonlySet<string> {
  if (!at) return new Set();
  const names = new Set(at.names);
  switch (at.kind) {
    case 'thing':
      return names;
    case 'room':
      return new Set(at.names.map((name) => `room ${name}`));
    case 'feed':
      return passed(situation, ({ feed }) => names.has(feed));
    case 'picture': {
      const numbers = new Set(
        scene.pictures.filter(({ name }) => names.has(name)).map(({ number }) => number),
      );
      return passed(situation, ({ picture }) => numbers.has(picture));
    }
  }
}

function passed(
  situation: SceneSituation | undefined,
  is: (trace: SceneSituation['traces'][number]) => boolean,
): ReadonlySet<string> {
  return new Set((situation?.traces ?? []).filter(is).flatMap(({ passes }) => passes));
}
