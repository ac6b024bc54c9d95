import type { StatedFormat } from '../physics/raster.ts';
import { type Format, sameRaster } from '../physics/raster.ts';
import type { Building } from './building.ts';
import type { FormatTable, KnownFormat } from './formats.ts';
import { carriageOf } from './graph.ts';
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
): Pictures {
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
  readonly #flowsOf: Flow[][] = [];
  readonly #knownOf: (KnownFormat | undefined)[] = [];
  readonly #formats: FormatTable;
  readonly #usual: Carried;

  /** @param flows Flows that are there already. */
  constructor(formats: FormatTable, usual: Carried, flows: readonly Flow[] = []) {
    this.#formats = formats;
    this.#usual = usual;
    for (const flow of flows) this.#keepFlow(flow, flow.format && formats.known(flow.format));
  }

  follow(delivery: Building<Delivery>): void {
    const { source, target } = delivery.feed;
    if (!source) return;
    const faults: FormatFault[] = [];
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
        known = this.#knownOf[flow.index];
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
    for (const flow of this.#flowsOf[source.index] ?? []) {
      if (flow.entry === entry && flow.copy === copy && flow.format === onNetwork?.format) return flow;
    }
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
    this.#keepFlow(flow, onNetwork);
    return flow;
  }

  #keepFlow(flow: Flow, known: KnownFormat | undefined): void {
    const ofSource = this.#flowsOf[flow.source.index];
    if (ofSource) ofSource.push(flow);
    else this.#flowsOf[flow.source.index] = [flow];
    this.flows.push(flow);
    this.#knownOf[flow.index] = known;
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
