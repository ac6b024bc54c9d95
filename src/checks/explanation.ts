import { catalogue } from './catalogue.ts';
import type { CheckText } from './check.ts';

const byName = new Map(catalogue.map((check) => [check.name, check]));

/**
 * What a check means, as Markdown: what it says, why it matters, how it is judged and what mends it, with examples.
 *
 * @returns undefined when there is no check of this name.
 */
export function explainCheck(name: string): string | undefined {
  const check = byName.get(name);
  return check && explanationOf(check);
}

/** Under a heading of its own; pages put several below each other. */
export function explanationOf({ name, severity, summary, explanation, examples }: CheckText): string {
  const [example] = examples;
  const parts = [`## ${name}`, `*${severity}* · ${summary}`, explanation];
  if (example) parts.push('**Wrong**', fenced(example.wrong), '**Mended**', fenced(example.right));
  return `${parts.join('\n\n')}\n`;
}

function fenced(plan: string): string {
  return `\`\`\`feedplot\n${plan.trim()}\n\`\`\``;
}
