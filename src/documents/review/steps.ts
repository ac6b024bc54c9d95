import { arrivingIn } from '../../analysis/holding.ts';
import type { Analysis, Link, LinkEnd, Owner, Port, Situation } from '../../analysis/model.ts';
import { type OutputSetting, outputSettingsIn } from '../../analysis/output-settings.ts';
import { formatLength } from '../../physics/display.ts';
import type { LinkPair } from './link-pairs.ts';
import type { Matching } from './matching.ts';
import type { Step } from './review.ts';

/**
 * What to do on site, in an order in which no running picture goes dark unless it must: set up what is new; lay and plug
 * every cable whose sockets are free; then, one socket at a time, pull the old cable out and put the new one in, telling
 * which pictures are dark meanwhile; set the boxes; take out what is no longer needed; look at every screen that changed.
 */
export function stepsOf(
  old: Analysis,
  fresh: Analysis,
  matching: Matching,
  links: readonly LinkPair[],
): Step[] {
  return new Plan(old, fresh, matching, links).steps();
}

class Plan {
  readonly #old: Analysis;
  readonly #fresh: Analysis;
  readonly #matching: Matching;
  readonly #gone: Link[];
  readonly #come: Link[];
  /** Where in the old plan a socket's cable goes, by the socket's new name. */
  readonly #oldLinkAt = new Map<string, Link>();
  readonly #steps: Step[] = [];

