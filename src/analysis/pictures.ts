import type { StatedFormat } from '../physics/raster.ts';
import { type Format, sameRaster } from '../physics/raster.ts';
import { type Building, nothing } from './building.ts';
import type { DeliveryBook } from './delivery-book.ts';
import type { FormatTable, KnownFormat } from './formats.ts';
import { carriageOf } from './graph.ts';
import { firstFrom } from './lists.ts';
import type {
  Carried,
  Delivery,
  Destination,
  Flow,
  FormatFault,
  Link,
  Node,
  Port,
  Route,
  Signal,
  Source,
  Step,
} from './model.ts';

/** What the pictures on all routes look like: flows on the network, and the fastest picture on each chain of cables. */
export interface Pictures {
  readonly flows: readonly Flow[];
  /** By chain: the fastest picture that SDI carries there in any segment. */
  readonly fastest: readonly (KnownFormat | undefined)[];
  /** By source: as it leaves it. */
  readonly first: readonly (KnownFormat | undefined)[];
}

/** Follows every picture along its routes, and says on every step which format it has and in which flow it rides. */
export function picturesOf(
  deliveries: readonly Building<Delivery>[],
  formats: FormatTable,
  usual: Carried,
): PictureFollower {
  const follower = new PictureFollower(formats, usual);
  for (const delivery of deliveries) follower.follow(delivery);
  return follower;
}

/** Follows pictures one delivery after the other. */
export class PictureFollower implements Pictures {
  readonly flows: Flow[] = [];
  readonly fastest: (KnownFormat | undefined)[] = [];
  readonly first: (KnownFormat | undefined)[] = [];
  /** By source: its flows; seldom more than two. */
  readonly #flowsOf: (Flow[] | undefined)[] = [];
  /** Flows of sources that are followed again; those that come out the same go on. */
  readonly #former = new Map<Source, readonly Flow[]>();
  /** By flow: the delivery that was the first to ride in it. */
  readonly #firstIn = new Map<Flow, Delivery>();
  #following: Delivery | undefined;
  readonly #formats: FormatTable;
  readonly #usual: Carried;

  /** @param flows Flows that are there already. */
  constructor(formats: FormatTable, usual: Carried, flows: readonly Flow[] = []) {
    this.#formats = formats;
    this.#usual = usual;
    for (const flow of flows) this.#keepFlow(flow);
  }

  firstFlowOf(source: Source): Flow | undefined {
    return this.#flowsOf[source.index]?.[0];
  }

  follow(delivery: Building<Delivery>): void {
    const { source, target } = delivery.feed;
    if (!source) return;
    const faults: FormatFault[] = [];
    this.#following = delivery;
    delivery.format = undefined;
    delivery.formatFaults = nothing;
    delivery.routes.forEach((route, copy) => {
      const known = this.#followRoute(source, route, copy === 0 ? 0 : 1, faults);
      if (copy === 0) delivery.format = known?.format;
    });
    const { format } = delivery;
    if (format && target && 'takes' in target && !takes(target, format)) {
      faults.push({ kind: 'not taken', format, destination: target });
    }
    if (faults.length > 0) delivery.formatFaults = faults;
  }

  /**
   * Follows the pictures of some sources anew; all others are as they were.
   *
   * @param gone Deliveries that are no more, whose chains may have had their fastest picture from them.
   * @returns the deliveries that were followed, and the sources whose picture leaves them in another format.
   */
  followAgain(
    sources: ReadonlySet<Source>,
    book: DeliveryBook,
    gone: readonly Delivery[],
  ): { readonly followed: Building<Delivery>[]; readonly otherFirst: readonly Source[] } {
    const first = new Map<Source, KnownFormat | undefined>();
    for (const source of sources) {
      first.set(source, this.first[source.index]);
      this.#former.set(source, this.#flowsOf[source.index] ?? nothing);
      this.#flowsOf[source.index] = undefined;
      this.first[source.index] = undefined;
    }
    const count = this.flows.length;
    const followed = book.of(sources);
    for (const delivery of followed) this.follow(delivery);
    this.flows.length = count;
    this.#orderFlows(sources);
    this.#former.clear();
    this.#findFastest(book, [...gone, ...followed]);
    const otherFirst = [...sources].filter((source) => this.first[source.index] !== first.get(source));
    return { followed, otherFirst };
  }

