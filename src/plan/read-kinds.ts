/** Kits, cables and interfaces: what things are, as far as one statement says it. */
import type * as ast from '../language/generated/ast.ts';
import type {
  CableFact,
  CableLossFact,
  CarriesFact,
  InterfaceFact,
  JoinFact,
  KitFact,
  PortGroupFact,
  PortNamesFact,
  ReachFact,
} from './facts.ts';
import { type Reading, written } from './reading.ts';

/** As many sockets as no box has; beyond lies a slip of the pen. */
const MOST_PORTS = 1024;

export function readKit(r: Reading, node: ast.Kit): KitFact {
  const supply = r.only(node.supplies, 'supplies', '`supplies poe`');
  const perPort_w = r.quantity(supply?.perPort, 'supplies/0.perPort', 'power');
  return written<KitFact>({
    kind: 'kit',
    name: node.name,
    groups: node.groups.map((group, i) => readGroup(r, group, `groups/${i}`)),
    joins: node.joins.flatMap((join, i) => readJoin(r, join, `joins/${i}`)),
    carries: readCarries(r, r.only(node.carries, 'carries', '`carries`'), 'carries/0'),
    forwards: r.has(node.forwards, 'forwards', '`forwards`'),
    routes: r.has(node.routes, 'routes', '`routes inputs to outputs`'),
    delay: r.onlyDuration(node.delays, 'delays', '`delay`'),
    draws_w: r.onlyQuantity(node.draws, 'draws', '`draws`', 'power'),
    poeClass: readClass(r, node),
    supplies:
      perPort_w === undefined
        ? undefined
        : written<NonNullable<KitFact['supplies']>>({
            perPort_w,
            inAll_w: r.quantity(supply?.inAll, 'supplies/0.inAll', 'power'),
          }),
    weight_kg: r.onlyQuantity(node.weights, 'weights', '`weighs`', 'weight'),
    cost: r.onlyNumber(node.costs, 'costs', 'A price'),
    firmware: r.only(node.firmwares, 'firmwares', '`firmware`'),
  });
}

function readClass(r: Reading, node: ast.Kit): number | undefined {
  const quantity = r.only(node.poeClasses, 'poeClasses', '`poe class`');
  const value = r.plainNumber(quantity, 'poeClasses/0', 'A class');
  if (value === undefined || (Number.isInteger(value) && value >= 0 && value <= 8)) return value;
  r.fault(
    'bad-number',
    'poeClasses/0',
    `Classes of power over the network go from 0 to 8; there is no class ${value}.`,
  );
  return undefined;
}

function readGroup(r: Reading, group: ast.PortGroup, part: string): PortGroupFact {
  const follows = r.only(group.follows, `${part}.follows`, '`follow`');
  return written<PortGroupFact>({
    role: group.role === 'inputs' ? 'input' : group.role === 'outputs' ? 'output' : 'network',
    ports: group.ports.flatMap((port, i) => readPorts(r, port, `${part}.ports/${i}`) ?? []),
    interface: r.name(group.interfaces, `${part}.interfaces`, '`as`'),
    follows: follows && readUse(r, follows, `${part}.follows/0`),
    gives: r.format(r.only(group.gives, `${part}.gives`, '`gives`'), `${part}.gives/0`),
  });
}

function readJoin(r: Reading, join: ast.Join, part: string): JoinFact[] {
  const front = join.front && readPorts(r, join.front, `${part}.front`);
  const rear = join.rear && readPorts(r, join.rear, `${part}.rear`);
  if (!front || !rear) return [];
  if (countOf(front) !== countOf(rear)) {
    r.fault(
      'bad-number',
      part,
      `${countOf(front)} ports cannot be joined with ${countOf(rear)}: give both the same count.`,
    );
  }
  return [
    written<JoinFact>({ front, rear, interface: r.name(join.interfaces, `${part}.interfaces`, '`as`') }),
  ];
}

function countOf(names: PortNamesFact): number {
  return names.low === undefined || names.high === undefined ? 1 : names.high - names.low + 1;
}

