import { existsSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { mergeReviewOf, reviewOf } from '../documents/review/compare.ts';
import { reviewHtml } from '../documents/review/html.ts';
import { reviewJson } from '../documents/review/json.ts';
import { reviewMarkdown } from '../documents/review/markdown.ts';
import type { Side } from '../documents/review/review.ts';
import { reviewText } from '../documents/review/text.ts';
import { GitTrouble } from '../server/git/git.ts';
import { readPlanThen } from '../server/git/plan-then.ts';
import { type Commit, Repository } from '../server/git/repository.ts';
import { fileUri, nameFrom } from './file-uri.ts';
import { findPlan } from './find-plan.ts';
import { type OpenPlan, openPlan, PlanReader } from './open-plan.ts';
import type { Define } from './program.ts';
import type { Terminal } from './terminal.ts';
import { EXIT_FINDINGS, Trouble } from './trouble.ts';

const outputs = ['text', 'markdown', 'json', 'html'] as const;

interface Options {
  readonly since?: string;
  readonly merge?: true;
  readonly output: (typeof outputs)[number];
}

/** `feedplot review`: what a change does to the show. */
export const define: Define = (command, { terminal, program }) => {
  command
    .usage('[options] OLD NEW | --since REVISION [PLAN] | --merge [PLAN]')
    .argument(
      '[first]',
      'the plan before, or with --since and --merge the plan; without it, the one in this folder',
    )
    .argument('[second]', 'the plan after')
    .option(
      '--since <revision>',
      'compare with how the plan stood at a commit, branch or tag (REVISION:PATH)',
    )
    .option('--merge', 'tell what a merge brings that none of the merged histories has alone')
    .addOption(command.createOption('--output <form>', 'how it is printed').choices(outputs).default('text'))
    .action(async (first: string | undefined, second: string | undefined, options: Options) => {
      const reviewer = new Reviewer(new PlanReader(program), terminal);
      try {
        const compared = await compare(reviewer, first, second, options);
        await write(compared, options.output, terminal);
        if (compared.fresh.findings.some(({ severity }) => severity === 'error'))
          process.exitCode = EXIT_FINDINGS;
      } catch (error) {
        if (error instanceof GitTrouble) throw new Trouble(error.message);
        throw error;
      }
    });
};

/** Two plans to compare; several old ones of a merge, the one that was merged into first. */
interface Compared {
  readonly old: Side;
  readonly fresh: Side;
  readonly others: readonly Side[];
  /** Nobody asked what a merge brings: it is told only where it brings something. */
  readonly mergeIsAside: boolean;
  /** The folder from which files are named. */
  readonly root: string;
}

function compare(
  reviewer: Reviewer,
  first: string | undefined,
  second: string | undefined,
  { since, merge }: Options,
): Promise<Compared> | Compared {
  if (since !== undefined && merge) throw new Trouble('Use --since or --merge, not both.');
  if (since !== undefined || merge) {
    if (second !== undefined)
      throw new Trouble(
        `With ${merge ? '--merge' : '--since'} only one plan is named: the one as it is now.`,
      );
    return merge ? reviewer.merge(first) : reviewer.since(since!, first);
  }
  if (first === undefined || second === undefined)
    throw new Trouble(
      'Name two plans, the one before and the one after; or compare with a commit: `feedplot review --since REVISION`.',
    );
  return reviewer.files(first, second);
}

class Reviewer {
  readonly #reader: PlanReader;
  readonly #terminal: Terminal;

  constructor(reader: PlanReader, terminal: Terminal) {
    this.#reader = reader;
    this.#terminal = terminal;
  }

  files(first: string, second: string): Compared {
    const [old, fresh] = [first, second].map((named): Side => {
      const { path } = findPlan(this.#reader, this.#terminal.folder, named);
      const plan = this.#reader.plan(path);
      return { ...plan, name: nameFrom(this.#terminal.folder, plan.uri) };
    });
    return { old: old!, fresh: fresh!, others: [], mergeIsAside: true, root: this.#terminal.folder };
  }

  async since(revision: string, named: string | undefined): Promise<Compared> {
    const { plan, repository } = await this.#workTree(named);
    const colon = revision.indexOf(':');
    const commit = await repository.commit(colon < 0 ? revision : revision.slice(0, colon));
    const pathThen = colon < 0 ? undefined : revision.slice(colon + 1);
    const isThereNow = (path: string) => existsSync(join(repository.root, path));
    const old = await this.#then(repository, commit, { plan, pathThen, isThereNow });
    const others = await this.#mergedWith(repository, commit, { plan, pathThen: undefined, isThereNow });
    const fresh = { ...plan, name: 'work tree' };
    return { old, fresh, others, mergeIsAside: true, root: repository.root };
  }

  /** The other side of a merge, as in a pull request that is checked out merged; nothing where it cannot be had. */
  async #mergedWith(repository: Repository, commit: Commit, wanted: Wanted): Promise<Side[]> {
    try {
      const sides: Side[] = [];
      for (const other of await repository.mergedWith(commit))
        sides.push((await this.#read(repository, other, wanted)).side);
      return sides;
    } catch (error) {
      if (error instanceof GitTrouble) return [];
      throw error;
    }
  }

  /** The merge commit that is checked out, or the merge that has begun and is not committed. */
  async merge(named: string | undefined): Promise<Compared> {
    const { plan, repository } = await this.#workTree(named);
    const head = await repository.commit('HEAD');
    const begun = await repository.mergeHeads();
    const parents = begun.length > 0 ? [head, ...begun] : await repository.parents(head);
    if (parents.length < 2)
      throw new Trouble(
        'HEAD is no merge, and none has begun: merge first, then ask what the merge brings by itself.',
      );
    const inHead = new Set(begun.length > 0 ? [] : await repository.planFiles(head));
    const isThereNow = (path: string) =>
      begun.length > 0 ? existsSync(join(repository.root, path)) : inHead.has(path);
    const fresh =
      begun.length > 0
        ? { ...plan, name: 'work tree' }
        : await this.#then(repository, head, { plan, pathThen: repository.pathOf(plan.uri), isThereNow });
    const sides: Side[] = [];
    for (const parent of parents)
      sides.push(await this.#then(repository, parent, { plan, pathThen: undefined, isThereNow }));
    const [old, ...others] = sides;
    return { old: old!, fresh, others, mergeIsAside: false, root: repository.root };
  }

  async #workTree(named: string | undefined): Promise<{ plan: OpenPlan; repository: Repository }> {
    // A bare repository has no plan to be found: that is told first.
    if (named === undefined) await Repository.open(this.#terminal.folder);
    const { path, chosen } = findPlan(this.#reader, this.#terminal.folder, named);
    const repository = await Repository.open(dirname(path));
    if (chosen) this.#terminal.note(`Reviewing ${nameFrom(this.#terminal.folder, fileUri(path))}.`);
    return { plan: this.#reader.plan(path), repository };
  }

  /** How the plan stood at a commit; where it had another name or was not there, that is noted. */
  async #then(repository: Repository, commit: Commit, wanted: Wanted): Promise<Side> {
    const { side, uri, isAbsent } = await this.#read(repository, commit, wanted);
    const name = nameFrom(repository.root, wanted.plan.uri);
    if (isAbsent) this.#terminal.note(`${name} is not in ${commit.title}: everything in it is new.`);
    else if (uri !== wanted.plan.uri)
      this.#terminal.note(`${name} was ${nameFrom(repository.root, uri)} in ${commit.title}.`);
    return side;
  }

  async #read(
    repository: Repository,
    commit: Commit,
    { plan, pathThen, isThereNow }: Wanted,
  ): Promise<{ side: Side; uri: string; isAbsent: boolean }> {
    const { uri, access, isAbsent } = await readPlanThen(
      repository,
      commit,
      { uri: plan.uri, title: plan.analysis.settings.title, pathThen, isThereNow },
      this.#reader.libraryFiles,
      fileUri,
    );
    const found = isAbsent ? { findings: [], accepted: [], unreadable: 0 } : {};
    return { side: { ...openPlan(uri, access), ...found, name: commit.title }, uri, isAbsent };
  }
}

/** A plan that is looked for in the past. */
interface Wanted {
  readonly plan: OpenPlan;
  readonly pathThen: string | undefined;
  /** Whether a path of the repository is a file on the new side too. */
  readonly isThereNow: (path: string) => boolean;
}

async function write(
  { old, fresh, others, mergeIsAside, root }: Compared,
  output: Options['output'],
  terminal: Terminal,
): Promise<void> {
  const merge = others.length === 0 ? undefined : mergeReviewOf([old, ...others], fresh);
  const isTold = merge && (merge.findings.length > 0 || !mergeIsAside);
  const review = reviewOf(old, fresh, isTold ? merge : undefined);
  const from = (folder: string) => (uri: string) => nameFrom(folder, uri);
  switch (output) {
    case 'text':
      for (const line of reviewText(review, from(terminal.folder), terminal.paint, terminal.width))
        terminal.out(line);
      break;
    case 'json':
      terminal.out(JSON.stringify(reviewJson(review, from(terminal.folder)), undefined, 2));
      break;
    case 'markdown':
      terminal.out(reviewMarkdown(review, from(root)).trimEnd());
      break;
    case 'html':
      terminal.out((await reviewHtml(review, old.analysis, fresh.analysis, from(root))).trimEnd());
      break;
  }
}
