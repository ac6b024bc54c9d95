/** Each kind of change in words, one sentence each: the same in the terminal, in a pull request, on a page and in the editor. */
import {
  formatLength,
  formatPower,
  formatRate,
  formatShare,
  formatTime,
  formatWeight,
} from '../../physics/display.ts';
import type {
  CoverChange,
  CoverState,
  Difference,
  LoadChange,
  LoadState,
  Named,
  PictureChange,
  PictureState,
  Purchase,
  ReachChange,
  ReachState,
  Review,
  ThingChange,
  Total,
} from './review.ts';

/** More names than this in one sentence are counted. */
const MOST_NAMES = 6;

export function pictureWords({ change, before, after, segment }: PictureChange): string {
  const where = segment ? `in ${segment.title} ` : '';
  const delays = delayWords(before, after);
  switch (change) {
    case 'loses its picture':
      return `${where}no longer gets a picture; it showed ${before?.source.title}`;
    case 'gains a picture':
      return `${where}gains a picture: ${after?.source.title}${delays}`;
    case 'shows another':
      return `${where}shows ${after?.source.title} instead of ${before?.source.title}${delays}`;
    case 'another way':
      return `${where}gets ${after?.source.title} another way: ${wayWords(before, after)}${delays}`;
    case 'later':
    case 'sooner':
      return `${where}gets ${after?.source.title} ${change}${delays}`;
  }
}

/** Only the cables that differ. */
function wayWords(before: PictureState | undefined, after: PictureState | undefined): string {
  const [was, is] = [before?.way ?? [], after?.way ?? []];
  const [inWas, inIs] = [was, is].map((way) => new Set(way.map(({ name }) => name)));
  const left = was.filter(({ name }) => !inIs!.has(name));
  const come = is.filter(({ name }) => !inWas!.has(name));
  if (come.length === 0) return left.length === 0 ? 'in another order' : `no longer over ${titles(left)}`;
  return `over ${titles(come)}${left.length === 0 ? '' : ` instead of ${titles(left)}`}`;
}

function delayWords(before: PictureState | undefined, after: PictureState | undefined): string {
  if (after?.delay_s === undefined) return '';
  const limit =
    after.limit_s === undefined
      ? ''
      : ` of at most ${formatTime(after.limit_s, after.over ? after.delay_s : undefined)}`;
  const late = after.over ? ', too late' : '';
  const is = formatTime(after.delay_s);
  const was = before?.delay_s === undefined ? '' : formatTime(before.delay_s);
  return was === '' || was === is ? `; ${is}${limit}${late}` : `; ${was} → ${is}${limit}${late}`;
}

export function loadWords({ change, from, to, before, after, gains, loses }: LoadChange): string {
  const way = `from ${from} to ${to}`;
  const [was, is] = [before && loadText(before), after && loadText(after)];
  const figures =
    change === 'added' ? `new, ${is}` : change === 'removed' ? `gone; it carried ${was}` : `${was} → ${is}`;
  const riders = [
    gains.length > 0 ? `adds ${titles(gains)}` : '',
    loses.length > 0 && change !== 'removed' ? `drops ${titles(loses)}` : '',
  ].filter(Boolean);
  return [`${way}: ${figures}`, ...riders].join('; ');
}

/** Only how full it was and is, short enough to stand beside its text: `backward 53.7 % → 80.5 %`. */
export function loadFigures({ direction, before, after }: LoadChange): string {
  const figure = (state: LoadState | undefined) =>
    state?.share === undefined ? formatRate(state?.load_bits_per_second ?? 0) : formatShare(state.share);
  return `${direction} ${before ? figure(before) : 'new'} → ${figure(after)}`;
}

function loadText({ load_bits_per_second, share, capacity_bits_per_second, segment }: LoadState): string {
  if (load_bits_per_second === 0) return 'nothing';
  const rate = formatRate(load_bits_per_second, capacity_bits_per_second);
  const worst = segment ? `, at its worst in ${segment.title}` : '';
  if (share === undefined || capacity_bits_per_second === undefined) return `${rate}${worst}`;
  const over = share > 1 ? ', overfilled' : '';
  return `${formatShare(share)} (${rate} of ${formatRate(capacity_bits_per_second)}${worst}${over})`;
}

export function reachWords({ before, after }: ReachChange, { units }: Pick<Review, 'units'>): string {
  const length = (one: ReachState, other: ReachState) =>
    one.length_m === undefined ? 'length not known' : formatLength(one.length_m, units, other.length_m);
  const used = ({ share }: ReachState) =>
    share === undefined ? '' : `, ${formatShare(share)} of what is allowed`;
  const [was, is] = [length(before, after), length(after, before)];
  const shares = [used(before), used(after)];
  const verdict =
    after.verdict === 'good' || after.verdict === 'not known' ? '' : `: ${verdictWords(after.verdict)}`;
  if (was === is)
    return `${is}${shares[0]} → ${used(after).slice(2) || 'nothing known of what is allowed'}${verdict}`;
  return `${was}${shares[0]} → ${is}${shares[1]}${verdict}`;
}

