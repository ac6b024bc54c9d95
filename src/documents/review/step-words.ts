/** Steps on site in words, as on the papers: place, box, socket and cable by what is written on them. */
import type { Link, LinkEnd, Owner } from '../../analysis/model.ts';
import { formatLength } from '../../physics/display.ts';
import type { Titles } from '../sheets/titles.ts';
import type { Comparison } from './comparison.ts';
import { valueText } from './fact-words.ts';
import type { OutputChange } from './output-changes.ts';
import type { Box, BoxPair, EndMove } from './patching.ts';
import type { Socket, Step } from './review.ts';

/** A step before it is known what becomes dark with it. */
export type Said = Omit<Step, 'dark' | 'back' | 'ends'>;

export class StepWords {
  readonly #comparison: Comparison;
  readonly #old: Titles;
  readonly #new: Titles;

  constructor(comparison: Comparison) {
    this.#comparison = comparison;
    this.#old = comparison.titles.was;
    this.#new = comparison.titles.is;
  }

  setUp(box: Box): Said {
    const kit = box.kit ? `, ${box.kit.statement.label ?? box.kit.name}` : '';
    return this.#atBox('set up', box, `Set up ${this.#new.of(box)}${kit}${this.#power(box)}.`);
  }

  carry({ before, after }: BoxPair): Said {
    const text = `Carry ${this.#new.of(after)} here from ${this.#old.place(before.place)}${this.#power(after)}.`;
    return this.#atBox('carry', after, text);
  }

  takeOut(box: Box): Said {
    return {
      kind: 'take out',
      place: this.#old.place(box.place),
      text: `Take out ${this.#old.of(box)}: the plan has it no longer.`,
      cable: null,
      sockets: [],
    };
  }

