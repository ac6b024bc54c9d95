import type { Analysis, DirectionLoad, Flow, Link, Segment } from '../../analysis/model.ts';
import { formatLength, formatRate, formatShare } from '../../physics/display.ts';
import { makeWorking, type Working } from '../../physics/working.ts';
import { loadWorking } from './source-workings.ts';

/** How the figures of a link were got: its load each way and what share of the capacity that is, and its
 * length. */
export function linkWorkings(analysis: Analysis, link: Link): Working[] {
  const { base, worst } = analysis.traffic[link.index]!;
  const loads = link.network
    ? [
        ...loadWorkings(analysis, link, 'forward', base.forward, undefined),
        ...loadWorkings(analysis, link, 'backward', base.backward, undefined),
        ...(worst.segment === undefined ? [] : worstWorkings(analysis, link)),
      ]
    : [];
  return [...loads, ...lengthWorkings(analysis, link)];
}

function worstWorkings(analysis: Analysis, link: Link): Working[] {
  const { worst, differing } = analysis.traffic[link.index]!;
  const load = differing.find(({ segment }) => segment === worst.segment);
  return load ? loadWorkings(analysis, link, worst.direction, load[worst.direction], worst.segment) : [];
}

/** The sum of the flows that go one way, and what share of the capacity that is. */
function loadWorkings(
  analysis: Analysis,
  link: Link,
  direction: 'forward' | 'backward',
  { flows, load_bits_per_second, share }: DirectionLoad,
  segment: Segment | undefined,
): Working[] {
  if (flows.length === 0) return [];
  const [from, to] = direction === 'forward' ? [link.from, link.to] : [link.to, link.from];
  const where = segment === undefined ? '' : ` in ${segment.name}`;
  const load = makeWorking({
    figure: `load of ${link.name}, ${from.text} to ${to.text}${where}`,
    rule: 'each picture counts once, however many it serves; a seamless feed has two copies',
    formula: flows.map((flow) => flow.source.name).join(' + '),
    inputs: flows.map((flow) => [flow.source.name, formatRate(flow.load_bits_per_second)]),
    // Names come from a plan, and the two copies of a seamless feed share one.
    substituted: flows.map((flow) => formatRate(flow.load_bits_per_second)).join(' + '),
    result: formatRate(load_bits_per_second),
    source: 'sum of the flows on the wire',
    label: 'derived',
    steps: stepsOf(analysis, flows),
  });
  const { interface: face, capacity_bits_per_second } = link.chain;
  if (share === undefined || capacity_bits_per_second === undefined) return [load];
  const ofCapacity = makeWorking({
    figure: `share of the capacity, ${from.text} to ${to.text}${where}`,
    rule: `each direction has the whole line rate of ${face?.statement.label ?? face?.name}`,
    formula: 'load / capacity',
    inputs: [
      ['load', formatRate(load_bits_per_second)],
      ['capacity', formatRate(capacity_bits_per_second)],
    ],
    result: formatShare(share),
    source: 'every bit that occupies the wire, against the line rate',
    label: 'derived',
  });
  return [load, ofCapacity];
}

/** Pictures of one format have one working. */
function stepsOf({ settings }: Analysis, flows: readonly Flow[]): Working[] {
  const byFigure = new Map<string, Working>();
  for (const { format, carried } of flows) {
    if (!format) continue;
    const working = loadWorking(format, carried, settings);
    byFigure.set(`${working.figure} ${carried.text}`, working);
  }
  return [...byFigure.values()];
}

function lengthWorkings({ settings }: Analysis, link: Link): Working[] {
  const { length_m, from, runs } = link.length;
  if (length_m === undefined) return [];
  const length = (metres: number) => formatLength(metres, settings.units);
  const common = { figure: `length of ${link.name}`, result: length(length_m), label: 'derived' as const };
  const measured = from === 'measured' && runs.every((run) => run.measured === undefined);
  if (from === 'stated' || measured) {
    const rule = measured ? 'as measured on site' : 'as stated; nothing is added';
    return [makeWorking({ ...common, rule, formula: '', inputs: [], source: 'the plan' })];
  }
  const laid: [string, string][] = runs.map((run) => [
    run.name,
    run.length_m === undefined ? '?' : length(run.length_m),
  ]);
  return [
    makeWorking({
      ...common,
      rule:
        runs.length === 0
          ? 'within one place: slack at each end'
          : 'the shortest chain of runs between its places, and slack at each end',
      formula: [...laid.map(([name]) => name), '2 x slack'].join(' + '),
      inputs: [...laid, ['slack', length(settings.slack_m)]],
      substituted: [...laid.map(([, metres]) => metres), `2 x ${length(settings.slack_m)}`].join(' + '),
      source: 'the plan: runs and slack',
    }),
  ];
}
