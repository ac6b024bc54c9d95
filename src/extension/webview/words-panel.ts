/** All that the drawing shows, as lists to read, to listen to and to go through. */
import { describeTrace, namesOnWays } from '../../documents/drawing/descriptions.ts';
import type { Scene, SceneSituation } from '../../documents/drawing/scene.ts';

export interface WordsListener {
  /** A person wants to see this thing. */
  chosen(thing: SVGGElement): void;
}

export function fillWords(
  panel: HTMLElement,
  things: readonly SVGGElement[],
  scene: Scene,
  situation: SceneSituation | undefined,
  listener: WordsListener,
): void {
  const names = namesOnWays(scene);
  const roomOf = new Map(scene.boxes.map(({ id, room }) => [id, room]));
  const inRoom = (room: string | undefined) =>
    things.filter(({ dataset }) => isBox(dataset.kind) && roomOf.get(dataset.id ?? '') === room);
  const ofKind = (kind: string) => things.filter(({ dataset }) => dataset.kind === kind);
  const section = (title: string, list: readonly SVGGElement[]) =>
    sectionOf(
      title,
      list.map((thing) => buttonOf(thing, listener)),
    );
  panel.replaceChildren(
    ...scene.rooms.map(({ id, title }) => section(title, inRoom(id))),
    section('Nowhere yet', inRoom(undefined)),
    section('Network links', ofKind('ribbon')),
    section('Cables', ofKind('wire')),
    sectionOf(
      'Feeds',
      (situation?.traces ?? []).map((trace) => plain(`${trace.feed}: ${describeTrace(trace, names)}`)),
    ),
  );
}

function isBox(kind: string | undefined): boolean {
  return kind === 'node' || kind === 'source' || kind === 'destination';
}

function sectionOf(title: string, items: readonly HTMLElement[]): DocumentFragment {
  const fragment = new DocumentFragment();
  if (items.length === 0) return fragment;
  const heading = document.createElement('h2');
  heading.textContent = title;
  const list = document.createElement('ul');
  list.append(
    ...items.map((item) => {
      const entry = document.createElement('li');
      entry.append(item);
      return entry;
    }),
  );
  fragment.append(heading, list);
  return fragment;
}

function buttonOf(thing: SVGGElement, listener: WordsListener): HTMLElement {
  const button = document.createElement('button');
  button.type = 'button';
  button.textContent = thing.getAttribute('aria-label');
  button.addEventListener('click', () => listener.chosen(thing));
  return button;
}

function plain(words: string): HTMLElement {
  const span = document.createElement('span');
  span.textContent = words;
  return span;
}
