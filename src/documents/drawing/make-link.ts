import type { Analysis, Link, Port } from '../../analysis/model.ts';
import { formatLength, formatLoss } from '../../physics/display.ts';
import type { Titles } from '../sheets/titles.ts';
import type { DrawnLink } from './choose-things.ts';
import type { Positions } from './positions.ts';
import type { Ribbon, SceneEnd, Trouble, Wire } from './scene.ts';
import { apart, joined, outOf } from './words.ts';

/** Makes the wires of cables that carry one picture, and the ribbons of network links. */
export class LinkMaker {
  readonly #analysis: Analysis;
  readonly #titles: Titles;
  readonly #positions: Positions;

  constructor(analysis: Analysis, titles: Titles, positions: Positions) {
    this.#analysis = analysis;
    this.#titles = titles;
    this.#positions = positions;
  }

  /** @param most as many pictures ride on it at once. */
  wire({ link, from, to }: DrawnLink, most: number): Wire {
    const ofChip = isBesideChip(from, to);
    return {
      id: link.name,
      from: sceneEnd(from),
      to: sceneEnd(to),
      name: this.#ownLabel(link) ?? '',
      text: joined([this.#ownLabel(link), this.#length(link)]),
      bothWays: link.bothWays,
      fromLeft: this.#positions.isLeft(from, to),
      numbers: ofChip && most <= 1 ? 0 : Math.max(1, most),
      trouble: this.#reachTrouble(link),
      standbyFor: this.#standbyFor(link),
    };
  }

  ribbon({ link, from, to }: DrawnLink): Ribbon {
    const trouble = this.#reachTrouble(link);
    return {
      id: link.name,
      from: sceneEnd(from),
      to: sceneEnd(to),
      name: this.#ownLabel(link) ?? '',
      title: joined([this.#ownLabel(link), link.cable && apart(this.#titles.cable(link.cable))]),
      detail: joined([this.#length(link), trouble ? undefined : this.#reach(link)], ', '),
      capacity_bits_per_second: link.chain.capacity_bits_per_second,
      bothWays: link.bothWays,
      fromLeft: this.#positions.isLeft(from, to),
      standbyFor: this.#standbyFor(link),
      trouble,
    };
  }

  #ownLabel(link: Link): string | undefined {
    const label = this.#titles.ownLabel(link);
    return label && apart(label);
  }

  #standbyFor({ standbyFor }: Link): string | undefined {
    return standbyFor && apart(this.#titles.link(standbyFor));
  }

  #length({ length, network }: Link): string | undefined {
    if (length.length_m === undefined) return undefined;
    const measured = network && length.from === 'measured' ? ' measured' : '';
    return this.#metres(length.length_m) + measured;
  }

  #reach({ chain }: Link): string | undefined {
    const reach_m = this.#analysis.reaches[chain.index]?.reach_m;
    return reach_m === undefined ? undefined : `${this.#metres(reach_m)} reach`;
  }

  #metres(length_m: number, beside_m?: number): string {
    return formatLength(length_m, this.#analysis.settings.units, beside_m);
  }

  #reachTrouble(link: Link): Trouble | undefined {
    const reach = this.#analysis.reaches[link.chain.index];
    if (!reach || reach.verdict === 'good' || reach.verdict === 'not known') return undefined;
    const { loss_db, loss_limit_db, reach_m, decidedBy } = reach;
    const { length_m } = link.chain;
    let figures: string | undefined;
    if (decidedBy === 'loss' && loss_db !== undefined && loss_limit_db !== undefined)
      figures = outOf(formatLoss(loss_db, loss_limit_db), formatLoss(loss_limit_db, loss_db));
    else if (length_m !== undefined && reach_m !== undefined)
      figures = outOf(this.#metres(length_m, reach_m), this.#metres(reach_m, length_m));
    const words = verdictWords[reach.verdict];
    return {
      grave: reach.verdict === 'beyond',
      text: figures === undefined ? words : `${words}: ${figures}`,
    };
  }
}

const verdictWords = { beyond: 'too long', doubtful: 'doubtful', 'near the limit': 'near its limit' };

/** In one room with the source or destination that it is plugged into, whose number stands at its end. */
function isBesideChip(from: Port, to: Port): boolean {
  return (
    from.owner.place === to.owner.place && (from.owner.kind === 'source' || to.owner.kind === 'destination')
  );
}

function sceneEnd({ owner, text }: Port): SceneEnd {
  return { box: owner.name, port: text };
}