  constructor(old: Analysis, fresh: Analysis, matching: Matching, links: readonly LinkPair[]) {
    this.#old = old;
    this.#fresh = fresh;
    this.#matching = matching;
    const replugged = links.filter(({ before, after }) => before && after && this.#differs(before, after));
    this.#gone = [...links.filter(({ after }) => !after), ...replugged]
      .map(({ before }) => before!)
      .filter((link) => !isLoose(link));
    this.#come = [...links.filter(({ before }) => !before), ...replugged]
      .map(({ after }) => after!)
      .filter((link) => !isLoose(link));
    for (const link of this.#gone)
      for (const end of [link.from, link.to]) this.#oldLinkAt.set(this.#newText(end), link);
  }

  steps(): Step[] {
    this.#setUp();
    const pulled = new Set<Link>();
    const waiting = this.#come.filter((link) => !this.#plugNow(link, pulled));
    for (const link of waiting) {
      const inTheWay = new Set([link.from, link.to].flatMap((end) => this.#inTheWay(end, pulled)));
      for (const oldLink of inTheWay) this.#unplug(oldLink, pulled);
      this.#plugNow(link, pulled);
    }
    this.#switchOutputs();
    for (const link of this.#gone) if (!pulled.has(link)) this.#unplug(link, pulled);
    this.#takeOut();
    this.#look();
    return this.#steps;
  }

  #setUp(): void {
    const before = new Set([...owners(this.#old)].map((owner) => this.#matching.newName(owner.name)));
    for (const owner of owners(this.#fresh)) {
      if (before.has(owner.name) || isOutput(owner)) continue;
      const power =
        owner.poweredBy.length > 0 ? `, powered by ${owner.poweredBy.map(called).join(' and ')}` : '';
      this.#add('set up', placeName(owner), `Set up ${called(owner)}${kitText(owner)}${power}.`);
    }
    const oldPlace = new Map(
      [...owners(this.#old)].map((owner) => [this.#matching.newName(owner.name), owner]),
    );
    for (const owner of owners(this.#fresh)) {
      const was = oldPlace.get(owner.name);
      if (!was?.place || !owner.place || this.#matching.newName(was.place.name) === owner.place.name)
        continue;
      this.#add('set up', placeName(owner), `Carry ${called(owner)} from ${placeName(was)} to here.`);
    }
  }

  /** Lays and plugs a cable when nothing else is in its two sockets. */
  #plugNow(link: Link, pulled: ReadonlySet<Link>): boolean {
    if ([link.from, link.to].some((end) => this.#inTheWay(end, pulled).length > 0)) return false;
    const length =
      link.length.length_m === undefined
        ? ''
        : `${formatLength(link.length.length_m, this.#fresh.settings.units)} `;
    const route =
      link.length.runs.length > 0 ? `, along ${link.length.runs.map((run) => run.name).join(', ')}` : '';
    const standby = link.standbyFor ? ` It stays unplugged as a spare for ${link.standbyFor.name}.` : '';
    const verb = link.standbyFor ? 'Lay' : 'Plug';
    this.#add(
      link.standbyFor ? 'lay' : 'plug',
      endPlace(link.from),
      `${verb} ${length}${link.cable?.name ?? 'a cable'}${nameText(link)} from ${endText(link.from)} to ${endText(link.to)}${farText(link)}${route}.${standby}`,
    );
    return true;
  }

  /** The old cable in a socket that has not been pulled yet. */
  #inTheWay(end: LinkEnd, pulled: ReadonlySet<Link>): Link[] {
    const link = this.#oldLinkAt.get(end.text);
    return link && !pulled.has(link) ? [link] : [];
  }

  #unplug(link: Link, pulled: Set<Link>): void {
    pulled.add(link);
    const dark = this.#darkWithout(link);
    this.#add(
      'unplug',
      endPlace(link.from),
      `Unplug ${link.cable?.name ?? 'the cable'}${nameText(link)} between ${endText(link.from)} and ${endText(link.to)}${farText(link)}.`,
      dark,
    );
  }

  /** Targets whose picture comes over a cable now. */
  #darkWithout(link: Link): string[] {
    const base = this.#old.situations[0];
    if (!base) return [];
    const dark = arrivingIn(this.#old, base).filter(
      ({ routes }) =>
        routes.length > 0 && routes.every((route) => route.steps.some((step) => step.link === link)),
    );
    return [...new Set(dark.map(({ feed }) => targetTitle(feed.target) ?? feed.targetName))];
  }

  #switchOutputs(): void {
    const [was, is] = [this.#old.situations[0], this.#fresh.situations[0]];
    if (!was || !is) return;
    const before = settingsOf(this.#old, was, this.#matching.newName);
    for (const setting of outputSettingsIn(this.#fresh, is)) {
      const shows = before.get(setting.output.text);
      if (shows === setting.shows.name) continue;
      const instead = shows === undefined ? '' : ` instead of ${titleOfSource(this.#fresh, shows)}`;
      this.#add(
        'switch',
        placeName(setting.node),
        `On ${called(setting.node)} set ${portText(setting.output)} to ${called(setting.shows)}${instead}.`,
      );
    }
  }

  #takeOut(): void {
    const left = new Set([...owners(this.#fresh)].map((owner) => owner.name));
    for (const owner of owners(this.#old)) {
      if (left.has(this.#matching.newName(owner.name)) || isOutput(owner)) continue;
      this.#add('take out', placeName(owner), `${called(owner)} is no longer needed.`);
    }
  }

  /** Every screen that shows something else, or the same by another way, is looked at last. */
  #look(): void {
    const [was, is] = [this.#old.situations[0], this.#fresh.situations[0]];
    if (!was || !is) return;
    const before = new Map(
      arrivingIn(this.#old, was).map((delivery) => [this.#newName(delivery.feed.targetName), delivery]),
    );
    for (const delivery of arrivingIn(this.#fresh, is)) {
      const old = before.get(delivery.feed.targetName);
      const same =
        old &&
        this.#newName(old.feed.sourceName) === delivery.feed.sourceName &&
        old.routes.flatMap((r) => r.steps).length === delivery.routes.flatMap((r) => r.steps).length &&
        !this.#steps.some((step) => step.dark.includes(targetTitle(delivery.feed.target) ?? ''));
      if (same || !delivery.feed.source) continue;
      const target = delivery.feed.target;
      const owner = target && ('takes' in target ? target : target.owner);
      this.#add(
        'look',
        owner?.place ? placeName(owner) : '',
        `Look at ${targetTitle(target) ?? delivery.feed.targetName}: it shows ${called(delivery.feed.source)}.`,
      );
    }
  }

  #add(kind: Step['kind'], place: string, text: string, dark: readonly string[] = []): void {
    this.#steps.push({ kind, place, text, dark });
  }

  #newName(text: string): string {
    const [thing = '', port] = text.split('.');
    const name = this.#matching.newName(thing);
    return port === undefined ? name : `${name}.${port}`;
  }

  #newText({ text }: LinkEnd): string {
    return this.#newName(text);
  }

  /** Whether hands have to touch the cable: other sockets, or another kind of cable. */
  #differs(before: Link, after: Link): boolean {
    const ends = [this.#newText(before.from), this.#newText(before.to)].sort().join();
    if (ends !== [after.from.text, after.to.text].sort().join()) return true;
    return (before.cable?.name ?? '') !== (after.cable?.name ?? '');
  }
}

/** A cable with an unknown end, or an installed one that nobody plugs. */
function isLoose({ from, to }: Link): boolean {
  return from.port === undefined || to.port === undefined;
}

function* owners(analysis: Analysis): Iterable<Owner> {
  yield* analysis.nodes.values();
  yield* analysis.sources.values();
  yield* analysis.destinations.values();
}

/** A source that is a node's output is no thing that anybody carries. */
function isOutput(owner: Owner): boolean {
  return 'from' in owner && owner.from !== undefined;
}

function called({
  name,
  statement,
}: {
  readonly name: string;
  readonly statement: { readonly label: string | undefined };
}): string {
  return statement.label === undefined ? name : `${statement.label} (${name})`;
}

function kitText({ kit }: Owner): string {
  return kit ? `, ${kit.statement.label ?? kit.name}` : '';
}

function placeName({ place }: Owner): string {
  return place ? (place.statement.label ?? place.name) : 'place not known';
}

function endPlace({ port }: LinkEnd): string {
  return port ? placeName(port.owner) : 'place not known';
}

function endText({ port, text }: LinkEnd): string {
  if (!port) return text;
  return port.name === '' ? called(port.owner) : `${called(port.owner)}, ${portText(port)}`;
}

function portText({ name, label }: Port): string {
  return label === undefined ? `socket ${name}` : `socket ${name} "${label}"`;
}

/** Where the far end is, when that is another place. */
function farText({ from, to }: Link): string {
  const [near, far] = [endPlace(from), endPlace(to)];
  return near === far ? '' : ` in ${far}`;
}

function nameText({ named, name, statement }: Link): string {
  return named ? ` ${statement.label ?? name}` : '';
}

function targetTitle(
  target:
    | Port
    | { readonly name: string; readonly statement: { readonly label: string | undefined } }
    | undefined,
): string | undefined {
  if (!target) return undefined;
  return 'owner' in target ? `${called(target.owner)}, ${portText(target)}` : called(target);
}

function settingsOf(
  analysis: Analysis,
  situation: Situation,
  newName: (name: string) => string,
): Map<string, string> {
  const entries = outputSettingsIn(analysis, situation).map(
    ({ output, shows }: OutputSetting): [string, string] => {
      const [node = '', port = ''] = output.text.split('.');
      return [`${newName(node)}.${port}`, newName(shows.name)];
    },
  );
  return new Map(entries);
}

function titleOfSource({ sources }: Analysis, name: string): string {
  const source = sources.get(name);
  return source ? called(source) : name;
}
