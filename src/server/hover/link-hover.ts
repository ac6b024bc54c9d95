import type { Analysis, DirectionLoad, Link, Load, Reach } from '../../analysis/model.ts';
import { linkWorkings } from '../../documents/workings/link-workings.ts';
import { formatLength, formatLoss, formatRate, formatShare } from '../../physics/display.ts';
import { lossLines } from './loss-lines.ts';
import { bold, code, description, lines, paragraphs, plain, table, workings } from './markdown.ts';

/** A cable: what it carries each way, how much of it is used, how long it is and may be, and when it is fullest. */
export function linkHover(analysis: Analysis, link: Link): string {
  return paragraphs(
    lines(
      heading(link),
      link.statement.fact.kind === 'link' && link.statement.label && plain(link.statement.label),
    ),
    link.network ? trafficTable(analysis, link) : pictureLine(analysis, link),
    lines(
      fullest(analysis, link),
      lengthLine(analysis, link),
      reachLine(analysis, link),
      ...relations(analysis, link),
      ...lossLines(analysis, link),
    ),
    link.statement.fact.kind === 'link' && description(link.statement.description),
    workings(linkWorkings(analysis, link), 1),
  );
}

function heading({ name, named, from, to, bothWays, cable, chain }: Link): string {
  const ends = `${code(from.text)} ${bothWays ? '↔' : '→'} ${code(to.text)}`;
  const kind = [chain.interface?.statement.label ?? chain.interface?.name, cable && `over ${cable.name}`];
  const what = kind.filter((part) => part).join(' ');
  return `${named ? `${bold(name)} ` : ''}${ends}${what ? ` · ${plain(what)}` : ''}`;
}

function trafficTable(analysis: Analysis, link: Link): string {
  const { base } = analysis.traffic[link.index]!;
  const rows: string[][] = [];
  if (link.bothWays || link.carriesForward) rows.push(directionRow(link, base, 'forward'));
  if (link.bothWays) rows.push(directionRow(link, base, 'backward'));
  return table(['', 'load', 'of capacity', 'pictures'], rows);
}

function directionRow(link: Link, load: Load, direction: 'forward' | 'backward'): string[] {
  const [from, to] = direction === 'forward' ? [link.from, link.to] : [link.to, link.from];
  const { load_bits_per_second, share } = load[direction];
  return [
    `${code(from.text)} → ${code(to.text)}`,
    load_bits_per_second === 0 ? 'nothing' : formatRate(load_bits_per_second),
    share === undefined ? 'not known' : formatShare(share),
    picturesOf(load[direction]),
  ];
}

function picturesOf({ flows, pictures }: DirectionLoad): string {
  const names =
    flows.length > 0
      ? flows.map(({ source, copy }) => source.name + (copy ? ' (copy)' : ''))
      : pictures.map(({ name }) => name);
  return names.length === 0 ? '–' : plain(names.join(', '));
}

/** A cable off the network carries one picture, each way at most. */
function pictureLine(analysis: Analysis, link: Link): string {
  const { base, differing } = analysis.traffic[link.index]!;
  const carried = [...base.forward.pictures, ...base.backward.pictures];
  const always =
    carried.length > 0
      ? `Carries ${plain(carried.map(({ name }) => name).join(', '))}`
      : 'Carries no picture';
  const inSegments = differing.map(({ segment, forward, backward }) => {
    const names = [...forward.pictures, ...backward.pictures].map(({ name }) => name).join(', ');
    return `in ${plain(segment?.name ?? '')}: ${names ? plain(names) : 'none'}`;
  });
  return [always, ...inSegments].join('; ');
}

