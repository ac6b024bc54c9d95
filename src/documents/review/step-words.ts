/** Steps on site in words, as on the papers: place, box, socket and cable by what is written on them. */
import { addressingOf } from '../../analysis/addresses.ts';
import type { Link, Owner } from '../../analysis/model.ts';
import { formatLength } from '../../physics/display.ts';
import type { Titles } from '../sheets/titles.ts';
import type { Comparison } from './comparison.ts';
import { valueText } from './fact-words.ts';
import type { OutputChange } from './output-changes.ts';
import type { Box, BoxPair, EndMove, Patching } from './patching.ts';
import type { Step } from './review.ts';
import { StepTitles } from './step-titles.ts';

/** A step before it is known what becomes dark with it. */
export type Said = Omit<Step, 'dark' | 'back' | 'ends'>;

export class StepWords {
  readonly #comparison: Comparison;
  readonly #old: Titles;
  readonly #new: Titles;
  readonly #patching: Patching;
  /** Of nodes; made when first asked for. */
  #addresses: ReadonlyMap<Box, string | undefined> | undefined;
  readonly #before: StepTitles;
  readonly #after: StepTitles;

  constructor(comparison: Comparison, patching: Patching) {
    this.#comparison = comparison;
    this.#old = comparison.titles.was;
    this.#new = comparison.titles.is;
    this.#patching = patching;
    this.#before = new StepTitles(this.#old, patching);
    this.#after = new StepTitles(this.#new, patching);
  }

  /** Boxes and cables that are called otherwise from now on, because every later step calls them so. */
  labels(): Said[] {
    const { staying, carried } = this.#patching;
    const boxes = [...staying, ...carried].flatMap(({ before, after }) =>
      isCalledAlike(before, after)
        ? []
        : [this.#label(this.#old.of(before), this.#new.of(after), this.#old.place(before.place))],
    );
    const cables = this.#comparison.links.flatMap(({ before, after }) => {
      const [was, is] = [before && this.#old.ownLabel(before), after && this.#new.ownLabel(after)];
      if (!before || !after || was === undefined || is === undefined || isCalledAlike(before, after))
        return [];
      return [this.#label(was, is, this.#before.place(before.from))];
    });
    return [...boxes, ...cables];
  }

  #label(was: string, is: string, place: string): Said {
    const text = `Label ${was} anew: it is called ${is} from now on.`;
    return { kind: 'label', place, text, cable: null, sockets: [] };
  }

  setUp(box: Box): Said {
    const kit = box.kit ? ` (${box.kit.statement.label ?? box.kit.name})` : '';
    return this.#atBox('set up', box, `Set up ${this.#after.box(box)}${kit}${this.#power(box)}.`);
  }

