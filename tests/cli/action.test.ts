/** The steps of action.yml as a runner carries them out: each script in bash, with what its `env` names. */
import { execFileSync, spawnSync } from 'node:child_process';
import { chmodSync, existsSync, readFileSync, writeFileSync } from 'node:fs';
import { delimiter, dirname, join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { gitEnvironment, repositoryWith, type TestRepository } from '../review/repositories.ts';
import { changed, kit, plan, withCamera } from '../review/shows.ts';
import { folderWith, root } from './command-line.ts';

interface Action {
  readonly inputs: Readonly<Record<string, { readonly default?: string; readonly required?: boolean }>>;
  readonly runs: { readonly using: string; readonly steps: readonly Step[] };
}

interface Step {
  readonly id?: string;
  readonly if?: string;
  readonly shell: string;
  readonly env?: Readonly<Record<string, string>>;
  readonly run: string;
}

function readYaml<T>(file: string): T {
  return parseYaml(readFileSync(join(root, file), 'utf8'));
}

function parseYaml<T>(input: string): T {
  return JSON.parse(execFileSync('yaml', ['--json', '--single', '--strict'], { input }).toString()) as T;
}

const action = readYaml<Action>('action.yml');
const windows = process.platform === 'win32';

interface Outcome {
  readonly code: number;
  readonly stdout: string;
  readonly summary: string;
  readonly output: string;
  /** What `gh` was called with, a call a line. */
  readonly calls: string;
  readonly comment: string;
  /** What was written as SARIF; empty: nothing. */
  readonly sarif: string;
}

interface Given {
  readonly inputs: Readonly<Record<string, string>>;
  readonly event?: 'push' | 'pull_request';
  /** Id of a comment that is there already. */
  readonly known?: string;
  /** The token may not write, as in a pull request from a fork. */
  readonly readOnly?: boolean;
}

function run(
  repository: Pick<TestRepository, 'folder'>,
  { inputs, event = 'push', known = '', readOnly = false }: Given,
): Outcome {
  const temp = folderWith({ 'gh.log': '', summary: '', output: '', comment: '' });
  const at = (name: string) => join(temp, name);
  const read = (name: string) => readFileSync(at(name), 'utf8');
  writeFileSync(
    at('gh'),
    `#!/bin/bash\nprintf '%s|' "$@" >> '${at('gh.log')}'; echo >> '${at('gh.log')}'\nfor one in "$@"; do case "$one" in body=@*) cat "\${one#body=@}" > '${at('comment')}';; esac; done\n${readOnly ? 'exit 1\n' : ''}case "$*" in *--jq*) [ -z '${known}' ] || echo '${known}';; esac\n`,
  );
  chmodSync(at('gh'), 0o755);
  const values: Record<string, string> = {
    'github.action_path': root,
    'github.token': 'no token',
    'github.event_name': event,
    'github.event.pull_request.number': event === 'push' ? '' : '7',
  };
  for (const [name, { default: usual = '' }] of Object.entries(action.inputs))
    values[`inputs.${name}`] = inputs[name] ?? usual;
  let stdout = '';
  for (const step of action.runs.steps) {
    values['steps.review.outputs.review'] = /^review=(.*)$/m.exec(read('output'))?.[1] ?? '';
    if (step.if !== undefined && !holds(step.if, values)) continue;
    const own = Object.entries(step.env ?? {}).map(([name, text]) => [name, filledIn(text, values)]);
    const {
      status,
      stdout: said,
      stderr,
    } = spawnSync('bash', ['--noprofile', '--norc', '-eo', 'pipefail', '-c', step.run], {
      cwd: repository.folder,
      encoding: 'utf8',
      env: {
        ...gitEnvironment(temp),
        PATH: [temp, dirname(process.execPath), process.env.PATH].join(delimiter),
        RUNNER_TEMP: temp,
        GITHUB_STEP_SUMMARY: at('summary'),
        GITHUB_OUTPUT: at('output'),
        GITHUB_REPOSITORY: 'crew/show',
        ...Object.fromEntries(own),
      },
    });
    stdout += said + stderr;
    if (status !== 0) return outcome(status ?? 255);
  }
  return outcome(0);

  function outcome(code: number): Outcome {
    const sarif = /^sarif=(.*)$/m.exec(read('output'))?.[1];
    return {
      sarif: sarif === undefined ? '' : readFileSync(sarif, 'utf8'),
      code,
      stdout,
      summary: read('summary'),
      output: read('output'),
      calls: read('gh.log'),
      comment: read('comment'),
    };
  }
}

/** `${{ … }}` with its value. */
function filledIn(text: string, values: Readonly<Record<string, string>>): string {
  return text.replace(/\$\{\{ *([\w.]+) *\}\}/g, (_, name: string) => {
    if (values[name] === undefined) throw new Error(`${name} is not known`);
    return values[name];
  });
}

/** Comparisons with a text, joined by `&&`. */
function holds(condition: string, values: Readonly<Record<string, string>>): boolean {
  return condition.split(' && ').every((part) => {
    const [, name = '', operator, text] = /^([\w.]+) (==|!=) '(.*)'$/.exec(part) ?? [];
    return (values[name] === text) === (operator === '==');
  });
}

const show = { 'show.feedplot': plan, 'kit.feedplot': kit };

/** A plan with a camera more in its second commit. */
function changedShow(names = ['close']): TestRepository {
  const repository = repositoryWith(show);
  const text = names.reduce((made, name, i) => withCamera(made, name, 3 + i), plan);
  repository.write({ 'show.feedplot': text }).commit();
  return repository;
}

describe.skipIf(windows)('the action', () => {
  test('takes nothing of the pull request into a script: values come by the environment alone', () => {
    expect(action.runs.using).toBe('composite');
    for (const { run: script } of action.runs.steps) expect(script).not.toContain('${{');
  });

  test('reviews with the commit before, and checks', () => {
    const { code, summary, output, stdout, calls } = run(changedShow(), {
      inputs: { plans: 'show.feedplot' },
    });
    expect(code).toBe(0);
    expect(summary).toMatch(/^### Feedplot review: 1 screen or input changes, 5 steps on site\n/);
    expect(output).toMatch(/^review=.*feedplot-review\.md\nsarif=.*feedplot\.sarif\n$/);
    expect(stdout).not.toContain('::warning::There is no review');
    expect(calls).toBe('');
  });

  test('an error of the plan is annotated and fails the job; the review is there all the same', () => {
    const { code, stdout, summary, sarif } = run(changedShow(['close', 'wide']), {
      inputs: { plans: 'show.feedplot' },
    });
    expect(code).toBe(1);
    expect(stdout).toMatch(
      /^::error file=show\.feedplot,line=\d+,endLine=\d+,col=6,endColumn=11,title=link-overload::trunk carries 10\.74 Gb\/s/m,
    );
    expect(summary).toMatch(/^### Feedplot review: 1 new error, /);
    expect(JSON.parse(sarif)).toMatchObject({
      version: '2.1.0',
      runs: [{ results: [{ ruleId: 'link-overload', level: 'error' }] }],
    });
  });

  test('a pull request as it is checked out: two commits deep, merged with what it goes into', () => {
    const repository = repositoryWith(show);
    repository.git('switch', '--quiet', '--create', 'pull');
    repository.write({ 'show.feedplot': `// pull\n${withCamera('', 'close', 3)}${plan}` }).commit();
    repository.git('switch', '--quiet', 'main');
    repository.write({ 'show.feedplot': withCamera(plan, 'wide', 4) }).commit();
    repository.git('merge', '--quiet', '--no-edit', 'pull');
    const folder = join(folderWith({}), 'clone');
    repository.git('clone', '--quiet', '--depth', '2', `file://${repository.folder}`, folder);
    const { code, summary } = run({ folder }, { inputs: { plans: 'show.feedplot' } });
    expect(code).toBe(1);
    expect(summary).toMatch(/^### Feedplot review: 1 finding brought by the merge itself, /);
    expect(summary).toMatch(/Neither HEAD\^1 \(\w{8}\) nor parent 2 \(\w{8}\) has this alone/);
  });

  test('a clone of the last commit alone is told how much deeper it has to be', () => {
    const repository = changedShow();
    const folder = join(folderWith({}), 'clone');
    repository.git('clone', '--quiet', '--depth', '1', `file://${repository.folder}`, folder);
    const { code, stdout } = run({ folder }, { inputs: { plans: 'show.feedplot' } });
    expect(code).toBe(0);
    expect(stdout).toMatch(/This clone is shallow.*fetch-depth/);
  });

  test('warnings fail only where that is asked for', () => {
    const repository = repositoryWith({
      ...show,
      'show.feedplot': `${plan}place attic\nnode spare : edge_box at attic\n`,
    });
    repository.write({ 'kit.feedplot': changed(kit, 'costs 560', 'costs 600') }).commit();
    expect(run(repository, { inputs: { plans: 'show.feedplot' } }).code).toBe(0);
    expect(run(repository, { inputs: { plans: 'show.feedplot', strict: 'true' } }).code).toBe(1);
  });

  test('without a commit to compare with there is a warning and no review, and the plan is checked', () => {
    const { code, stdout, summary, output } = run(repositoryWith(show), {
      inputs: { plans: 'show.feedplot' },
    });
    expect(code).toBe(0);
    expect(stdout).toContain('::warning::There is no review of show.feedplot: see the log of this step.');
    expect(stdout).toContain('There is no commit "HEAD^1"');
    expect(summary).toBe('');
    expect(output).not.toContain('review=');
  });

  test('several plans, and names that a shell or an option parser would take for something else', () => {
    const odd = '--since=$(touch ran);`touch ran` "a b".feedplot';
    const repository = repositoryWith({ ...show, [odd]: plan });
    repository.write({ 'kit.feedplot': changed(kit, 'costs 560', 'costs 600') }).commit();
    const { code, summary, stdout } = run(repository, { inputs: { plans: `show.feedplot\n${odd}\n` } });
    expect(stdout).not.toContain('::warning::There is no review');
    expect(summary.match(/^### Feedplot review/gm)).toHaveLength(2);
    expect(code).toBe(0);
    expect(existsSync(join(repository.folder, 'ran'))).toBe(false);
  });

  test('a pull request gets one comment, which is written over the next time', () => {
    const given = { inputs: { plans: 'show.feedplot', comment: 'true' }, event: 'pull_request' } as const;
    const first = run(changedShow(), given);
    expect(first.code).toBe(0);
    expect(first.comment).toMatch(/^<!-- feedplot review -->\n### Feedplot review: /);
    expect(first.calls.trim().split('\n')).toEqual([
      expect.stringMatching(/^api\|--paginate\|repos\/crew\/show\/issues\/7\/comments\|--jq\|/),
      expect.stringMatching(/^api\|--silent\|repos\/crew\/show\/issues\/7\/comments\|--field\|body=@/),
    ]);
    const second = run(changedShow(), { ...given, known: '42' });
    expect(second.calls).toContain(
      'api|--silent|--method|PATCH|repos/crew/show/issues/comments/42|--field|body=@',
    );
  });

  test('where it may not write there is a warning, and the plan is checked', () => {
    const { code, stdout, sarif } = run(changedShow(), {
      inputs: { plans: 'show.feedplot', comment: 'true' },
      event: 'pull_request',
      readOnly: true,
    });
    expect(code).toBe(0);
    expect(stdout).toContain('::warning::The review could not be written as a comment');
    expect(sarif).not.toBe('');
  });

  test('a push gets no comment, and neither does a pull request that did not ask', () => {
    expect(run(changedShow(), { inputs: { plans: 'show.feedplot', comment: 'true' } }).calls).toBe('');
    expect(run(changedShow(), { inputs: { plans: 'show.feedplot' }, event: 'pull_request' }).calls).toBe('');
  });

  test('reviews that are together longer than a comment are pointed at', () => {
    const many = Array.from({ length: 1500 }, (_, i) => `place spot_${i} "${'x'.repeat(60)}"`).join('\n');
    const repository = repositoryWith({ ...show, 'other.feedplot': plan });
    repository.write({ 'show.feedplot': `${plan}${many}\n`, 'other.feedplot': `${plan}${many}\n` }).commit();
    const { comment, summary } = run(repository, {
      inputs: { plans: 'show.feedplot\nother.feedplot', comment: 'true' },
      event: 'pull_request',
    });
    expect(summary.length).toBeGreaterThan(65_536);
    expect(comment).toBe(
      '<!-- feedplot review -->\nThe review is longer than a comment may be: it stands in the summary of the job.\n',
    );
  });
});

test('the hook for pre-commit calls a command that there is', () => {
  const [hook] = readYaml<Record<string, unknown>[]>('.pre-commit-hooks.yaml');
  expect(hook).toMatchObject({
    id: 'feedplot-check',
    entry: 'feedplot check',
    language: 'node',
    pass_filenames: false,
  });
  const { bin } = JSON.parse(readFileSync(join(root, 'package.json'), 'utf8')) as {
    bin: Record<string, string>;
  };
  expect(Object.keys(bin)).toContain('feedplot');
  expect('kit/house.feedplot').toMatch(new RegExp(String(hook!.files)));
});

test('what the README shows of both is what they have', () => {
  const readme = readFileSync(join(root, 'README.md'), 'utf8');
  const [workflow, hooks] = [...readme.matchAll(/```yaml\n([\s\S]*?)```/g)].map(([, text]) => text!);
  const { jobs } = parseYaml<{ jobs: { plan: { steps: { uses: string; with: Record<string, string> }[] } } }>(
    workflow!,
  );
  const step = jobs.plan.steps.find(({ uses }) => uses.includes('feedplot'))!;
  expect(Object.keys(action.inputs)).toEqual(expect.arrayContaining(Object.keys(step.with)));
  for (const [name, { required }] of Object.entries(action.inputs))
    if (required) expect(step.with).toHaveProperty(name);
  const { repos } = parseYaml<{ repos: { hooks: { id: string }[] }[] }>(hooks!);
  const known = readYaml<{ id: string }[]>('.pre-commit-hooks.yaml').map(({ id }) => id);
  expect(known).toEqual(expect.arrayContaining(repos[0]!.hooks.map(({ id }) => id)));
});