function fullest({ traffic, settings }: Analysis, link: Link): string | undefined {
  const { worst, judgement } = traffic[link.index]!;
  const { capacity_bits_per_second } = link.chain;
  if (
    !link.network ||
    worst.share === undefined ||
    capacity_bits_per_second === undefined ||
    worst.load_bits_per_second === 0
  )
    return undefined;
  const [from, to] = worst.direction === 'forward' ? [link.from, link.to] : [link.to, link.from];
  const when = worst.segment ? ` in ${bold(worst.segment.name)}` : '';
  const verdict = {
    fits: '',
    'not judged': '',
    'over headroom': ', into its headroom',
    'over capacity': ', **too much**',
  }[judgement];
  const left = capacity_bits_per_second - worst.load_bits_per_second;
  const rest = left >= 0 ? `${formatRate(left)} free` : `${formatRate(-left)} too much`;
  const limit =
    settings.headroomShare > 0 ? `, of which ${formatShare(settings.headroomShare)} is headroom` : '';
  return (
    `Fullest ${code(from.text)} → ${code(to.text)}${when}: ${bold(formatShare(worst.share))} of ` +
    `${formatRate(capacity_bits_per_second)}${verdict} (${rest}${limit})`
  );
}

function lengthLine({ settings }: Analysis, link: Link): string {
  const { length_m, from, planned_m, runs } = link.length;
  if (length_m === undefined) return 'Length: not known';
  const { units } = settings;
  const by = runs.length > 0 && from === 'runs' ? ` by ${runs.map(({ name }) => code(name)).join(', ')}` : '';
  const origin = { stated: 'stated', runs: 'from runs and slack', measured: 'measured' }[from ?? 'stated'];
  const planned =
    from === 'measured' && planned_m !== undefined
      ? `, planned ${formatLength(planned_m, units, length_m)}`
      : '';
  const chain = link.chain.links.length > 1 ? ` (${chainText(link, units)})` : '';
  return `Length: ${bold(formatLength(length_m, units))} ${origin}${by}${planned}${chain}`;
}

function chainText(link: Link, units: 'metric' | 'feet'): string {
  const { links, length_m } = link.chain;
  const whole = length_m === undefined ? 'of unknown length' : formatLength(length_m, units);
  return `one of ${links.length} cables that count as one, ${whole}`;
}

const verdicts: Record<Reach['verdict'], string> = {
  good: '',
  'not known': '',
  'near the limit': ', **near its limit**',
  doubtful: ', **doubtful**',
  beyond: ', **too long**',
};

function reachLine({ reaches, settings }: Analysis, { chain }: Link): string | undefined {
  const { verdict, reach_m, good_m, loss_db, loss_limit_db, share, decidedBy } = reaches[chain.index]!;
  if (verdict === 'not known') return 'Reach: not known';
  const parts: string[] = [];
  if (reach_m !== undefined) parts.push(`at most ${formatLength(reach_m, settings.units, chain.length_m)}`);
  if (good_m !== undefined && good_m !== reach_m)
    parts.push(`good to ${formatLength(good_m, settings.units)}`);
  if (loss_db !== undefined && loss_limit_db !== undefined)
    parts.push(`loses ${formatLoss(loss_db, loss_limit_db)} of ${formatLoss(loss_limit_db, loss_db)}`);
  const used =
    share === undefined
      ? ''
      : ` – ${formatShare(share)} of what is allowed${decidedBy ? ` by ${decidedBy}` : ''}`;
  return `Reach: ${parts.join(', ')}${used}${verdicts[verdict]}`;
}

function relations({ links }: Analysis, link: Link): string[] {
  const standbys = links.filter(({ standbyFor }) => standbyFor === link);
  const shared = links.filter(({ sheath }) => sheath === link.sheath);
  return [
    ...(link.standbyFor
      ? [`Stands by for ${plain(link.standbyFor.name)}: carries nothing until that fails`]
      : []),
    ...(standbys.length > 0 ? [`Standby: ${plain(standbys.map(({ name }) => name).join(', '))}`] : []),
    ...(shared.length > 1
      ? [
          `In one sheath with ${plain(
            shared
              .filter((one) => one !== link)
              .map(({ name }) => name)
              .join(', '),
          )}`,
        ]
      : []),
    ...(link.installed ? ["The house's own cable"] : []),
  ];
}