function readPorts(r: Reading, port: ast.Port, part: string): PortNamesFact | undefined {
  return port.name === undefined ? undefined : readRange(r, port.name, port.low, port.high, part);
}

function readUse(r: Reading, use: ast.PortUse, part: string): PortNamesFact | undefined {
  return use.port === undefined ? undefined : readRange(r, use.port.$refText, use.low, use.high, part);
}

function readRange(
  r: Reading,
  name: string,
  lowText: string | undefined,
  highText: string | undefined,
  part: string,
): PortNamesFact | undefined {
  if (lowText === undefined && highText === undefined) return { name };
  const low = r.wholeNumber(lowText, part, 'The number of a port', 0, 1_000_000);
  const high = r.wholeNumber(highText, part, 'The number of a port', 0, 1_000_000);
  if (low === undefined || high === undefined) return undefined;
  if (high < low) {
    r.fault(
      'bad-number',
      part,
      `\`${name}[${low}..${high}]\` counts backwards: write \`${name}[${high}..${low}]\`.`,
      { title: 'Turn the range round', text: `${name}[${high}..${low}]` },
    );
    return { name, low: high, high: low };
  }
  if (high - low < MOST_PORTS) return { name, low, high };
  r.fault(
    'bad-number',
    part,
    `\`${name}[${low}..${high}]\` are ${high - low + 1} ports; at most ${MOST_PORTS} stand in one range.`,
  );
  return { name, low, high: low + MOST_PORTS - 1 };
}

function readCarries(r: Reading, carries: ast.Carries | undefined, part: string): CarriesFact | undefined {
  if (!carries) return undefined;
  if (carries.kind === 'uncompressed') {
    if (carries.ratio ?? carries.rate ?? carries.bits) {
      r.fault(
        'unknown-word',
        part,
        'What is uncompressed has no ratio and no rate of its own; write `carries compressed …` or delete it.',
      );
    }
    return written<CarriesFact>({
      kind: 'uncompressed',
      sampling: carries.sampling,
      depth_bits: r.number(carries.depth, part),
    });
  }
  if (carries.rate) {
    const rate_bits_per_second = r.aboveZero(
      r.quantity(carries.rate, `${part}.rate`, 'data rate'),
      `${part}.rate`,
      'A picture of 0 b/s is none: write what the coder is set to.',
    );
    return rate_bits_per_second ? { kind: 'compressed', rate_bits_per_second } : undefined;
  }
  if (carries.ratio) {
    const [over = 0, under = 0] = carries.ratio.split(':').map(Number);
    if (over >= under && under > 0) return { kind: 'compressed', ratio: over / under };
    r.fault('bad-number', part, `A ratio is written as 8:1, the larger number first, not ${carries.ratio}.`);
    return undefined;
  }
  const bitsPerPixel = r.number(carries.bits, part);
  if (bitsPerPixel !== undefined && bitsPerPixel > 0) return { kind: 'compressed', bitsPerPixel };
  r.fault(
    'incomplete',
    part,
    'Compressed to what? Write `carries compressed at 180 Mb/s`, `carries compressed 8:1` or `carries compressed to 2 bit per pixel`.',
  );
  return undefined;
}

export function readCable(r: Reading, node: ast.Cable): CableFact {
  return written<CableFact>({
    kind: 'cable',
    name: node.name,
    medium: r.word(r.only(node.media, 'media', '`medium`'), 'media/0', 'A medium', [
      'coax',
      'pair',
      'fibre',
      'hdmi',
      'audio',
      'twinax',
      'usb',
    ]),
    like: r.name(node.likes, 'likes', '`like`'),
    screened: r.has(node.screened, 'screened', '`screened`'),
    strandedShare: r.onlyQuantity(node.stranded, 'stranded', '`stranded`', 'share'),
    losses: node.losses.flatMap((loss, i) => readLoss(r, loss, `losses/${i}`)),
    delay_s_per_m: readPerLength(r, r.only(node.delays, 'delays', '`delay`'), 'delays/0', 'time'),
    weight_kg_per_m: readPerLength(r, r.only(node.weights, 'weights', '`weighs`'), 'weights/0', 'weight'),
    resistance_ohm_per_m: readPerLength(
      r,
      r.only(node.resistances, 'resistances', '`resistance`'),
      'resistances/0',
      'resistance',
    ),
  });
}

