import { Command } from 'commander';
import type { Terminal } from './terminal.ts';

/** What a command is given beside its arguments. */
export interface Surroundings {
  readonly terminal: Terminal;
  /** Folder in which the program lies, with the shipped library and the starter plan beside it. */
  readonly program: string;
  readonly version: string;
}

/** Adds a command's arguments, options and action. */
export type Define = (command: Command, surroundings: Surroundings) => void;

/** Every command: its name, what it does, and its file, which is loaded only when it is used. */
const commands: readonly (readonly [string, string, () => Promise<{ define: Define }>])[] = [
  ['new', 'write a small working plan to start from', () => import('./new.ts')],
  ['check', 'tell what is wrong with plans', () => import('./check.ts')],
  ['show', 'show what was worked out: loads, routes, delays', () => import('./show.ts')],
  ['draw', 'draw the plan as a picture (SVG)', () => import('./draw.ts')],
  ['book', 'write the papers: the book, tables, labels, test pictures', () => import('./book.ts')],
  ['review', 'tell what a change does to the show', () => import('./review.ts')],
  ['format', 'put files into canonical layout', () => import('./format.ts')],
  ['explain', 'tell what a check, a format, a cable or an interface means', () => import('./explain.ts')],
  ['serve', 'run the language server for an editor', () => import('./serve.ts')],
];

/** The command line, with the command that the arguments speak of made ready. */
export async function createProgram(surroundings: Surroundings, args: readonly string[]): Promise<Command> {
  const program = new Command('feedplot')
    .description('Plans of live-event video: every picture from where it is made to where it is watched.')
    .version(surroundings.version)
    .exitOverride()
    .showHelpAfterError('Run `feedplot --help` to see what there is.')
    .addHelpText('after', EXIT_CODES);
  for (const [name, summary, load] of commands) {
    const command = program.command(name).description(summary).copyInheritedSettings(program);
    if (args.includes(name)) (await load()).define(command, surroundings);
  }
  return program;
}

const EXIT_CODES = `
Exit codes: 0 nothing wrong; 1 errors in the plan (with --strict also warnings); 2 the command could not run.`;
