import type { CheckText } from '../../checks/check.ts';
import { list, object, oneOf, text, type ValueOf, whole } from '../json/schema.ts';

/** What `feedplot explain CHECK --json` prints. */
export const checkExplanationShape = object('What a check means', {
  schema: whole('Version of this shape: 1'),
  kind: oneOf('What is explained', ['check']),
  name: text('Its name'),
  severity: oneOf('How serious it is, unless a finding says otherwise', ['error', 'warning', 'info']),
  summary: text('What is wrong when it speaks'),
  explanation: text('What it means, how it is judged and what mends it, in Markdown'),
  examples: list(
    'Plans in which it speaks, and the same mended',
    object('An example', { wrong: text('In which it speaks'), right: text('In which it does not') }),
  ),
});

export function checkExplanationJson(check: CheckText): ValueOf<typeof checkExplanationShape> {
  const { name, severity, summary, explanation, examples } = check;
  return {
    schema: 1,
    kind: 'check',
    name,
    severity,
    summary,
    explanation,
    examples: examples.map(({ wrong, right }) => ({ wrong, right })),
  };
}
