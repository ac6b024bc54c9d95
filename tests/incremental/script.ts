/** What happens to a workspace, written down so that it can be done again. */
import { firstDifference } from './dump.ts';
import type { Random } from './random.ts';
import { type Place, Workspace } from './workspace.ts';

export type Action =
  | { readonly do: 'open'; readonly name: string; readonly text: string }
  | { readonly do: 'type'; readonly name: string; readonly edits: readonly Edit[] }
  | { readonly do: 'close'; readonly name: string }
  /** Files written, changed or (null) deleted outside the editor. */
  | { readonly do: 'disk'; readonly files: Readonly<Record<string, string | null>> };

export interface Edit {
  readonly start: number;
  readonly end: number;
  readonly text: string;
}

export interface Script {
  /** What lies in the folder at the beginning. */
  readonly files: Readonly<Record<string, string>>;
  readonly actions: readonly Action[];
}

/** A workspace that is worked in, and one that is read afresh after each action to compare it with. */
export class Comparison {
  #edited = new Workspace();
  readonly #fresh: Workspace;

  private constructor(fresh: Workspace) {
    this.#fresh = fresh;
  }

  static async begin(): Promise<Comparison> {
    const fresh = new Workspace();
    await fresh.start();
    return new Comparison(fresh);
  }

  get edited(): Workspace {
    return this.#edited;
  }

  async restart(files: Script['files']): Promise<void> {
    this.#edited = new Workspace();
    for (const [name, text] of Object.entries(files))
      this.#edited.disk.files.set(this.#edited.uri(name).toString(), text);
    await this.#edited.start();
  }

  async act(action: Action): Promise<void> {
    const { edited } = this;
    if (action.do === 'open') await edited.open(action.name, action.text);
    else if (action.do === 'close') await edited.close(action.name);
    else if (action.do === 'type') await edited.type(action.name, within(action.edits, edited, action.name));
    else await edited.change(Object.entries(action.files).map(([name, text]) => [name, text ?? undefined]));
  }

  /** How the workspace differs from one that has just been opened; undefined when it does not. */
  async difference(places: readonly Place[]): Promise<string | undefined> {
    const fresh = this.#fresh;
    for (const uri of fresh.disk.files.keys())
      if (fresh.openText(nameOf(uri))) await fresh.close(nameOf(uri));
    await fresh.change([...fresh.disk.files.keys()].map((uri) => [nameOf(uri), undefined]));
    fresh.findings.clear();
    await fresh.change([...this.edited.texts()].map(([uri, text]) => [nameOf(uri), text]));
    // A mark at the beginning is taken off what comes from the disk, and kept in what an editor has open.
    for (const [uri, text] of this.edited.texts())
      if (text.startsWith('\uFEFF') && this.edited.openText(nameOf(uri))) await fresh.open(nameOf(uri), text);
    return firstDifference(await this.edited.lookAt(places), await fresh.lookAt(places));
  }

  /** A few places to hover over: anywhere in any file. */
  places(random: Random, count: number): Place[] {
    const texts = [...this.edited.texts()];
    return Array.from({ length: texts.length === 0 ? 0 : count }, () => {
      const [uri, text] = random.pick(texts);
      return { uri, offset: random.below(text.length + 1) };
    });
  }
}

function nameOf(uri: string): string {
  return decodeURIComponent(uri.slice('file:///show/'.length));
}

/** A shortened script may speak of places that are no longer there. */
function within(edits: readonly Edit[], workspace: Workspace, name: string): Edit[] {
  const length = workspace.openText(name)?.getText().length ?? 0;
  let grown = 0;
  return edits.map(({ start, end, text }) => {
    const most = length + grown;
    const from = Math.min(start, most);
    const to = Math.min(Math.max(from, end), most);
    grown += text.length - (to - from);
    return { start: from, end: to, text };
  });
}

/** Does everything again and looks after each action. @returns the first difference, in words. */
export async function replay(script: Script, random: Random): Promise<string | undefined> {
  const comparison = await Comparison.begin();
  await comparison.restart(script.files);
  for (const [i, action] of script.actions.entries()) {
    const isOpen = action.do === 'disk' || action.do === 'open' || comparison.edited.openText(action.name);
    if (!isOpen) continue;
    await comparison.act(action);
    const difference = await comparison.difference(comparison.places(random, 20));
    if (difference) return `After action ${i}: ${difference}`;
  }
  return undefined;
}
