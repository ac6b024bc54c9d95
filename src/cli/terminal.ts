import { ansiPaint, type Paint, plainPaint } from '../documents/paint.ts';
import { oneLine, printable } from '../documents/printable.ts';

/** Where a command's words go. */
export interface Terminal {
  readonly folder: string;
  /** Characters in a line. */
  readonly width: number;
  readonly paint: Paint;
  /** A line of results. What comes out of a plan must have been made printable. */
  out(line: string): void;
  /** Trouble, and what was done that was not asked for. */
  note(text: string): void;
  /** What a long work is at, while a person watches; empty when it is done. */
  progress(text: string): void;
}

/** What lines are laid out for when nobody says how wide the terminal is. */
const USUAL_WIDTH = 100;
const NARROWEST = 60;

/** The terminal of a process. Colour only where a person reads, and never with `NO_COLOR` (no-color.org). */
export function createTerminal({ stdout, stderr, env, cwd }: NodeJS.Process): Terminal {
  for (const stream of [stdout, stderr]) stream.on('error', endQuietly);
  const coloured = stdout.isTTY === true && !env.NO_COLOR && env.TERM !== 'dumb';
  return {
    folder: cwd(),
    width: stdout.isTTY ? Math.max(NARROWEST, stdout.columns || USUAL_WIDTH) : USUAL_WIDTH,
    paint: coloured ? ansiPaint : plainPaint,
    out: (line) => void stdout.write(`${line}\n`),
    note: (text) => void stderr.write(`${printable(text)}\n`),
    progress: (text) => {
      // Back to the line's beginning, and the rest of it cleared.
      if (stderr.isTTY && env.TERM !== 'dumb') stderr.write(`\r${oneLine(text, NARROWEST)}\u001b[K`);
    },
  };
}

/** Whoever reads may stop before the end, as `head` does. */
function endQuietly(error: NodeJS.ErrnoException): void {
  if (error.code === 'EPIPE') process.exit();
  throw error;
}