  /** What is set on a new box before anything is plugged into it; undefined: nothing. */
  prepare(box: Box, outputs: readonly OutputChange[]): Said | undefined {
    if (box.kind !== 'node') return undefined;
    this.#addresses ??= new Map(
      addressingOf(this.#comparison.is).nodes.map((one) => [one.node, one.address]),
    );
    const address = this.#addresses.get(box);
    const words = [
      address === undefined ? undefined : `address ${address}`,
      ...box.statement.fact.gives.map(({ port, format }) => {
        const output = box.usedPorts.find((one) => one?.name === port);
        return `${output ? this.#new.socket(output) : port} gives ${valueText('format', format, 'metric')}`;
      }),
      ...outputs.map(({ setting: { output, shows, input } }) => {
        const from = input ? ` (${this.#new.socket(input)})` : '';
        return `${this.#new.socket(output)} shows ${this.#new.of(shows)}${from}`;
      }),
    ].filter((one) => one !== undefined);
    if (words.length === 0) return undefined;
    const sockets = outputs.map(({ setting: { output } }) =>
      this.#after.socket({ text: output.text, port: output }),
    );
    return { ...this.#atBox('set', box, `Set ${this.#after.box(box)}: ${words.join('; ')}.`), sockets };
  }

  carry({ before, after }: BoxPair): Said {
    const text = `Carry ${this.#new.of(after)} here from ${this.#old.place(before.place)}${this.#power(after)}.`;
    return this.#atBox('carry', after, text);
  }

  takeOut(box: Box): Said {
    return {
      kind: 'take out',
      place: this.#old.place(box.place),
      text: `Take out ${this.#before.box(box)}: the plan has it no longer.`,
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
        `Set ${this.#new.port(output)} to show ${this.#new.of(shows)}${from}${instead}.`,
      ),
      sockets: [this.#after.socket({ text: output.text, port: output })],
    };
  }

  /** Whether a cable runs through the house, not just within one place. */
  hasWay({ installed, length }: Link): boolean {
    const [from, to] = length.places;
    return !installed && (length.runs.length > 0 || from !== to);
  }

  lay(link: Link): Said {
    const text = `Lay ${this.#whole(link)} from ${this.#boxes(link, this.#after)}; plug it later.`;
    return this.#atCable('lay', link, this.#after, text);
  }

  laySpare(link: Link): Said {
    const main = link.standbyFor ? this.#after.link(link.standbyFor) : '';
    const text = `Lay ${this.#whole(link)} from ${this.#boxes(link, this.#after)}; leave it unplugged: it is the spare for ${main}.`;
    return this.#atCable('lay', link, this.#after, text);
  }

  plug(link: Link, state: 'new' | 'lies'): Said {
    const isNew = state === 'new';
    const verb = isNew && this.hasWay(link) ? 'Lay and plug' : 'Plug';
    const cable = isNew ? this.#whole(link) : this.#after.cable(link);
    return this.#atCable('plug', link, this.#after, `${verb} ${cable}${this.#fromTo(link)}.`);
  }

  unplug(link: Link, staysLying: boolean): Said {
    const lying = staysLying ? ' Leave it lying: it is a spare now.' : '';
    const text = `Unplug ${this.#before.cable(link)} ${this.#fromBoth(link)}.${lying}`;
    return this.#atCable('unplug', link, this.#before, text);
  }

  takeUp(link: Link): Said {
    const text = `Take up ${this.#before.cable(link)}, the spare from ${this.#boxes(link, this.#before)}.`;
    return this.#atCable('take up', link, this.#before, text);
  }

  move(move: EndMove): Said {
    const [leaves, goesTo] = [this.#before.end(move.leaves), this.#after.end(move.goesTo)];
    return this.#atEnd('move', move, `Move ${this.#end(move)} from ${leaves} to ${goesTo}.`);
  }

  /** The end of a cable comes out and waits for its new socket. */
  loosen(move: EndMove): Said {
    const text = `Unplug ${this.#end(move)} from ${this.#before.end(move.leaves)} and keep it at hand.`;
    return { ...this.#atEnd('unplug', move, text), sockets: [this.#before.socket(move.leaves)] };
  }

  plugEnd(move: EndMove): Said {
    const text = `Plug the end of ${this.#end(move).replace(/^one end of /, '')} that you kept at hand into ${this.#after.end(move.goesTo)}.`;
    return { ...this.#atEnd('plug', move, text), sockets: [this.#after.socket(move.goesTo)] };
  }

  /** The end of a cable, told by where its other end is. */
  #end({ after, stays, goesTo }: EndMove): string {
    if (!stays) {
      const other = goesTo === after.from ? after.to : after.from;
      const away = this.#isWithinOnePlace(after) ? '' : ` at ${this.#after.place(other)}`;
      return `one end of ${this.#after.cable(after)} (its other end${away} moves too)`;
    }
    const away = this.#isWithinOnePlace(after) ? '' : ` at ${this.#after.place(stays)}`;
    return `${this.#after.cable(after)} (its other end stays in ${this.#after.end(stays)}${away})`;
  }

  #atEnd(kind: Said['kind'], { after, leaves, goesTo }: EndMove, text: string): Said {
    return {
      ...this.#atCable(kind, after, this.#after, text),
      place: this.#after.place(goesTo),
      sockets: [this.#before.socket(leaves), this.#after.socket(goesTo)],
    };
  }

  #atBox(kind: Said['kind'], box: Owner, text: string): Said {
    return { kind, place: this.#new.place(box.place), text, cable: null, sockets: [] };
  }

  #atCable(kind: Said['kind'], link: Link, titles: StepTitles, text: string): Said {
    return {
      kind,
      place: titles.place(link.from),
      text,
      cable: { title: titles.link(link), kind: titles.kind(link), length_m: link.length.length_m },
      sockets: [titles.socket(link.from), titles.socket(link.to)],
    };
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
    const along = way.length > 0 ? ` (along ${way.join(', then ')})` : '';
    return `${words.join(', ')}${link.installed ? ' (the house’s own)' : along}`;
  }

  /** Into which sockets, the first of them here. */
  #fromTo(link: Link): string {
    const [from, to] = [this.#after.end(link.from), this.#after.end(link.to)];
    if (this.#isWithinOnePlace(link)) return `, from ${from} to ${to}`;
    return `, from ${from} here to ${to} at ${this.#after.place(link.to)}`;
  }

  /** Out of which sockets, the first of them here. */
  #fromBoth(link: Link): string {
    const [from, to] = [this.#before.end(link.from), this.#before.end(link.to)];
    if (this.#isWithinOnePlace(link)) return `from ${from} and from ${to}`;
    return `from ${from} here and from ${to} at ${this.#before.place(link.to)}`;
  }

  #boxes({ from, to }: Link, titles: StepTitles): string {
    const [near, far] = [from, to].map(({ port, text }) => (port ? titles.box(port.owner) : text));
    return `${near} to ${far} at ${titles.place(to)}`;
  }

  #isWithinOnePlace({ from, to }: Link): boolean {
    return from.port?.owner.place === to.port?.owner.place;
  }

  #power({ poweredBy }: Owner): string {
    if (poweredBy.length === 0) return '';
    return `; power it from ${poweredBy.map((circuit) => this.#new.circuit(circuit)).join(' and ')}`;
  }
}

/** The same is written on both, or nothing on either and both have the same name. */
function isCalledAlike(before: Called, after: Called): boolean {
  const [was, is] = [before, after].map(({ statement: { label }, name }) => label ?? name);
  return was === is;
}

type Called = Pick<Owner | Link, 'name'> & { readonly statement: { readonly label: string | undefined } };
