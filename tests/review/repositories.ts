/** Real git repositories, made for one test each and away from the configuration of whoever runs it. */
import { execFileSync } from 'node:child_process';
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { feedplot, folderWith, type Ran } from '../cli/command-line.ts';

/** No configuration but the repository's own; a fixed author and time, so that hashes are the same each time. */
export function gitEnvironment(home: string): Record<string, string> {
  return {
    HOME: home,
    XDG_CONFIG_HOME: home,
    GIT_CONFIG_GLOBAL: join(home, 'none'),
    GIT_CONFIG_NOSYSTEM: '1',
    GIT_AUTHOR_NAME: 'Crew',
    GIT_AUTHOR_EMAIL: 'crew@show.example',
    GIT_AUTHOR_DATE: '2027-05-13T20:00:00Z',
    GIT_COMMITTER_NAME: 'Crew',
    GIT_COMMITTER_EMAIL: 'crew@show.example',
    GIT_COMMITTER_DATE: '2027-05-13T20:00:00Z',
  };
}

export class TestRepository {
  readonly folder: string;
  readonly #home: string;

  constructor(folder: string, home: string) {
    this.folder = folder;
    this.#home = home;
  }

  git(...args: string[]): string {
    return execFileSync('git', args, {
      cwd: this.folder,
      env: { PATH: process.env.PATH, ...gitEnvironment(this.#home) },
      encoding: 'utf8',
      stdio: ['ignore', 'pipe', 'pipe'],
    }).trim();
  }

  write(files: Readonly<Record<string, string>>): this {
    for (const [name, content] of Object.entries(files)) {
      const path = join(this.folder, name);
      mkdirSync(dirname(path), { recursive: true });
      writeFileSync(path, content);
    }
    return this;
  }

  remove(...names: string[]): this {
    for (const name of names) rmSync(join(this.folder, name));
    return this;
  }

  commit(message = 'Change'): string {
    this.git('add', '--all');
    this.git('commit', '--quiet', '--message', message);
    return this.git('rev-parse', 'HEAD');
  }

  review(...args: string[]): Ran {
    return this.feedplot(['review', ...args]);
  }

  feedplot(args: readonly string[], { folder = this.folder, env = {} } = {}): Ran {
    return feedplot(args, { folder, env: { ...gitEnvironment(this.#home), ...env } });
  }

  reviewJson(...args: string[]): ReviewPrinted {
    const { stdout, stderr } = this.review('--output', 'json', ...args);
    if (stdout === '') throw new Error(stderr);
    return JSON.parse(stdout) as ReviewPrinted;
  }
}

/** What of the printed review these tests read. */
export interface ReviewPrinted {
  readonly old: { readonly name: string; readonly unreadable: number };
  readonly new: { readonly name: string };
  readonly merge: { readonly parents: string[]; readonly findings: PrintedFinding[] } | null;
  readonly new_findings: PrintedFinding[];
  readonly mended_findings: PrintedFinding[];
  readonly things: {
    change: string;
    kind: string;
    name: string;
    was: string | null;
    place: { file: string; side: string };
  }[];
  readonly steps: { kind: string; text: string; dark: string[]; back: string[] }[];
  readonly pictures: { change: string; name: string }[];
  readonly loads: {
    change: string;
    name: string;
    before: { share: number } | null;
    after: { share: number } | null;
  }[];
}

interface PrintedFinding {
  readonly check: string;
  readonly severity: string;
  readonly subject: string | null;
  readonly file: string;
}

/** A repository with these files in its first commit. */
export function repositoryWith(files: Readonly<Record<string, string>>, folder?: string): TestRepository {
  const home = folderWith({});
  const repository = new TestRepository(folder ?? folderWith({}), home);
  repository.git('init', '--quiet', '--initial-branch', 'main');
  repository.write(files).commit('The show');
  return repository;
}