function verdictWords(verdict: string): string {
  return verdict === 'beyond' ? 'too long' : verdict;
}

const coverNow: Record<CoverState, readonly [one: string, several: string]> = {
  'goes on': ['goes on', 'go on'],
  'back after re-plugging': [
    'is seen again once a spare is plugged',
    'are seen again once a spare is plugged',
  ],
  dark: ['stays dark', 'stay dark'],
};

const coverBefore: Record<CoverState, readonly [one: string, several: string]> = {
  'goes on': ['it went on', 'they went on'],
  'back after re-plugging': [
    'it was seen again once a spare was plugged',
    'they were seen again once a spare was plugged',
  ],
  dark: ['it stayed dark', 'they stayed dark'],
};

/** What fails, as the beginning of the sentence: `When T1 or T2 fails`. */
export function coverTitle([first]: readonly CoverChange[]): string {
  const where = first?.segment ? `In ${first.segment.title}, when` : 'When';
  return `${where} ${titles(first?.losses ?? [], 'or')} fails`;
}

/** Pictures that the same failures hurt in the same way, in one sentence. */
export function coverWords(changes: readonly CoverChange[]): string {
  const [first] = changes;
  if (!first) return '';
  const several = changes.length > 1 ? 1 : 0;
  const pictures = several ? `${changes.length} pictures` : first.title;
  const list = several ? `: ${titles(changes)}` : '';
  return `${pictures} ${coverNow[first.after][several]} now; before, ${coverBefore[first.before][several]}${list}`;
}

export function totalWords(total: Total, currency: string | undefined): string {
  const format = (value: number | undefined, beside: number | undefined) =>
    value === undefined ? 'none' : totalText(total.what, value, beside, currency);
  const limit = total.limit === undefined ? '' : ` of at most ${format(total.limit, undefined)}`;
  const over = total.limit !== undefined && (total.after ?? 0) > total.limit ? ': too much' : '';
  return `${format(total.before, total.after)} → ${format(total.after, total.before)}${limit}${over}${change(total, format)}`;
}

/** By how much, where both are known. */
function change({ before, after }: Total, format: (value: number, beside: undefined) => string): string {
  if (before === undefined || after === undefined) return '';
  const more = after - before;
  return ` (${more > 0 ? '+' : '−'}${format(Math.abs(more), undefined)})`;
}

function totalText(
  what: Total['what'],
  value: number,
  beside: number | undefined,
  currency: string | undefined,
): string {
  if (what === 'cost') return `${Math.round(value * 100) / 100}${currency ? ` ${currency}` : ''}`;
  return what === 'weight' || what === 'case' ? formatWeight(value, beside) : formatPower(value, beside);
}

export function totalTitle({ what, title }: Total): string {
  switch (what) {
    case 'cost':
      return 'Cost';
    case 'weight':
      return 'Weight of all cases';
    case 'power':
      return 'Power in all';
    case 'circuit':
    case 'case':
      return title;
  }
}

export function purchaseWords(
  { change: what, count, length_m }: Purchase,
  { units }: Pick<Review, 'units'>,
): string {
  const pieces = count === 1 ? '1 piece' : `${count} pieces`;
  const length = length_m === undefined ? '' : ` of at least ${formatLength(length_m, units)}`;
  return what === 'to buy' ? `get ${pieces}${length}` : `${pieces}${length} no longer needed`;
}

/** `moved: place platform → annex`. */
export function thingWords({ change: what, was, differences }: ThingChange): string {
  const words = what === 'renamed' ? `renamed from ${was}` : what;
  return differences.length === 0 ? words : `${words}: ${differences.map(differenceWords).join('; ')}`;
}

function differenceWords({ what, before, after }: Difference): string {
  if (before === undefined) return `${what} ${after}`;
  if (after === undefined) return `no longer ${what} ${before}`;
  return `${what} ${before} → ${after}`;
}

/** `T1, T2 and 3 more`; two with the word between. */
export function titles(named: readonly Named[], word = 'and'): string {
  const most = named.length > MOST_NAMES ? MOST_NAMES - 1 : MOST_NAMES;
  const shown = named.slice(0, most).map(({ title }) => title);
  const left = named.length - shown.length;
  if (left > 0) return `${shown.join(', ')} ${word} ${left} more`;
  const last = shown.pop() ?? '';
  return shown.length === 0 ? last : `${shown.join(', ')} ${word} ${last}`;
}
