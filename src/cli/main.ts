// The parser needs this on Node 20, before anything else is loaded.
import '../language/object-group-by.ts';
import { CommanderError } from 'commander';
import about from '../../package.json' with { type: 'json' };
import { createProgram } from './program.ts';
import { createTerminal, type Terminal } from './terminal.ts';
import { EXIT_TROUBLE, isTrouble } from './trouble.ts';

async function main(): Promise<void> {
  const terminal = createTerminal(process);
  try {
    const surroundings = { terminal, program: __dirname, version: about.version };
    const program = await createProgram(surroundings, process.argv.slice(2));
    await program.parseAsync(process.argv);
  } catch (error) {
    process.exitCode = tell(terminal, error);
  }
}

/** Says why a command could not run. @returns the exit code. */
function tell(terminal: Terminal, error: unknown): number {
  if (error instanceof CommanderError) return error.exitCode === 0 ? 0 : EXIT_TROUBLE;
  if (isTrouble(error)) terminal.note(`feedplot: ${error.message}`);
  else {
    terminal.note(
      'feedplot: This is a fault of Feedplot, not of the plan. Please report it with what follows.',
    );
    terminal.note(error instanceof Error ? (error.stack ?? error.message) : String(error));
  }
  return EXIT_TROUBLE;
}

void main();
