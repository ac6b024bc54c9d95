import { add } from '../../analysis/lists.ts';
import type { Analysis } from '../../analysis/model.ts';
import { Titles } from '../sheets/titles.ts';
import { chooseThings, drawableLinks, type SceneChoice } from './choose-things.ts';
import { BoxMaker } from './make-box.ts';
import { LinkMaker } from './make-link.ts';
import { SituationMaker } from './make-situation.ts';
import { noteLines } from './measures.ts';
import { Positions } from './positions.ts';
import type { Box, PictureKey, Scene, SceneSituation, Watched } from './scene.ts';
import { apart, joined, nameText } from './words.ts';

export type { SceneChoice } from './choose-things.ts';

/** Everything that a drawing of a plan shows, figures in words included. */
export function makeScene(analysis: Analysis, choice: SceneChoice = {}): Scene {
  const steps = makingScene(analysis, choice);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same in short steps, for an editor that has other things to do between them. */
export function* makingScene(analysis: Analysis, choice: SceneChoice = {}): Generator<undefined, Scene> {
  const titles = new Titles(analysis);
  const drawable = drawableLinks(analysis);
  yield;
  const chosen = chooseThings(analysis, drawable, choice);
  yield;
  const positions = new Positions(analysis, drawable);
  yield;
  const situations: SceneSituation[] = [];
  for (const situation of analysis.situations)
    situations.push(yield* new SituationMaker(analysis, titles, chosen, situation).making());
  const boxMaker = new BoxMaker(analysis, titles, positions);
  const notes = notesOf(situations);
  yield;
  const boxes = yield* inSteps([...chosen.owners], (owner) => withNotes(boxMaker.box(owner), notes));
  const linkMaker = new LinkMaker(analysis, titles, positions);
  const most = mostPictures(situations);
  const [networks, cables] = parted(chosen.links, ({ link }) => link.network);
  const wires = yield* inSteps(cables, (drawn) => linkMaker.wire(drawn, most.get(drawn.link.name) ?? 0));
  const ribbons = yield* inSteps(networks, (drawn) => linkMaker.ribbon(drawn));
  const used = new Set(boxes.map(({ room }) => room));
  const isPart = Object.values(choice).some((one) => one !== undefined);
  return {
    title: nameText(analysis.settings.title),
    edition: editionOf(analysis, titles, choice),
    pictures: pictureKeys(analysis, titles, isPart ? numbersIn(boxes, situations) : undefined),
    rooms: [...analysis.places.values()]
      .filter(({ name }) => used.has(name))
      .map((place) => ({ id: place.name, title: nameText(titles.of(place)) })),
    boxes,
    wires,
    ribbons,
    situations,
  };
}

/** So many things are made at a step. */
const AT_A_STEP = 100;

function* inSteps<T, U>(things: readonly T[], make: (thing: T) => U): Generator<undefined, U[]> {
  const made: U[] = [];
  for (const [i, thing] of things.entries()) {
    if (i % AT_A_STEP === AT_A_STEP - 1) yield;
    made.push(make(thing));
  }
  return made;
}

function parted<T>(things: readonly T[], is: (thing: T) => boolean): [T[], T[]] {
  return [things.filter(is), things.filter((thing) => !is(thing))];
}

/** The plan's revision and date, and what of it is drawn when that is not all. */
function editionOf(analysis: Analysis, titles: Titles, { place, source, feed }: SceneChoice): string {
  const { revision, date } = analysis.settings.statement?.fact ?? {};
  const room = place === undefined ? undefined : analysis.places.get(place);
  const picture = source === undefined ? undefined : analysis.sources.get(source);
  return joined([
    revision && `revision ${apart(revision)}`,
    date,
    room && apart(titles.of(room)),
    picture && `only ${apart(titles.of(picture))}`,
    feed && `only ${apart(feed)}`,
  ]);
}

/** @param seen the numbers that are to be seen; undefined: all pictures of the plan are listed. */
function pictureKeys(
  { sources }: Analysis,
  titles: Titles,
  seen: ReadonlySet<number> | undefined,
): PictureKey[] {
  return [...sources.values()].flatMap((source) => {
    const number = titles.numberOf(source);
    if (number === undefined || (seen && !seen.has(number))) return [];
    return [{ number, name: source.name, title: nameText(titles.of(source)) }];
  });
}

/** The pictures that are to be seen anywhere. */
function numbersIn(boxes: readonly Box[], situations: readonly SceneSituation[]): ReadonlySet<number> {
  const ofBoxes = boxes.flatMap(({ picture, ports }) => [picture, ...ports.map(({ begins }) => begins)]);
  const ofSituations = situations.flatMap(({ wires, ribbons, watched }) => [
    ...wires.flatMap(({ pictures }) => pictures),
    ...ribbons
      .flatMap(({ forward, backward }) => [...forward.strands, ...backward.strands])
      .map(({ picture }) => picture),
    ...watched.map(({ picture }) => picture),
  ]);
  return new Set([...ofBoxes, ...ofSituations].filter((number) => number !== undefined));
}

/** What each destination shows in all parts of the show. */
function notesOf(situations: readonly SceneSituation[]): ReadonlyMap<string, readonly Watched[]> {
  const notes = new Map<string, Watched[]>();
  for (const { watched } of situations) for (const one of watched) add(notes, one.box, one);
  return notes;
}

function withNotes(box: Box, notes: ReadonlyMap<string, readonly Watched[]>): Box {
  const lines = (notes.get(box.id) ?? []).map((watched) => noteLines(box, watched).length);
  return lines.length === 0 ? box : { ...box, noteLines: Math.max(...lines) };
}

/** More numbers than these on one wire are told in words alone. */
const MOST_NUMBERS = 4;

/** For each wire as many pictures as ride on it at once in any part of the show. */
function mostPictures(situations: readonly SceneSituation[]): ReadonlyMap<string, number> {
  const most = new Map<string, number>();
  for (const { wires } of situations) {
    for (const { wire, pictures } of wires)
      most.set(wire, Math.max(most.get(wire) ?? 0, Math.min(pictures.length, MOST_NUMBERS)));
  }
  return most;
}
