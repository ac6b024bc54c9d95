/** The plan's settings, feeds and segments, stock and cases, and what was accepted, measured and proved. */
import type * as ast from '../language/generated/ast.ts';
import type {
  AcceptFact,
  BlackFact,
  CaseFact,
  FeedFact,
  MeasuredFact,
  PlanFact,
  ProvedFact,
  SegmentFact,
  StockFact,
  SubjectFact,
  TargetFact,
} from './facts.ts';
import { readEnd } from './read-things.ts';
import { type Reading, written } from './reading.ts';

export function readPlan(r: Reading, node: ast.PlanHead): PlanFact {
  const rate = r.only(node.rates, 'rates', '`rate`');
  const blanking = r.word(r.only(node.blankings, 'blankings', '`blanking`'), 'blankings/0', '`blanking`', [
    'v1',
    'v2',
  ]);
  return written<PlanFact>({
    kind: 'plan',
    title: node.title ?? '',
    revision: r.only(node.revisions, 'revisions', '`revision`'),
    date: r.date(r.only(node.dates, 'dates', '`date`'), 'dates/0'),
    lasts_s: r.onlyQuantity(node.lasts, 'lasts', '`lasts`', 'time'),
    rate: rate && readHouseRate(r, rate),
    headroomShare: r.onlyQuantity(node.headrooms, 'headrooms', '`headroom`', 'share'),
    slack_m: r.onlyQuantity(node.slacks, 'slacks', '`slack`', 'length'),
    sparesShare: r.onlyQuantity(node.spares, 'spares', '`spares`', 'share'),
    units: r.word(r.only(node.units, 'units', '`units`'), 'units/0', '`units`', ['metric', 'feet']),
    currency: r.only(node.currencies, 'currencies', '`currency`'),
    subnet: readPrefix(r, r.only(node.subnets, 'subnets', '`subnet`'), 'subnets/0'),
    multicast: readPrefix(r, r.only(node.multicasts, 'multicasts', '`multicast`'), 'multicasts/0'),
    timingDomain: readDomain(r, r.only(node.domains, 'domains', '`ptp`')),
    packing: r.word(r.only(node.packings, 'packings', '`packing`'), 'packings/0', '`packing`', [
      'equal',
      'block',
    ]),
    tagged: r.has(node.tagged, 'tagged', '`tagged`'),
    lipsync: r.word(r.only(node.lipsyncs, 'lipsyncs', '`lipsync`'), 'lipsyncs/0', '`lipsync`', [
      'bt1359',
      'r37',
      'is191',
    ]),
    blanking: blanking === undefined ? undefined : blanking === 'v1' ? 1 : 2,
  });
}

function readHouseRate(r: Reading, rate: ast.Quantity): string | undefined {
  const value = r.plainNumber(rate, 'rates/0', 'The house rate');
  if (value === undefined) return undefined;
  if (value >= 1 && value <= 1000) return rate.value.replace(',', '.');
  r.fault(
    'bad-number',
    'rates/0',
    `A house rate is from 1 to 1000 pictures a second, such as 50 or 59.94, not ${rate.value}.`,
  );
  return undefined;
}

function readDomain(r: Reading, domain: ast.Quantity | undefined): number | undefined {
  const value = r.plainNumber(domain, 'domains/0', 'A timing domain');
  if (value === undefined || (Number.isInteger(value) && value >= 0 && value <= 127)) return value;
  r.fault('bad-number', 'domains/0', `A timing domain is a whole number from 0 to 127, not ${value}.`);
  return undefined;
}

function readPrefix(r: Reading, text: string | undefined, part: string): string | undefined {
  if (text === undefined) return undefined;
  const [address = '', bits] = text.split('/');
  const octetsFit = address.split('.').every((octet) => Number(octet) <= 255);
  if (octetsFit && bits !== undefined && Number(bits) >= 1 && Number(bits) <= 32) return text;
  r.fault(
    'bad-number',
    part,
    `\`${text}\` is no prefix: write an address, a slash and how many bits of it are common, such as 10.20.0.0/24.`,
  );
  return undefined;
}

export function readFeed(r: Reading, node: ast.Feed): FeedFact | undefined {
  const targets = readTargets(node.targets);
  if (!node.source || targets.length === 0) return undefined;
  return written<FeedFact>({
    kind: 'feed',
    source: node.source.$refText,
    targets,
    via: node.via.flatMap((end) => readEnd(end) ?? []),
    redundant: r.has(node.redundant, 'redundant', '`redundant`'),
    seamless: r.has(node.seamless, 'seamless', '`seamless`'),
    limit: r.onlyDuration(node.limits, 'limits', '`within`'),
    segments: r.names(node.segments),
    insteadOf: r.name(node.insteadOf, 'insteadOf', '`instead of`'),
  });
}

