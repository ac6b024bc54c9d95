import { add } from '../../analysis/lists.ts';
import type { Link, LinkEnd } from '../../analysis/model.ts';
import type { Comparison } from './comparison.ts';
import { lookSteps } from './look.ts';
import { OutputChanges } from './output-changes.ts';
import { type Box, type BoxPair, type EndMove, type Patching, patchingOf } from './patching.ts';
import type { Step } from './review.ts';
import { type Effect, type ReadySpot, Running, titlesOf } from './running.ts';
import { type Said, StepWords } from './step-words.ts';

/**
 * What to do on site, in an order in which no running picture goes dark unless it must: write new names on things; set up
 * and set what is new; lay every
 * cable, and plug those whose sockets are free; switch over what can run its new way; then one socket after another,
 * those first over which nothing runs any more; take out what is no longer needed; look at every screen that changed.
 */
export function stepsOf(comparison: Comparison): Step[] {
  return new Ordering(comparison).steps();
}

const nothing: Effect = { dark: [], ends: [] };

class Ordering {
  readonly #comparison: Comparison;
  readonly #patching: Patching;
  readonly #words: StepWords;
  readonly #running: Running;
  readonly #outputs: OutputChanges;
  readonly #steps: Step[] = [];
  /** What is in each socket of the old plan that has to come out: a cable, or one end of a cable. */
  readonly #inSocket = new Map<string, Link | EndMove>();
  readonly #pulled = new Set<Link>();
  readonly #moved = new Set<EndMove>();
  /** Both ends of a cable may move. */
  readonly #endsOf = new Map<Link, EndMove[]>();
  /** Cables of the new plan whose sockets are not free yet, by each of these sockets. */
  readonly #wanting = new Map<string, Link[]>();
  readonly #waiting: Set<Link>;
  /** Boxes that are not where their new cables expect them. */
  readonly #away: Set<Box>;
  readonly #interrupted = new Set<string>();
  /** Ends of cables that hang free. */
  readonly #loose = new Set<EndMove>();
  readonly #goneAt: ReadonlyMap<Box, readonly Link[]>;
  readonly #comeAt: ReadonlyMap<Box, readonly Link[]>;

