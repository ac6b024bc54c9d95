/** Places, runs, circuits, nodes, sources, destinations, links: what stands where and is joined by what. */
import type * as ast from '../language/generated/ast.ts';
import type {
  CableRunFact,
  CircuitFact,
  DestinationFact,
  EndFact,
  LinkFact,
  NodeFact,
  RunFact,
  SourceFact,
  UplinkFact,
} from './facts.ts';
import { type Reading, written } from './reading.ts';

export function readRun(r: Reading, node: ast.Run): RunFact | undefined {
  if (!node.from || !node.to) return undefined;
  return written<RunFact>({
    kind: 'run',
    from: node.from.$refText,
    to: node.to.$refText,
    length_m: r.onlyQuantity(node.lengths, 'lengths', 'The length', 'length'),
    route: r.only(node.routes, 'routes', 'The route'),
    temperature_c: r.onlyQuantity(node.temperatures, 'temperatures', '`at`', 'temperature'),
  });
}

/** Less is on no breaker, and no arithmetic of mains takes it. */
const LEAST_CURRENT_A = 0.1;
const LEAST_VOLTAGE_V = 1;

export function readCircuit(r: Reading, node: ast.Circuit): CircuitFact {
  const current = node.ratings.findIndex((q) => q.unit !== undefined && /^k?A$/.test(q.unit));
  const voltage = node.ratings.findIndex((q) => q.unit !== undefined && /^k?V$/.test(q.unit));
  node.ratings.forEach((quantity, i) => {
    if (i === current || i === voltage) return;
    const missing = current < 0 ? 'current' : 'voltage';
    if (current >= 0 && voltage >= 0)
      r.fault(
        'written-twice',
        `ratings/${i}`,
        'A circuit has one current and one voltage; delete what is too much.',
      );
    else r.quantity(quantity, `ratings/${i}`, missing);
  });
  const current_a = r.quantity(node.ratings[current], `ratings/${current}`, 'current');
  const voltage_v = r.quantity(node.ratings[voltage], `ratings/${voltage}`, 'voltage');
  const feeding = (value: number | undefined, at: number, least: number) => {
    if (value === undefined || value >= least) return value;
    const { value: number, unit } = node.ratings[at]!;
    r.fault(
      'bad-number',
      `ratings/${at}`,
      `A circuit of ${number.slice(0, 20)} ${unit} feeds nothing: write what is printed on the breaker.`,
    );
    return undefined;
  };
  return written<CircuitFact>({
    kind: 'circuit',
    name: node.name,
    place: r.name(node.places, 'places', '`at`'),
    current_a: feeding(current_a, current, LEAST_CURRENT_A),
    voltage_v: feeding(voltage_v, voltage, LEAST_VOLTAGE_V),
    from: r.name(node.supplies, 'supplies', '`from`'),
  });
}

export function readNode(r: Reading, node: ast.Node): NodeFact {
  return written<NodeFact>({
    kind: 'node',
    name: node.name,
    kit: r.name(node.kits, 'kits', 'The kit'),
    place: r.name(node.places, 'places', '`at`'),
    poweredBy: r.names(node.poweredBy),
    labels: node.labels.flatMap((label) =>
      label.port && label.text !== undefined ? [{ port: label.port.$refText, text: label.text }] : [],
    ),
    gives: node.gives.flatMap((gives, i) => {
      const format = r.format(gives.format, `gives/${i}.format`);
      return gives.port && format ? [{ port: gives.port.$refText, format }] : [];
    }),
    firmware: r.only(node.firmwares, 'firmwares', '`firmware`'),
    address: readAddress(r, r.only(node.addresses, 'addresses', '`address`'), 'addresses/0'),
  });
}

function readAddress(r: Reading, text: string | undefined, part: string): string | undefined {
  if (text === undefined) return undefined;
  const octets = text.split('.').map(Number);
  if (!text.includes('/') && octets.every((octet) => octet <= 255)) return text;
  r.fault(
    'bad-number',
    part,
    `\`${text}\` is no address: it has four numbers from 0 to 255, such as 10.20.0.9.`,
  );
  return undefined;
}

export function readSource(r: Reading, node: ast.Source): SourceFact {
  return written<SourceFact>({
    kind: 'source',
    name: node.name,
    kit: r.name(node.kits, 'kits', 'The kit'),
    place: r.name(node.places, 'places', '`at`'),
    format: r.format(r.only(node.formats, 'formats', '`sends`'), 'formats/0'),
    into: readEnd(r.only(node.into, 'into', '`into`')),
    from: readEnd(r.only(node.from, 'from', '`from`')),
    madeOf: node.madeOf.length > 0 ? r.names(node.madeOf) : undefined,
    delay: r.onlyDuration(node.delays, 'delays', '`delay`'),
    poweredBy: r.names(node.poweredBy),
    encrypted: r.has(node.encrypted, 'encrypted', '`encrypted`'),
    ...readCableRun(r, node),
  });
}