function readPerLength(
  r: Reading,
  value: ast.PerLength | undefined,
  part: string,
  dimension: 'time' | 'weight' | 'resistance',
): number | undefined {
  const amount = r.quantity(value?.amount, `${part}.amount`, dimension);
  const per_m = r.perLength_m(value?.per, `${part}.per`);
  return amount === undefined || per_m === undefined ? undefined : amount / per_m;
}

function readLoss(r: Reading, node: ast.CableLoss, part: string): CableLossFact[] {
  const loss_db = r.quantity(node.loss, `${part}.loss`, 'loss');
  const per_m = r.perLength_m(node.per, `${part}.per`);
  if (loss_db === undefined || per_m === undefined) return [];
  const optical = node.at?.unit?.endsWith('m') === true;
  const at = r.quantity(node.at, `${part}.at`, optical ? 'length' : 'frequency');
  return [
    written<CableLossFact>({
      loss_db_per_m: loss_db / per_m,
      frequency_hz: optical ? undefined : at,
      wavelength_m: optical ? at : undefined,
      fromMemory: node.remembered !== undefined,
      source: node.source,
    }),
  ];
}

export function readInterface(r: Reading, node: ast.Interface): InterfaceFact {
  const lanes = r.only(node.lanes, 'lanes', '`lanes`');
  const count = r.wholeNumber(lanes?.count, 'lanes/0', 'A count of lanes', 1, 64);
  const laneRate = r.quantity(lanes?.rate, 'lanes/0.rate', 'data rate');
  return written<InterfaceFact>({
    kind: 'interface',
    name: node.name,
    signal: r.word(r.only(node.signals, 'signals', '`signal`'), 'signals/0', 'A signal', [
      'sdi',
      'hdmi',
      'ethernet',
      'audio',
      'usb',
    ]),
    rate_bits_per_second: r.onlyQuantity(node.rates, 'rates', '`rate`', 'data rate'),
    clock_hz: r.onlyQuantity(node.clocks, 'clocks', '`clock`', 'frequency'),
    lanes:
      count === undefined || laneRate === undefined ? undefined : { count, rate_bits_per_second: laneRate },
    wavelength_m: r.onlyQuantity(node.wavelengths, 'wavelengths', '`wavelength`', 'length'),
    budgets: node.budgets.flatMap((budget, i) => readBudget(r, budget, `budgets/${i}`)),
    accepts: r.names(node.accepts),
    reaches: node.reaches.flatMap((reach, i) => readReach(r, reach, `reaches/${i}`)),
  });
}

function readBudget(r: Reading, node: ast.Budget, part: string): InterfaceFact['budgets'][number][] {
  const loss_db = r.quantity(node.loss, `${part}.loss`, 'loss');
  if (loss_db === undefined) return [];
  const frequency_hz = r.quantity(node.at, `${part}.at`, 'frequency');
  return [
    written<InterfaceFact['budgets'][number]>({
      loss_db,
      frequency_hz,
      fromMemory: node.remembered !== undefined,
      source: node.source,
    }),
  ];
}

function readReach(r: Reading, node: ast.Reach, part: string): ReachFact[] {
  const length_m = r.quantity(node.length, `${part}.length`, 'length');
  if (length_m === undefined || !node.cable) return [];
  return [
    written<ReachFact>({
      cable: node.cable.$refText,
      length_m,
      good_m: r.quantity(node.good, `${part}.good`, 'length'),
      loss_db: r.quantity(node.loss, `${part}.loss`, 'loss'),
      lossFromMemory: node.lossRemembered !== undefined,
      fromMemory: node.remembered !== undefined,
      source: node.source,
    }),
  ];
}