  constructor(comparison: Comparison) {
    this.#comparison = comparison;
    this.#patching = patchingOf(comparison);
    this.#words = new StepWords(comparison, this.#patching);
    this.#outputs = new OutputChanges(comparison, this.#patching.replacing);
    const { gone, come, moves, carried } = this.#patching;
    this.#running = new Running(comparison, new Set([...come, ...moves.map(({ after }) => after)]));
    this.#waiting = new Set(come);
    this.#goneAt = byBox(gone);
    this.#comeAt = byBox(come);
    this.#away = new Set(carried.map(({ after }) => after));
    for (const link of gone) for (const end of [link.from, link.to]) this.#inSocket.set(this.#old(end), link);
    for (const move of moves) {
      this.#inSocket.set(this.#old(move.leaves), move);
      add(this.#endsOf, move.after, move);
    }
  }

  steps(): Step[] {
    const { newBoxes, oldBoxes, carried, repowered, sparesLaid, sparesTakenUp, gone } = this.#patching;
    for (const said of this.#words.labels()) this.#add(said);
    for (const box of newBoxes) {
      this.#add(this.#words.setUp(box));
      const settings = this.#words.prepare(box, this.#outputs.takeOf(box));
      if (settings) this.#add(settings);
    }
    this.#plugWhatIsFree();
    for (const link of sparesLaid) this.#add(this.#words.laySpare(link));
    for (const pair of repowered) this.#repower(pair);
    this.#switchOver();
    for (const pair of carried) this.#carry(pair);
    this.#workThroughSockets();
    for (const link of gone) this.#unplug(link);
    for (const link of sparesTakenUp) this.#add(this.#words.takeUp(link));
    for (const pair of this.#patching.staying) for (const said of this.#words.settings(pair)) this.#add(said);
    for (const box of oldBoxes) this.#add(this.#words.takeOut(box));
    this.#steps.push(...lookSteps(this.#comparison, this.#interrupted));
    return this.#steps;
  }

  /** Plugs every new cable that nothing keeps out; of the others lays those that have a way to be laid. */
  #plugWhatIsFree(): void {
    for (const link of this.#patching.come) {
      if (this.#canPlug(link)) this.#plug(link, this.#patching.laidAlready.has(link) ? 'lies' : 'new');
      else {
        for (const end of [link.from, link.to]) add(this.#wanting, end.text, link);
        if (this.#words.hasWay(link) && !this.#patching.laidAlready.has(link) && !this.#isAway(link))
          this.#add(this.#words.lay(link));
      }
    }
  }

  #isAway({ from, to }: Link): boolean {
    return [from, to].some(({ port }) => port !== undefined && this.#away.has(port.owner));
  }

  #canPlug(link: Link): boolean {
    return !this.#isAway(link) && [link.from, link.to].every((end) => this.#occupant(end.text) === undefined);
  }

  /** What still has to come out of a socket. */
  #occupant(socket: string): Link | EndMove | undefined {
    const occupant = this.#inSocket.get(socket);
    if (occupant === undefined) return undefined;
    const out = isMove(occupant) ? this.#moved.has(occupant) : this.#pulled.has(occupant);
    return out ? undefined : occupant;
  }

  #plug(link: Link, state: 'new' | 'lies'): void {
    this.#waiting.delete(link);
    this.#running.plug(link);
    this.#add(this.#words.plug(link, state), nothing);
  }

  /** Sets the outputs of every picture whose new way has become whole, and says what comes back. */
  #switchOver(): void {
    const ready = this.#running.takeReady();
    const isToSet = new Set(ready.filter(({ delivery }) => this.#outputs.isWaiting(delivery)));
    const toSet = [...isToSet];
    const asIs = ready.filter((one) => !isToSet.has(one));
    this.#comeBack(asIs);
    for (const change of this.#outputs.take(toSet.map(({ delivery }) => delivery)))
      this.#add(this.#words.set(change));
    this.#comeBack(toSet);
  }

  /** Says with the last step what comes back with it. */
  #comeBack(spots: readonly ReadySpot[]): void {
    const back = titlesOf(spots.filter(({ wasDark }) => wasDark));
    const last = this.#steps.at(-1);
    if (back.length > 0 && last)
      this.#steps[this.#steps.length - 1] = { ...last, back: [...last.back, ...back] };
  }

  #repower(pair: BoxPair): void {
    const was = new Set(pair.before.poweredBy.map(({ name }) => this.#comparison.renames.of('things', name)));
    const keepsPower = was.size === 0 || pair.after.poweredBy.some(({ name }) => was.has(name));
    const off = keepsPower ? [] : this.#running.through([pair.before, pair.after]);
    for (const title of off) this.#interrupted.add(title);
    this.#add(this.#words.repower(pair), { dark: off, ends: [] }, off);
  }

  /** Takes a box and everything plugged into it elsewhere. */
  #carry(pair: BoxPair): void {
    for (const link of this.#goneAt.get(pair.before) ?? []) this.#unplug(link);
    this.#add(this.#words.carry(pair));
    this.#away.delete(pair.after);
    for (const link of this.#comeAt.get(pair.after) ?? [])
      if (this.#waiting.has(link) && this.#canPlug(link)) this.#plug(link, 'new');
    this.#switchOver();
  }

  /** First what disturbs no picture, then the rest in order of the plan. */
  #workThroughSockets(): void {
    for (const needed of [false, true]) {
      for (const move of this.#patching.moves) if (needed || !this.#disturbs(move)) this.#move(move);
      for (const link of [...this.#waiting])
        if (this.#waiting.has(link) && (needed || !this.#disturbs(link))) this.#makeRoomAndPlug(link);
    }
  }

  #disturbs(task: Link | EndMove): boolean {
    if (isMove(task)) {
      const there = this.#occupant(task.goesTo.text);
      return this.#running.isNeeded(task.before) || (there !== undefined && this.#needs(there));
    }
    return [task.from, task.to].some((end) => {
      const there = this.#occupant(end.text);
      return there !== undefined && this.#needs(there);
    });
  }

  #needs(occupant: Link | EndMove): boolean {
    return this.#running.isNeeded(isMove(occupant) ? occupant.before : occupant);
  }

  #makeRoomAndPlug(link: Link): void {
    for (const end of [link.from, link.to]) this.#clear(end.text);
    if (this.#waiting.has(link)) this.#plug(link, this.#words.hasWay(link) ? 'lies' : 'new');
    this.#switchOver();
  }

  /** Empties a socket: pulls the cable that is in it, or moves its end on to where it belongs. */
  #clear(socket: string): void {
    const occupant = this.#occupant(socket);
    if (occupant === undefined) return;
    if (isMove(occupant)) this.#move(occupant);
    else this.#unplug(occupant);
  }

  /**
   * Moves the end of a cable. What is in its new socket goes first, and so on; where that comes back to the beginning,
   * one end hangs free meanwhile.
   */
  #move(first: EndMove): void {
    if (this.#moved.has(first)) return;
    const chain: EndMove[] = [first];
    const inChain = new Set(chain);
    for (;;) {
      const occupant = this.#occupant(chain.at(-1)!.goesTo.text);
      if (occupant === undefined) break;
      if (!isMove(occupant)) {
        this.#unplug(occupant);
        break;
      }
      if (inChain.has(occupant)) {
        this.#loosen(occupant);
        break;
      }
      chain.push(occupant);
      inChain.add(occupant);
    }
    for (const move of chain.reverse()) this.#moveEnd(move);
  }

  #loosen(move: EndMove): void {
    this.#moved.add(move);
    this.#loose.add(move);
    this.#add(this.#words.loosen(move), this.#running.unplug(move.before));
  }

  #moveEnd(move: EndMove): void {
    const loose = this.#loose.delete(move);
    if (this.#moved.has(move) && !loose) return;
    this.#moved.add(move);
    const effect = loose ? nothing : this.#running.unplug(move.before);
    this.#add(loose ? this.#words.plugEnd(move) : this.#words.move(move), effect);
    const isPlugged = this.#endsOf
      .get(move.after)!
      .every((end) => this.#moved.has(end) && !this.#loose.has(end));
    if (isPlugged) this.#running.plug(move.after);
    this.#switchOver();
    this.#plugWaitingAt(this.#old(move.leaves));
  }

  #unplug(link: Link): void {
    if (this.#pulled.has(link)) return;
    this.#pulled.add(link);
    const staysLying = this.#patching.unpluggedOnly.has(link);
    this.#add(this.#words.unplug(link, staysLying), this.#running.unplug(link));
    for (const end of [link.from, link.to]) this.#plugWaitingAt(this.#old(end));
  }

  /** A socket has become free: what waited for it may be plugged now. */
  #plugWaitingAt(socket: string): void {
    for (const link of this.#wanting.get(socket) ?? []) {
      if (!this.#waiting.has(link) || !this.#canPlug(link)) continue;
      this.#plug(link, this.#words.hasWay(link) ? 'lies' : 'new');
      this.#switchOver();
    }
  }

  #old(end: LinkEnd): string {
    return this.#patching.oldSocket(end);
  }

  #add(said: Said, { dark, ends }: Effect = nothing, back: readonly string[] = []): void {
    for (const title of dark) this.#interrupted.add(title);
    this.#steps.push({ ...said, dark, back, ends });
  }
}

function byBox(links: readonly Link[]): Map<Box, Link[]> {
  const at = new Map<Box, Link[]>();
  for (const link of links) for (const end of [link.from, link.to]) add(at, end.port!.owner, link);
  return at;
}

function isMove(task: Link | EndMove): task is EndMove {
  return 'goesTo' in task;
}
