/**
 * How a figure was got, so that a reader can check it.
 *
 * Functions that compute return bare numbers. Beside each stands an `explain…` function that takes the same
 * arguments, calls it, and puts the story into words; so nobody pays for words that nobody asked for, and the
 * words can never show another figure than the one that was used.
 */

/** How well a value is founded. `from memory` means: verify before relying on it. */
export type Label = 'published' | 'second-hand' | 'derived' | 'common practice' | 'from memory';

/** Where a rule or a value comes from. */
export interface Source {
  /** The document and clause, or what a derivation starts from. */
  readonly source: string;
  readonly label: Label;
}

/** One value that went into a formula, with its unit. */
export interface WorkingInput {
  /** The name as it stands in the formula. */
  readonly name: string;
  readonly value: string;
}

/** How one figure was got. */
export interface Working extends Source {
  /** What the figure is, for example `load of the picture on the wire`. */
  readonly figure: string;
  /** The rule that was chosen, in words. */
  readonly rule: string;
  /** The formula with names in it. */
  readonly formula: string;
  readonly inputs: readonly WorkingInput[];
  /** The formula with the numbers put in. */
  readonly substituted: string;
  readonly result: string;
  /** The workings of the figures that went into this one. */
  readonly steps: readonly Working[];
}

/** A figure together with its working. */
export interface Explained<T = number> {
  readonly value: T;
  readonly working: Working;
}

/** Everything of a working but the substituted formula, which is made from the rest. */
export interface WorkingParts extends Source {
  readonly figure: string;
  readonly rule: string;
  readonly formula: string;
  /** Names must stand in the formula as whole words. */
  readonly inputs: readonly (readonly [name: string, value: string])[];
  /** Only where the inputs cannot be told apart by name; else it is made from formula and inputs. */
  readonly substituted?: string | undefined;
  readonly result: string;
  readonly steps?: readonly Working[];
}

/** Completes a working: puts the inputs' values into the formula. */
export function makeWorking(parts: WorkingParts): Working {
  const { steps = [], inputs, substituted = substitute(parts.formula, inputs), ...rest } = parts;
  return { ...rest, inputs: inputs.map(([name, value]) => ({ name, value })), substituted, steps };
}

function substitute(formula: string, inputs: WorkingParts['inputs']): string {
  if (inputs.length === 0) return formula;
  const values = new Map(inputs);
  const longestFirst = [...values.keys()].sort((a, b) => b.length - a.length);
  const names = new RegExp(
    `(?<![\\p{L}\\p{N}_])(?:${longestFirst.map(literally).join('|')})(?![\\p{L}\\p{N}_])`,
    'gu',
  );
  return formula.replace(names, (name) => values.get(name) ?? name);
}

function literally(text: string): string {
  return text.replace(/[\\^$.*+?()[\]{}|/-]/g, '\\$&');
}

/** True when the figure, or one that went into it, rests on a value that is only remembered. */
export function restsOnMemory(working: Working): boolean {
  return working.label === 'from memory' || working.steps.some(restsOnMemory);
}

/**
 * A working as plain lines, for a terminal or a hover. The figures that went into it follow, indented.
 *
 * @example
 * load of the picture on the wire: 2.664 Gb/s
 *   rule: equal packets for every row
 *   packets x (data + overhead) x 8 x rate
 *   = 4320 x (1200 octets + 86 octets) x 8 x 59.94 = 2.664 Gb/s
 *   source: RFC 4175 (published)
 */
export function formatWorking(working: Working): string[] {
  const lines = [`${working.figure}: ${working.result}`, `  rule: ${working.rule}`];
  if (working.inputs.length === 0) {
    if (working.formula !== '') lines.push(`  ${working.formula} = ${working.result}`);
  } else {
    lines.push(`  ${working.formula}`, `  = ${working.substituted} = ${working.result}`);
  }
  const caution = working.label === 'from memory' ? ': verify before relying on it' : '';
  lines.push(`  source: ${working.source} (${working.label}${caution})`);
  for (const step of working.steps) for (const line of formatWorking(step)) lines.push(`  ${line}`);
  return lines;
}
