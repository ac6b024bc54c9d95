import type { CheckText } from '../../checks/check.ts';
import type { Paint } from '../paint.ts';
import { wrapProse } from '../wrap.ts';

/** What a check means, how it is judged, what mends it, and a plan in which it speaks. */
export function checkExplanation(check: CheckText, paint: Paint, width: number): string[] {
  const { name, severity, summary, explanation, examples } = check;
  const [example] = examples;
  return [
    `${paint.heading(name)} (${severity})`,
    summary,
    '',
    ...wrapProse(explanation.replaceAll('**', ''), width),
    ...(example ? ['', 'Where it speaks:', '', ...indented(example.wrong)] : []),
    ...(example ? ['', 'Mended:', '', ...indented(example.right)] : []),
  ];
}

function indented(text: string): string[] {
  return text
    .trim()
    .split('\n')
    .map((line) => `  ${line}`.trimEnd());
}
