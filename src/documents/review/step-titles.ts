import type { Link, LinkEnd, Owner } from '../../analysis/model.ts';
import type { Titles } from '../sheets/titles.ts';
import type { Patching } from './patching.ts';
import type { Socket } from './review.ts';

/** Titles of one plan; where another kind of box replaces one, the old and the new one are told apart. */
export class StepTitles {
  readonly #titles: Titles;
  readonly #old: ReadonlySet<Owner>;
  readonly #new: ReadonlySet<Owner>;

  constructor(titles: Titles, { replaced, replacing }: Pick<Patching, 'replaced' | 'replacing'>) {
    this.#titles = titles;
    this.#old = replaced;
    this.#new = replacing;
  }

  box(box: Owner): string {
    return `${this.#which(box)}${this.#titles.of(box)}`;
  }

  end({ port, text }: LinkEnd): string {
    return port ? `${this.#which(port.owner)}${this.#titles.port(port)}` : text;
  }

  #which(box: Owner): string {
    return this.#old.has(box) ? 'the old ' : this.#new.has(box) ? 'the new ' : '';
  }

  place({ port }: LinkEnd): string {
    return this.#titles.place(port?.owner.place);
  }

  link(link: Link): string {
    return this.#titles.link(link);
  }

  /** `T1`, or by its kind when nothing is written on it. */
  cable(link: Link): string {
    return this.#titles.ownLabel(link) ?? (link.cable ? this.#titles.cable(link.cable) : 'the cable');
  }

  kind(link: Link): string {
    return this.#titles.cable(link.cable);
  }

  /** For machines: a new box has its title, an old one that it replaces is told apart. */
  socket(end: LinkEnd): Socket {
    const { port, text } = end;
    if (!port) return { place: this.place(end), box: text, socket: undefined };
    return {
      place: this.place(end),
      box: this.#old.has(port.owner) ? this.box(port.owner) : this.#titles.of(port.owner),
      socket: port.owner.kind === 'node' ? this.#titles.socket(port) : undefined,
    };
  }
}
