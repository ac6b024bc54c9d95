/** Random work in a workspace, compared after each step with the same files read afresh. */
import { readdirSync, readFileSync } from 'node:fs';
import { everyStatement } from '../support/every-statement.ts';
import { smallPlan } from '../support/small-plan.ts';
import { Typist, wildEdit } from './edits.ts';
import type { Random } from './random.ts';
import { type Action, Comparison, type Edit, type Script } from './script.ts';

export interface Outcome {
  readonly edits: number;
  /** The files and everything done to them up to the difference. */
  readonly failure?: { readonly script: Script; readonly difference: string };
}

/** Sets of files that belong together: each example, and one with every statement in two files. */
const folders: readonly Script['files'][] = [
  ...readdirSync('examples', { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => filesBelow(`examples/${entry.name}`)),
  {
    'show.feedplot': `${everyStatement.slice(0, 14).join('\n')}\nimport "other.feedplot"\n`,
    'other.feedplot': `import "show.feedplot"\nimport "missing.feedplot"\n${everyStatement.slice(14).join('\n')}\n`,
  },
];

/** A few statements in one file, or in two that import each other: quick to compare, so that many can be. */
function smallFiles(random: Random): Script['files'] {
  const [head, ...others] = smallPlan;
  const share = 2 + random.below(4);
  const lines = [...others, ...(random.below(3) === 0 ? everyStatement : [])].filter(
    () => random.below(share) === 0,
  );
  const cut = random.below(2) === 0 ? lines.length : random.below(lines.length + 1);
  const show = [head, ...(cut < lines.length ? ['import "other.feedplot"'] : []), ...lines.slice(0, cut)];
  const other = lines.slice(cut);
  return {
    'show.feedplot': `${show.join('\n')}\n`,
    ...(other.length > 0 && { 'other.feedplot': `${other.join('\n')}\n` }),
  };
}

function filesBelow(folder: string): Record<string, string> {
  const names = readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();
  const plans = names.filter((name) => name.endsWith('.feedplot'));
  return Object.fromEntries(plans.map((name) => [name, readFileSync(`${folder}/${name}`, 'utf8')]));
}

/** So much may a file grow before the round ends: what is slow to read afresh is slow to compare. */
const MOST_CHARACTERS = 12_000;
/** The same for a small plan. */
const MOST_OF_SMALL = 2_500;

/**
 * Works at random until so many edits are made or something differs.
 *
 * @param small In how many of a hundred rounds the plan is a small one.
 * @param onEdit Is told of each that is made and compared.
 */
export async function run(random: Random, edits: number, small = 60, onEdit?: () => void): Promise<Outcome> {
  const comparison = await Comparison.begin();
  let done = 0;
  while (done < edits) {
    const round = new Round(random, comparison, small);
    await comparison.restart(round.script.files);
    const length = Math.min(edits - done, 20 + random.below(60));
    for (let i = 0; i < length && !round.isTooLong(); i++) {
      const action = round.next();
      try {
        await comparison.act(action);
        const difference = await comparison.difference(comparison.places(random, 4));
        if (difference) return { edits: done, failure: { script: round.script, difference } };
      } catch (error) {
        const difference = error instanceof Error ? (error.stack ?? error.message) : String(error);
        return { edits: done, failure: { script: round.script, difference } };
      }
      done++;
      onEdit?.();
    }
  }
  return { edits: done };
}

class Round {
  readonly #random: Random;
  readonly #comparison: Comparison;
  readonly #files: Script['files'];
  readonly #actions: Action[] = [];
  readonly #most: number;
  readonly #typist: Typist | undefined;
  readonly #undo = new Map<string, Edit[]>();

  constructor(random: Random, comparison: Comparison, small: number) {
    this.#random = random;
    this.#comparison = comparison;
    const isSmall = random.below(100) < small;
    this.#most = isSmall ? MOST_OF_SMALL : MOST_CHARACTERS;
    const files = Object.entries(isSmall ? smallFiles(random) : random.pick(folders));
    const lineEnds = random.below(4) === 0 ? '\r\n' : '\n';
    this.#files = Object.fromEntries(files.map(([name, text]) => [name, text.replaceAll('\n', lineEnds)]));
    this.#typist = random.below(3) === 0 ? new Typist() : undefined;
  }

  get script(): Script {
    return { files: this.#files, actions: this.#actions };
  }

  isTooLong(): boolean {
    return [...this.#comparison.edited.texts().values()].some((text) => text.length > this.#most);
  }

  next(): Action {
    const action = this.#draw();
    this.#actions.push(action);
    return action;
  }

  #draw(): Action {
    const random = this.#random;
    const { edited } = this.#comparison;
    const names = [...edited.texts().keys()].map((uri) =>
      decodeURIComponent(uri.slice('file:///show/'.length)),
    );
    const open = names.filter((name) => edited.openText(name));
    if (open.length === 0 || random.below(25) === 0) {
      const name = random.pick([...names, 'new.feedplot', 'missing.feedplot']);
      const text =
        edited.openText(name)?.getText() ?? edited.disk.files.get(edited.uri(name).toString()) ?? '';
      return { do: 'open', name, text: random.below(5) === 0 ? `${text}\nplace opened` : text };
    }
    if (random.below(40) === 0) return { do: 'close', name: random.pick(open) };
    if (random.below(25) === 0) return this.#changeOnDisk(names);
    return this.#type(random.pick(open));
  }

  #changeOnDisk(names: readonly string[]): Action {
    const random = this.#random;
    const { disk, uri } = { disk: this.#comparison.edited.disk.files, uri: this.#comparison.edited };
    const name = random.pick([...names, 'new.feedplot']);
    const text = disk.get(uri.uri(name).toString());
    const drawn = random.below(4);
    if (text === undefined || drawn === 0)
      return { do: 'disk', files: { [name]: this.#files[name] ?? 'place new\n' } };
    if (drawn === 1) return { do: 'disk', files: { [name]: null } };
    if (drawn === 2) return { do: 'disk', files: { [name]: null, 'renamed.feedplot': text } };
    const { start, end, text: by } = wildEdit(text, random);
    return { do: 'disk', files: { [name]: text.slice(0, start) + by + text.slice(end) } };
  }

  #type(name: string): Action {
    const random = this.#random;
    let text = this.#comparison.edited.openText(name)!.getText();
    const undo = this.#undo.get(name) ?? [];
    this.#undo.set(name, undo);
    const edits: Edit[] = [];
    const count = this.#typist || random.below(12) > 0 ? 1 : 2 + random.below(40);
    for (let i = 0; i < count; i++) {
      const back = !this.#typist && random.below(3) === 0 ? undo.pop() : undefined;
      const { start, end, text: by } = back ?? this.#typist?.next(text, random) ?? wildEdit(text, random);
      const edit = { start: Math.min(start, text.length), end: Math.min(end, text.length), text: by };
      if (!back)
        undo.push({ start: edit.start, end: edit.start + by.length, text: text.slice(edit.start, edit.end) });
      text = text.slice(0, edit.start) + by + text.slice(edit.end);
      edits.push(edit);
    }
    return { do: 'type', name, edits };
  }
}
