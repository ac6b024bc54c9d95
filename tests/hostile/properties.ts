/** What must hold for every text, however hostile: nothing throws, and nothing says what it should not. */
import fc from 'fast-check';
import { type CommandLine, type Entry, entries } from './commands.ts';
import { type AskedServer, questions } from './server.ts';
import { hostileText } from './texts.ts';

/** One text and the way that it is given in, as it is kept when it fails. */
export type HostileInput =
  | { readonly command: readonly string[]; readonly text: string }
  | { readonly texts: readonly string[]; readonly places: readonly number[] };

const weighted: fc.Arbitrary<Entry> = fc.oneof(
  ...entries.map((entry) => ({ weight: entry.weight, arbitrary: fc.constant(entry) })),
);

export const commandInput = fc.record({ entry: weighted, text: hostileText });

/** A text, what it is replaced by as a person edits it, and places in it, in thousandths of its length. */
export const serverInput = fc.record({
  texts: fc.array(hostileText, { minLength: 1, maxLength: 2 }),
  places: fc.array(fc.nat(1000), { minLength: 1, maxLength: 12 }),
});

/** @returns what is wrong, in words; undefined for nothing. */
export async function faultOfCommand(
  line: CommandLine,
  { entry, text }: { readonly entry: Entry; readonly text: string },
): Promise<string | undefined> {
  return line.faultOf(entry, text);
}

/** Asks everything at each place. @returns what is wrong, in words; undefined for nothing. */
export async function faultOfServer(
  server: AskedServer,
  { texts, places }: { readonly texts: readonly string[]; readonly places: readonly number[] },
): Promise<string | undefined> {
  for (const text of texts) {
    await server.open(text);
    const offsets = places.map((place) => Math.floor((place / 1000) * text.length));
    for (const question of questions)
      for (const offset of question.ofFile ? [0] : offsets)
        await server.ask(question, server.placeAt(offset, 300));
    const fault = server.fault();
    if (fault) return fault;
  }
  return undefined;
}

/** Gives in again what failed once. @returns what is wrong now, in words; undefined for nothing. */
export async function faultOfKept(
  input: HostileInput,
  line: CommandLine,
  server: AskedServer,
): Promise<string | undefined> {
  if ('texts' in input) return faultOfServer(server, input);
  const args = input.command.join(' ');
  const entry = entries.find((one) => one.args.join(' ') === args) ?? { args: input.command, weight: 0 };
  return line.faultOf(entry, input.text);
}