  repower({ before, after }: BoxPair): Said {
    const circuits = (owner: Owner, titles: Titles) =>
      owner.poweredBy.map((circuit) => titles.circuit(circuit)).join(' and ');
    const [was, is] = [circuits(before, this.#old), circuits(after, this.#new)];
    const box = this.#new.of(after);
    const text = is
      ? `Power ${box} from ${is}${was ? ` instead of ${was}` : ''}.`
      : `Take ${box} off ${was}: the plan names no circuit for it.`;
    return this.#atBox('power', after, text);
  }

  /** What is set on a box that stays: another address, another format on an output. */
  settings({ before, after }: BoxPair): Said[] {
    if (before.kind !== 'node' || after.kind !== 'node') return [];
    const [was, is] = [this.#comparison.renames.fact(before.statement.fact), after.statement.fact];
    const said: Said[] = [];
    if (is.address !== undefined && was.address !== is.address)
      said.push(this.#atBox('set', after, `Set the address of ${this.#new.of(after)} to ${is.address}.`));
    const gave = new Map(was.gives.map(({ port, format }) => [port, format.text]));
    for (const { port, format } of is.gives) {
      if (gave.get(port) === format.text) continue;
      const output = after.usedPorts.find((one) => one?.name === port);
      const socket = output ? this.#new.port(output) : `${this.#new.of(after)} · ${port}`;
      said.push(this.#atBox('set', after, `Set ${socket} to give ${valueText('format', format, 'metric')}.`));
    }
    return said;
  }

  set({ setting: { node, output, shows, input }, was }: OutputChange): Said {
    const from = input ? ` (${this.#new.socket(input)})` : '';
    const instead = was && was.name !== shows.name ? `; it showed ${was.title}` : '';
    return {
      ...this.#atBox(
        'set',
        node,
        `Set ${this.#new.port(output)} to ${this.#new.of(shows)}${from}${instead}.`,
      ),
      sockets: [socketOf({ text: output.text, port: output }, this.#new)],
    };
  }

  /** Whether a cable runs through the house, not just within one place. */
  hasWay({ installed, length }: Link): boolean {
    const [from, to] = length.places;
    return !installed && (length.runs.length > 0 || from !== to);
  }

  lay(link: Link): Said {
    return this.#atCable(
      'lay',
      link,
      this.#new,
      `Lay ${this.#whole(link)} from ${this.#far(link)}; plug it later.`,
    );
  }

  laySpare(link: Link): Said {
    const main = link.standbyFor ? this.#new.link(link.standbyFor) : '';
    const text = `Lay ${this.#whole(link)} from ${this.#far(link)}; leave it unplugged: it is the spare for ${main}.`;
    return this.#atCable('lay', link, this.#new, text);
  }

  plug(link: Link, state: 'new' | 'lies'): Said {
    const isNew = state === 'new';
    const verb = isNew && this.hasWay(link) ? 'Lay and plug' : 'Plug';
    const cable = isNew ? this.#whole(link) : this.#name(link, this.#new);
    return this.#atCable('plug', link, this.#new, `${verb} ${cable}: ${this.#ends(link, this.#new)}.`);
  }

  unplug(link: Link, staysLying: boolean): Said {
    const lying = staysLying ? ' Leave it lying: it is a spare now.' : '';
    const text = `Unplug ${this.#name(link, this.#old)}: ${this.#ends(link, this.#old)}.${lying}`;
    return this.#atCable('unplug', link, this.#old, text);
  }

  takeUp(link: Link): Said {
    const text = `Take up ${this.#name(link, this.#old)}, the spare from ${this.#far(link, this.#old)}.`;
    return this.#atCable('unplug', link, this.#old, text);
  }

  move(move: EndMove): Said {
    const [leaves, goesTo] = [this.#old.end(move.leaves), this.#new.end(move.goesTo)];
    return this.#atEnd('move', move, `Move ${this.#end(move)} from ${leaves} to ${goesTo}.`);
  }

  loosen(move: EndMove): Said {
    const text = `Unplug ${this.#end(move)} from ${this.#old.end(move.leaves)} and keep it at hand.`;
    return this.#atEnd('unplug', move, text);
  }

  plugEnd(move: EndMove): Said {
    const text = `Plug that end of ${this.#name(move.after, this.#new)} into ${this.#new.end(move.goesTo)}.`;
    return this.#atEnd('plug', move, text);
  }

  /** The end of a cable, told by where its other end stays. */
  #end({ after, stays }: EndMove): string {
    const place = this.#place(stays, this.#new);
    const other = `${this.#new.end(stays)}${this.#isWithinOnePlace(after) ? '' : ` at ${place}`}`;
    return `${this.#name(after, this.#new)} (its other end stays in ${other})`;
  }

  #atEnd(kind: Said['kind'], { after, leaves, goesTo }: EndMove, text: string): Said {
    return {
      ...this.#atCable(kind, after, this.#new, text),
      place: this.#place(goesTo, this.#new),
      sockets: [socketOf(leaves, this.#old), socketOf(goesTo, this.#new)],
    };
  }

  #atBox(kind: Said['kind'], box: Owner, text: string): Said {
    return { kind, place: this.#new.place(box.place), text, cable: null, sockets: [] };
  }

  #atCable(kind: Said['kind'], link: Link, titles: Titles, text: string): Said {
    return {
      kind,
      place: this.#place(link.from, titles),
      text,
      cable: {
        title: titles.link(link),
        kind: titles.cable(link.cable),
        length_m: link.length.length_m,
      },
      sockets: [socketOf(link.from, titles), socketOf(link.to, titles)],
    };
  }

  /** `T1`, or by its kind when nothing is written on it. */
  #name(link: Link, titles: Titles): string {
    return titles.ownLabel(link) ?? (link.cable ? titles.cable(link.cable) : 'the cable');
  }

  /** With kind, length and the way that it lies. */
  #whole(link: Link): string {
    const { length_m, runs } = link.length;
    const label = this.#new.ownLabel(link);
    const words = [
      label,
      link.cable ? this.#new.cable(link.cable) : label ? undefined : 'a cable',
      length_m === undefined ? undefined : formatLength(length_m, this.#comparison.is.settings.units),
    ].filter(Boolean);
    const way = runs.map((run) => run.statement.fact.route ?? this.#new.run(run));
    const installed = link.installed
      ? ' (the house’s own)'
      : way.length > 0
        ? ` (along ${way.join(', then ')})`
        : '';
    return `${words.join(', ')}${installed}`;
  }

  /** Both ends, the first here. */
  #ends(link: Link, titles: Titles): string {
    if (this.#isWithinOnePlace(link)) return `${titles.end(link.from)} to ${titles.end(link.to)}`;
    return `${titles.end(link.from)} here, ${titles.end(link.to)} at ${this.#place(link.to, titles)}`;
  }

  #far({ from, to }: Link, titles = this.#new): string {
    return `${this.#box(from, titles)} to ${this.#box(to, titles)} at ${this.#place(to, titles)}`;
  }

  #box({ port, text }: LinkEnd, titles: Titles): string {
    return port ? titles.of(port.owner) : text;
  }

  #isWithinOnePlace({ from, to }: Link): boolean {
    return from.port?.owner.place === to.port?.owner.place;
  }

  #place({ port }: LinkEnd, titles: Titles): string {
    return titles.place(port?.owner.place);
  }

  #power({ poweredBy }: Owner): string {
    if (poweredBy.length === 0) return '';
    return `, powered from ${poweredBy.map((circuit) => this.#new.circuit(circuit)).join(' and ')}`;
  }
}

function socketOf({ port, text }: LinkEnd, titles: Titles): Socket {
  if (!port) return { place: titles.place(undefined), box: text, socket: undefined };
  return {
    place: titles.place(port.owner.place),
    box: titles.of(port.owner),
    socket: port.owner.kind === 'node' ? titles.socket(port) : undefined,
  };
}
