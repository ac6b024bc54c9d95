import type {
  Analysis,
  Cable,
  Circuit,
  Link,
  LinkEnd,
  Place,
  Port,
  Run,
  Segment,
  Source,
  Target,
} from '../../analysis/model.ts';

/** Anything that has a name and may have words for people. */
interface Named {
  readonly name: string;
  readonly statement: { readonly label: string | undefined };
}

/** How people call things, the same on every paper: by their label, and by their name where two have the same label. */
export class Titles {
  readonly #numbers = new Map<Source, number>();
  readonly #ambiguous: ReadonlySet<string>;

  constructor(analysis: Analysis) {
    for (const source of analysis.sources.values()) this.#numbers.set(source, this.#numbers.size + 1);
    this.#ambiguous = repeatedLabels([
      ...[...analysis.things.values()].filter((thing) => thing.kind !== 'link' || thing.named),
      ...analysis.places.values(),
      ...analysis.segments.values(),
      ...analysis.cases.values(),
    ]);
  }

  /** The picture's number, the same in the drawing and on its test picture. */
  numberOf(source: Source | undefined): number | undefined {
    return source && this.#numbers.get(source);
  }

  of({ name, statement: { label } }: Named): string {
    if (label === undefined || label === '') return name;
    return this.#ambiguous.has(label) ? `${label} (${name})` : label;
  }

  place(place: Place | undefined): string {
    return place ? this.of(place) : 'no place';
  }

  segment(segment: Segment | undefined): string {
    return segment ? this.of(segment) : 'Always on';
  }

  /** A box and its socket, with what is written at the socket; the name of a source or destination alone. */
  port(port: Port): string {
    const owner = this.of(port.owner);
    if (port.owner.kind !== 'node') return owner;
    return `${owner} · ${this.socket(port)}`;
  }

  socket({ name, label }: { readonly name: string; readonly label: string | undefined }): string {
    return label === undefined ? name : `${name} “${label}”`;
  }

  end({ port, text }: LinkEnd): string {
    return port ? this.port(port) : text;
  }

  target(target: Target): string {
    return 'kind' in target ? this.of(target) : this.port(target);
  }

  /** What stands on a cable: its own label or name; nothing when it is told by its ends alone. */
  ownLabel(link: Link): string | undefined {
    return link.named && link.statement.fact.kind === 'link' ? this.of(link) : undefined;
  }

  link(link: Link): string {
    return this.ownLabel(link) ?? `${this.end(link.from)} ${link.bothWays ? '↔' : '→'} ${this.end(link.to)}`;
  }

  cable(cable: Cable | undefined): string {
    return cable ? (cable.statement.label ?? cable.name) : 'no cable stated';
  }

  circuit(circuit: Circuit): string {
    return this.of(circuit);
  }

  run({ from, to, name }: Run): string {
    return from && to ? `${this.of(from)} ↔ ${this.of(to)}` : name;
  }
}

function repeatedLabels(named: readonly Named[]): Set<string> {
  const [seen, repeated] = [new Set<string>(), new Set<string>()];
  for (const { statement } of named) {
    const { label } = statement;
    if (label === undefined) continue;
    if (seen.has(label)) repeated.add(label);
    seen.add(label);
  }
  return repeated;
}
