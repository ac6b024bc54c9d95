import type { EndFact, SubjectFact, TargetFact } from '../plan/facts.ts';
import type { Link, Place, Run, Thing } from './model.ts';

/** Where the links and runs that a plan speaks of are looked up. */
export class Subjects {
  readonly #things: ReadonlyMap<string, Thing>;
  readonly #runs = new Map<string, Run>();

  constructor(things: ReadonlyMap<string, Thing>, runs: readonly Run[]) {
    this.#things = things;
    for (const run of runs) {
      if (!run.from || !run.to) continue;
      const key = pairOf(run.from, run.to);
      if (!this.#runs.has(key)) this.#runs.set(key, run);
    }
  }

  /** A named link, or the cable of a source or destination of that name. */
  cableNamed(name: string): Link | undefined {
    const thing = this.#things.get(name);
    if (thing?.kind === 'link') return thing;
    return thing?.kind === 'source' || thing?.kind === 'destination' ? thing.link : undefined;
  }

  /** The link between two ports, whichever way it is written. */
  linkBetween(from: EndFact, to: EndFact): Link | undefined {
    const node = this.#things.get(from.node);
    if (node?.kind !== 'node') return undefined;
    const index = node.kit?.portsByName.get(from.port)?.index;
    const port =
      index === undefined ? node.loosePorts.find(({ name }) => name === from.port) : node.usedPorts[index];
    const text = `${to.node}.${to.port}`;
    return port?.links.find((link) => (link.from.port === port ? link.to : link.from).text === text);
  }

  runBetween(from: Place | undefined, to: Place | undefined): Run | undefined {
    return from && to && this.#runs.get(pairOf(from, to));
  }
}

function pairOf(a: Place, b: Place): string {
  return a.index < b.index ? `${a.index} ${b.index}` : `${b.index} ${a.index}`;
}

/** `mixer.in1`, `judges`. */
export function targetText({ thing, port }: TargetFact): string {
  return port === undefined ? thing : `${thing}.${port}`;
}

/** A subject as it is written. */
export function subjectText(subject: SubjectFact): string {
  switch (subject.kind) {
    case 'name':
      return subject.name;
    case 'link':
      return `${subject.from.node}.${subject.from.port} -> ${subject.to.node}.${subject.to.port}`;
    case 'run':
      return `${subject.from} <-> ${subject.to}`;
    case 'feed':
      return `${subject.source} -> ${targetText(subject.target)}`;
  }
}
