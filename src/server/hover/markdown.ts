/** Markdown for hovers. Whatever a plan says goes through `plain`: a name can neither format nor link nor hide. */
import { formatWorking, type Working } from '../../physics/working.ts';

/**
 * Text of a plan as it stands, with everything that Markdown or HTML would read made harmless. Signs that mean nothing
 * in the middle of a line stay as they are, and so does a `_` inside a word: many editors show Markdown raw.
 */
export function plain(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .replace(/[\\`*[\]|<>~&]|(?<![\p{L}\p{N}])_|_(?![\p{L}\p{N}])/gu, (sign) => `\\${sign}`)
    .replace(/^(?=[-+#=]\s)/, '\\')
    .replace(/^(\d+)(?=[.)]\s)/, '$1\\');
}

export function bold(text: string): string {
  return `**${plain(text)}**`;
}

/** A name or a piece of plan text in the typeface of the editor. */
export function code(text: string): string {
  const fence = text.includes('`') ? '``' : '`';
  return `${fence}${text.replace(/\s+/g, ' ')}${fence}`;
}

/** A table; cells are Markdown already. */
export function table(head: readonly string[], rows: readonly (readonly string[])[]): string {
  const line = (cells: readonly string[]) => `| ${cells.join(' | ')} |`;
  return [line(head), line(head.map(() => '---')), ...rows.map(line)].join('\n');
}

/** Paragraphs that have something to say, one below the other. */
export function paragraphs(...parts: readonly (string | undefined | false)[]): string {
  return parts.filter((part) => part).join('\n\n');
}

/** Lines of one paragraph. */
export function lines(...parts: readonly (string | undefined | false)[]): string {
  return parts.filter((part) => part).join('  \n');
}

/** What somebody wrote as a description: Markdown of a person is shown as plain text. */
export function description(text: string | undefined): string | undefined {
  return text
    ?.split(/\n{2,}/)
    .map(plain)
    .join('\n\n');
}

/**
 * How figures were got, below a line: it is there for who scrolls on.
 *
 * @param depth How many figures deep: those that went into one, those that went into these, …
 */
export function workings(all: readonly Working[], depth: number): string | undefined {
  if (all.length === 0) return undefined;
  const text = all.map((working) => formatWorking(cut(working, depth)).join('\n')).join('\n\n');
  return `---\n\n*How the figures were got*\n\n\`\`\`text\n${text.replaceAll('```', "'''")}\n\`\`\``;
}

/** What a hover says without how its figures were got, for narrow places. */
export function withoutWorkings(markdown: string): string {
  return markdown.split(/\n\n---\n\n/, 1)[0]!;
}

function cut(working: Working, depth: number): Working {
  return { ...working, steps: depth > 0 ? working.steps.map((step) => cut(step, depth - 1)) : [] };
}
