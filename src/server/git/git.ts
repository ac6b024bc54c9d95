import { execFile } from 'node:child_process';
import { devNull } from 'node:os';
import { dirname } from 'node:path';

/** Why git could not answer, in words for the person who asked. */
export class GitTrouble extends Error {
  override readonly name = 'GitTrouble';
}

const LONGEST_ANSWER_MS = 60_000;

/** Enough for everything but the contents of files, whose size is asked first. */
const USUAL_BYTES = 64_000_000;

/**
 * A repository may be anybody's, and its configuration names programs that git would run: none of them is. Only commands
 * that read objects are ever called, which use neither the index nor a filter; these settings shut what is left.
 */
const settings: readonly string[] = [
  `core.hooksPath=${devNull}`,
  'core.fsmonitor=false',
  'core.pager=',
  'core.askPass=',
  'core.sshCommand=',
  'core.gitProxy=',
  'core.alternateRefsCommand=',
  'credential.helper=',
  'diff.external=',
  'gc.auto=0',
  'log.showSignature=false',
  'maintenance.auto=false',
  'protocol.allow=never',
  'submodule.recurse=false',
];

/**
 * Runs git in a folder, without a shell: what comes from a plan or a repository is an argument or stands on its input.
 *
 * @returns what it writes to standard output
 * @throws GitTrouble when git is missing, ends with an error or does not end at all
 */
export function runGit(
  folder: string,
  args: readonly string[],
  { input = '', mostBytes = USUAL_BYTES }: { readonly input?: string; readonly mostBytes?: number } = {},
): Promise<Buffer> {
  const all = ['--no-pager', '--no-optional-locks', '--literal-pathspecs', '-C', folder];
  for (const setting of settings) all.push('-c', setting);
  const options = {
    encoding: 'buffer',
    env: environment(),
    // Never the folder of the repository: on Windows a program of that name in it would be run.
    cwd: dirname(process.execPath),
    maxBuffer: mostBytes,
    timeout: LONGEST_ANSWER_MS,
    windowsHide: true,
  } as const;
  return new Promise((resolve, reject) => {
    const child = execFile('git', [...all, ...args], options, (error, stdout, stderr) => {
      if (error) reject(troubleOf(error, stderr));
      else resolve(stdout);
    });
    // Git may end before it has read everything.
    child.stdin?.on('error', () => undefined);
    child.stdin?.end(input);
  });
}

/** What a person says of git itself; everything else with such a name is about another repository or another command. */
const kept: ReadonlySet<string> = new Set([
  'GIT_CEILING_DIRECTORIES',
  'GIT_CONFIG_GLOBAL',
  'GIT_CONFIG_NOSYSTEM',
  'GIT_CONFIG_SYSTEM',
  'GIT_DISCOVERY_ACROSS_FILESYSTEM',
  'GIT_EXEC_PATH',
]);

/**
 * The process's own environment without what speaks to git: inside a hook that is about the commit in the making. What
 * is added forbids prompts, locks, and fetching what a partial clone lacks, whatever the repository's configuration says.
 */
function environment(): NodeJS.ProcessEnv {
  const inherited = Object.entries(process.env).filter(
    ([name]) => kept.has(name) || !/^(GIT_|SSH_ASKPASS)/i.test(name),
  );
  return {
    ...Object.fromEntries(inherited),
    GIT_ALLOW_PROTOCOL: 'none',
    GIT_NO_LAZY_FETCH: '1',
    GIT_OPTIONAL_LOCKS: '0',
    GIT_TERMINAL_PROMPT: '0',
    LC_ALL: 'C',
    NoDefaultCurrentDirectoryInExePath: '1',
  };
}

function troubleOf(
  error: Error & { code?: unknown; killed?: boolean | undefined },
  stderr: Buffer,
): GitTrouble {
  if (error.code === 'ENOENT') return new GitTrouble('git is not installed, or not in the path.');
  if (error.code === 'ERR_CHILD_PROCESS_STDIO_MAXBUFFER')
    return new GitTrouble('git answered more than can be read.');
  if (error.killed) return new GitTrouble('git did not answer within a minute.');
  const lines = stderr.toString('utf8').trim().split('\n');
  const said = lines.find((line) => /^(fatal|error): /.test(line)) ?? lines.at(-1);
  return new GitTrouble(said?.replace(/^(fatal|error): /, '') || error.message);
}