const NO_RATE = 'A rate of 0 is no stream and no recording: write how fast it is, or leave it out.';

/** Farther than anybody stands from a loudspeaker, in metres (common practice). */
const FARTHEST_M = 1000;

export function readDestination(r: Reading, node: ast.Destination): DestinationFact {
  const sound = r.only(node.sounds, 'sounds', '`sound`');
  return written<DestinationFact>({
    kind: 'destination',
    name: node.name,
    kit: r.name(node.kits, 'kits', 'The kit'),
    place: r.name(node.places, 'places', '`at`'),
    formats: node.formats.flatMap((format, i) => r.format(format, `formats/${i}`) ?? []),
    from: readEnd(r.only(node.from, 'from', '`from`')),
    limit: r.onlyDuration(node.limits, 'limits', '`within`'),
    delay: r.onlyDuration(node.delays, 'delays', '`delay`'),
    sound:
      sound &&
      written<NonNullable<DestinationFact['sound']>>({
        after_s: r.quantity(sound.after, 'sounds/0.after', 'time'),
        distance_m: atMost(r, r.quantity(sound.distance, 'sounds/0.distance', 'length'), FARTHEST_M, {
          part: 'sounds/0.distance',
          message: `Nobody hears a loudspeaker from more than ${FARTHEST_M} m away.`,
        }),
      }),
    streams: node.streams.map((streams, i) => ({
      rates_bits_per_second: streams.rates.flatMap((rate, k) => {
        const part = `streams/${i}.rates/${k}`;
        return r.aboveZero(r.quantity(rate, part, 'data rate'), part, NO_RATE) ?? [];
      }),
      uplinks: r.names(streams.uplinks),
    })),
    records_bits_per_second: r.aboveZero(
      r.onlyQuantity(node.records, 'records', '`records`', 'data rate'),
      'records/0',
      NO_RATE,
    ),
    poweredBy: r.names(node.poweredBy),
    ...readCableRun(r, node),
  });
}

function atMost(
  r: Reading,
  value: number | undefined,
  most: number,
  { part, message }: { part: string; message: string },
): number | undefined {
  if (value === undefined || value <= most) return value;
  r.fault('bad-number', part, message);
  return undefined;
}

export function readLink(r: Reading, node: ast.Link): LinkFact | undefined {
  const from = readEnd(node.from);
  const to = readEnd(node.to);
  if (!from || !to) return undefined;
  return written<LinkFact>({
    kind: 'link',
    name: node.name,
    from,
    to,
    bothWays: node.arrow === '<->',
    standbyFor: r.name(node.standbyFor, 'standbyFor', '`standby for`'),
    ...readCableRun(r, node),
  });
}

export function readUplink(r: Reading, node: ast.Uplink): UplinkFact {
  return written<UplinkFact>({
    kind: 'uplink',
    name: node.name,
    place: r.name(node.places, 'places', '`at`'),
    rate_bits_per_second: r.aboveZero(
      r.onlyQuantity(node.rates, 'rates', 'The upload', 'data rate'),
      'rates/0',
      'An upload of 0 takes no stream: write what the venue states.',
    ),
  });
}

/** Both halves of `box.in1`; undefined while it is being written. */
export function readEnd(end: ast.Endpoint | undefined): EndFact | undefined {
  return end?.node && end.port ? { node: end.node.$refText, port: end.port.$refText } : undefined;
}

function readCableRun(r: Reading, node: ast.Link | ast.Source | ast.Destination): CableRunFact {
  return written<CableRunFact>({
    cable: r.name(node.cables, 'cables', '`over`'),
    length_m: r.onlyQuantity(node.lengths, 'lengths', 'The length', 'length'),
    interface: r.name(node.interfaces, 'interfaces', '`as`'),
    by: r.names(node.by),
    shares: r.name(node.shares, 'shares', '`shares`'),
    installed: r.has(node.installed, 'installed', '`installed`'),
    connections: r.wholeNumber(
      r.only(node.connections, 'connections', '`connections`'),
      'connections/0',
      'A count of connections',
      0,
      1000,
    ),
    splices: r.wholeNumber(
      r.only(node.splices, 'splices', '`splices`'),
      'splices/0',
      'A count of splices',
      0,
      1000,
    ),
  });
}
