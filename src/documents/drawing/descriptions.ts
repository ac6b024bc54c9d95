/** Everything that the drawing shows of a thing, in words: for who listens to it, searches it or points at it. */
import type { Box, Lane, PictureKey, Ribbon, RibbonLoad, Scene, Trace, Watched, Wire } from './scene.ts';

export interface Naming {
  readonly pictures: ReadonlyMap<number, PictureKey>;
  /** Titles of boxes by their ids. */
  readonly boxes: ReadonlyMap<string, string>;
  /** Titles of rooms by their ids. */
  readonly rooms: ReadonlyMap<string, string>;
}

export function describeNode(
  node: Box,
  lost: boolean,
  arrivals: ReadonlyMap<string, Watched>,
  naming: Naming,
): string {
  const free = node.ports.filter((port) => port.free).length + node.moreFree;
  return sentences([
    listed([node.title, node.subtitle, roomOf(node, naming)]),
    lost && 'Out of service',
    ...node.ports.map(
      ({ title, begins }) => begins !== undefined && `At ${title} begins ${picture(begins, naming)}`,
    ),
    ...node.ports.map(({ id, title }) => {
      const arrival = arrivals.get(id);
      return arrival && `${title} ${watchedWords(arrival, naming)}`;
    }),
    free > 0 && `Free ports: ${free}`,
  ]);
}

export function describeChip(chip: Box, watched: Watched | undefined, naming: Naming): string {
  const kind = chip.kind === 'source' ? 'source' : 'destination';
  const shows =
    chip.picture === undefined
      ? watched && watchedWords(watched, naming)
      : `makes ${picture(chip.picture, naming)}`;
  return sentences([listed([chip.title, kind, roomOf(chip, naming)]), shows && capital(shows)]);
}

export function describeWire(wire: Wire, pictures: readonly number[], lost: boolean, naming: Naming): string {
  const carried = pictures.map((number) => picture(number, naming)).join(' and ');
  return sentences([
    listed(['Cable', wire.text]),
    ends(wire, naming),
    lost ? 'Out of service' : carried ? `Carries ${carried}` : 'Carries no picture',
    wire.standbyFor && `Stands by for ${wire.standbyFor}`,
    wire.trouble?.text,
  ]);
}

export function describeRibbon(
  ribbon: Ribbon,
  load: RibbonLoad | undefined,
  lost: boolean,
  naming: Naming,
): string {
  const lane = (one: Lane | undefined) =>
    listed([
      one?.strands.map((strand) => picture(strand.picture, naming)).join(', ') || 'nothing',
      one?.text,
    ]);
  return sentences([
    listed(['Network link', ribbon.title, ribbon.detail]),
    ends(ribbon, naming),
    ribbon.standbyFor && `Stands by for ${ribbon.standbyFor}`,
    lost ? 'Out of service' : `There: ${lane(load?.forward)}`,
    !lost && ribbon.bothWays && `Back: ${lane(load?.backward)}`,
    ribbon.trouble?.text,
  ]);
}

/** What the things on a way are called; cables without a name of their own are not named. */
export function namesOnWays({ boxes, wires, ribbons }: Scene): ReadonlyMap<string, string> {
  return new Map([
    ...boxes.map(({ id, title }): [string, string] => [id, title]),
    ...[...wires, ...ribbons].map(({ id, name }): [string, string] => [id, name]),
  ]);
}

/** The delay of a feed and the way that it goes, as far as it is drawn. */
export function describeTrace({ text, passes }: Trace, names: ReadonlyMap<string, string>): string {
  const way = passes.flatMap((id) => names.get(id) || []);
  return [text, way.join(' → ')].filter(Boolean).join(' · ');
}

function watchedWords({ picture: number, text }: Watched, naming: Naming): string {
  return number === undefined ? text : listed([`shows ${picture(number, naming)}`, text]);
}

function picture(number: number, { pictures }: Naming): string {
  const title = pictures.get(number)?.title;
  return title === undefined ? `picture ${number}` : `picture ${number}, ${title}`;
}

function roomOf({ room }: Box, { rooms }: Naming): string | undefined {
  return room === undefined ? undefined : rooms.get(room);
}

function ends({ from, to, bothWays }: Wire | Ribbon, { boxes }: Naming): string {
  const end = ({ box, port }: Wire['from']) => {
    const title = boxes.get(box) ?? box;
    return port === box ? title : `${title} ${port.slice(box.length + 1)}`;
  };
  return `${bothWays ? 'Between' : 'From'} ${end(from)} ${bothWays ? 'and' : 'to'} ${end(to)}`;
}

function listed(parts: readonly (string | undefined)[]): string {
  return parts.filter(Boolean).join(', ');
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

function sentences(parts: readonly (string | false | undefined)[]): string {
  return parts.filter(Boolean).join('. ');
}