function readTargets(targets: readonly ast.FeedTarget[]): TargetFact[] {
  return targets.flatMap((target) => readTarget(target) ?? []);
}

function readTarget(target: ast.FeedTarget | undefined): TargetFact | undefined {
  if (!target?.thing) return undefined;
  return written<TargetFact>({ thing: target.thing.$refText, port: target.port?.$refText });
}

export function readSegment(r: Reading, node: ast.Segment): SegmentFact {
  return { kind: 'segment', name: node.name, without: r.names(node.without) };
}

export function readBlack(r: Reading, node: ast.Black): BlackFact | undefined {
  const targets = readTargets(node.targets);
  return targets.length === 0 ? undefined : { kind: 'black', targets, segments: r.names(node.segments) };
}

export function readStock(r: Reading, node: ast.Stock): StockFact | undefined {
  const length_m = r.aboveZero(
    r.quantity(node.length, 'length', 'length'),
    'length',
    'A piece of 0 m is no cable: write how long it is.',
  );
  if (!node.cable) return undefined;
  const count = r.wholeNumber(node.count, 'count', 'A count of pieces', 0, 100_000);
  const isKnown = length_m !== undefined && (node.any || count !== undefined);
  return written<StockFact>({
    kind: 'stock',
    cable: node.cable.$refText,
    // What cannot be understood is no piece at all, so that what is wrong with it is told all the same.
    count: node.any && isKnown ? undefined : isKnown ? count : 0,
    length_m: length_m ?? 0,
    cost: r.onlyNumber(node.costs, 'costs', 'A price'),
  });
}

export function readCase(r: Reading, node: ast.Case): CaseFact {
  return written<CaseFact>({
    kind: 'case',
    name: node.name,
    things: r.names(node.things),
    loose: node.loose,
    weight_kg: r.onlyQuantity(node.weights, 'weights', '`weighs`', 'weight'),
    limit_kg: r.onlyQuantity(node.limits, 'limits', '`up to`', 'weight'),
  });
}

export function readAccept(_r: Reading, node: ast.Accept): AcceptFact | undefined {
  const subject = readSubject(node.subject);
  if (!node.check || !subject) return undefined;
  return written<AcceptFact>({ kind: 'accept', check: node.check, subject, reason: node.reason });
}

export function readMeasured(r: Reading, node: ast.Measured): MeasuredFact | undefined {
  const subject = readSubject(node.subject);
  if (!subject || !node.value) return undefined;
  return written<MeasuredFact>({ kind: 'measured', subject, ...readMeasurement(r, node.value, subject) });
}

/** The unit decides what was measured, where the subject leaves it open. */
function readMeasurement(r: Reading, value: ast.Quantity, subject: { kind: string }): Partial<MeasuredFact> {
  const unit = value.unit ?? '';
  if (subject.kind === 'feed') {
    const delay = r.duration(value, 'value');
    return delay ? { delay } : {};
  }
  if (subject.kind === 'name' && unit.endsWith('b/s')) {
    const rate = r.quantity(value, 'value', 'data rate');
    return rate === undefined ? {} : { rate_bits_per_second: rate };
  }
  const length_m = r.quantity(value, 'value', 'length');
  return length_m === undefined ? {} : { length_m };
}

export function readProved(r: Reading, node: ast.Proved): ProvedFact | undefined {
  const target = readTarget(node.target);
  if (!node.source || !target) return undefined;
  return written<ProvedFact>({
    kind: 'proved',
    source: node.source.$refText,
    target,
    date: r.date(node.date, 'date'),
  });
}

function readSubject(subject: ast.Subject | undefined): SubjectFact | undefined {
  const { first, second, arrow } = subject ?? {};
  if (!first?.thing) return undefined;
  const name = first.thing.$refText;
  if (!arrow) return { kind: 'name', name };
  if (!second?.thing) return undefined;
  const other = second.thing.$refText;
  if (first.port && second.port) {
    return {
      kind: 'link',
      from: { node: name, port: first.port.$refText },
      to: { node: other, port: second.port.$refText },
    };
  }
  if (arrow === '<->') return { kind: 'run', from: name, to: other };
  return {
    kind: 'feed',
    source: name,
    target: written<TargetFact>({ thing: other, port: second.port?.$refText }),
  };
}