  /** Puts the flows of some sources among all others, in the order in which deliveries meet them. */
  #orderFlows(sources: ReadonlySet<Source>): void {
    const former = new Set([...this.#former.values()].flat());
    const flows = this.flows.filter((flow) => !former.has(flow));
    for (const flow of former)
      if (!this.#flowsOf[flow.source.index]?.includes(flow)) this.#firstIn.delete(flow);
    const metAt = (flow: Flow) => this.#firstIn.get(flow)!.index;
    for (const source of sources) {
      for (const flow of this.#flowsOf[source.index] ?? nothing)
        flows.splice(
          firstFrom(flows, (other) => metAt(other) > metAt(flow)),
          0,
          flow,
        );
    }
    this.flows.length = 0;
    for (const flow of flows) {
      (flow as Building<Flow>).index = this.flows.length;
      this.flows.push(flow);
    }
  }

  /** The fastest picture on the chains that some deliveries take. */
  #findFastest(book: DeliveryBook, some: readonly Delivery[]): void {
    const links = new Set<Link>();
    for (const { routes } of some) {
      for (const { steps } of routes) {
        for (const { link } of steps) if (!link.network) for (const one of link.chain.links) links.add(one);
      }
    }
    for (const { chain } of links) this.fastest[chain.index] = undefined;
    for (const { routes } of book.over(links)) {
      for (const { steps } of routes) {
        for (const { link, format } of steps) {
          if (!format || !links.has(link) || link.chain.interface?.signal !== 'sdi') continue;
          this.#keepFastest(link, this.#formats.known(format)!);
        }
      }
    }
  }

  #followRoute(
    source: Source,
    { steps }: Route,
    copy: 0 | 1,
    faults: FormatFault[],
  ): KnownFormat | undefined {
    let known = this.#atSource(source, steps[0]?.link);
    let flow: Flow | undefined;
    let before: Signal = 'unknown';
    let leftDisplay = false;
    for (let i = 0; i < steps.length; i++) {
      const step = steps[i] as Building<Step>;
      const { link } = step;
      const leaving = step.forward ? link.from.port! : link.to.port!;
      const face = link.chain.interface;
      const signal = face?.signal ?? (link.network ? 'network' : 'unknown');
      if (link.network) {
        flow ??= this.#flow(source, leaving, copy, known);
        known = flow.format && this.#formats.known(flow.format);
        step.flow = flow;
      } else {
        if (flow) this.#checkExit(flow, leaving, faults);
        else if (before === 'display' && signal === 'sdi' && known) known = this.#formats.ontoSdi(known);
        if (i > 0 && leaving.gives && known) known = this.#formats.give(leaving.gives, known, signal);
        flow = undefined;
        if (known && signal === 'sdi') this.#keepFastest(link, known);
      }
      step.format = known?.format;
      if (source.encrypted && !leftDisplay && signal !== 'display' && signal !== 'unknown') {
        leftDisplay = true;
        faults.push({ kind: 'protected', step });
      }
      const misfit = face && known && !link.network ? this.#formats.misfit(known, face) : undefined;
      if (misfit && face && known) faults.push({ ...misfit, step, interface: face, format: known.format });
      before = signal;
    }
    return known;
  }

  /** As the picture leaves its source: what is not stated follows from what it rides on there. */
  #atSource(source: Source, link: Link | undefined): KnownFormat | undefined {
    if (!source.format || !link) return undefined;
    const signal = source.port?.interface?.signal ?? link.chain.interface?.signal ?? 'sdi';
    const known = this.#formats.complete(source.format, link.network ? 'network' : signal);
    this.first[source.index] ??= known;
    return known;
  }

  /** The flow that a picture rides in from the port where it enters the network: one for each node and copy. */
  #flow(source: Source, leaving: Port, copy: 0 | 1, known: KnownFormat | undefined): Flow {
    const owner = leaving.owner;
    const byItself = owner === source || leaving === source.from || owner.kind !== 'node';
    const entry: Node | Source = byItself ? source : owner;
    const carried = byItself ? carriageOf(source, this.#usual) : (owner.kit?.carries ?? this.#usual);
    const onNetwork = known && this.#formats.carry(known, carried);
    const isIt = (flow: Flow) =>
      flow.entry === entry && flow.copy === copy && flow.format === onNetwork?.format;
    const there = this.#flowsOf[source.index]?.find(isIt);
    if (there) return there;
    const former = this.#former.get(source)?.find(isIt);
    if (former) return this.#keepFlow(former);
    const loads = onNetwork && this.#formats.loads(onNetwork, carried);
    const flow: Flow = {
      index: this.flows.length,
      source,
      entry,
      copy,
      carried,
      format: onNetwork?.format,
      load_bits_per_second: loads?.total_bits_per_second ?? 0,
    };
    return this.#keepFlow(flow);
  }

  #keepFlow(flow: Flow): Flow {
    const ofSource = this.#flowsOf[flow.source.index];
    if (ofSource) ofSource.push(flow);
    else this.#flowsOf[flow.source.index] = [flow];
    this.flows.push(flow);
    if (this.#following) this.#firstIn.set(flow, this.#following);
    return flow;
  }

  /** Kinds of carriage share a plane of the graph when there are very many, so the exit is looked at again. */
  #checkExit(flow: Flow, leaving: Port, faults: FormatFault[]): void {
    const { owner } = leaving;
    const left = owner.kit?.carries;
    if (owner.kind !== 'node' || left === undefined || left === flow.carried) return;
    faults.push({ kind: 'other carriage', node: owner, entered: flow.carried, left });
  }

  #keepFastest({ chain }: Link, known: KnownFormat): void {
    const there = this.fastest[chain.index];
    if ((known.sdi_bits_per_second ?? 0) > (there?.sdi_bits_per_second ?? 0))
      this.fastest[chain.index] = known;
  }
}

/** A destination takes a format that it states, and any when it states none. */
function takes({ takes }: Destination, format: Format): boolean {
  return takes.length === 0 || takes.some((stated) => isTaken(stated, format));
}

function isTaken(stated: StatedFormat, format: Format): boolean {
  if (stated.kind === 'sound' || format.kind === 'sound') return stated.kind === format.kind;
  if (!sameRaster(stated, format)) return false;
  if (stated.sampling !== undefined && stated.sampling !== format.sampling) return false;
  return stated.depth_bits === undefined || stated.depth_bits === format.depth_bits;
}
