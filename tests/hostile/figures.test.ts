/** Each number of a plan, one after the other, as small and as large as can be written: every figure is still explained. */
import { describe, expect, it } from 'vitest';
import { analyse } from '../../src/analysis/analyse.ts';
import { checkPlan } from '../../src/checks/findings.ts';
import { workingsText } from '../../src/documents/workings/text.ts';
import { explainedNames, workingsOf } from '../../src/documents/workings/workings.ts';
import { linkHover } from '../../src/server/hover/link-hover.ts';
import { hoverOf } from '../../src/server/hover.ts';
import { everyStatement } from '../support/every-statement.ts';
import { assembledOf } from '../support/plans.ts';
import { smallPlan } from '../support/small-plan.ts';
import { misspoken } from './words.ts';

const extremes = ['0', '0.000000000000000000001', '0.09', '999999', '99999999999999999999', '9'.repeat(400)];

/** Everything that is told of a plan's figures, to whoever asks. */
function told(text: string): string {
  const { plan, unreadables } = assembledOf(text);
  const analysis = analyse(plan);
  const { findings } = checkPlan(analysis, unreadables, {
    onToolFault: (_check, error) => {
      throw error;
    },
  });
  return [
    ...findings.map(({ message }) => message),
    ...[...explainedNames(analysis)].flatMap((name) => workingsText(workingsOf(analysis, name) ?? [])),
    ...plan.statements
      .filter(({ source }) => !plan.libraryFiles.has(source.file))
      .map((statement) => hoverOf(analysis, statement) ?? ''),
    ...analysis.links.map((link) => linkHover(analysis, link) ?? ''),
  ].join('\n');
}

const texts: Record<string, string> = {
  'a small plan': smallPlan.join('\n'),
  'every statement': everyStatement.join('\n'),
};

describe.each(Object.entries(texts))('%s', (_name, text) => {
  const numbers = [...text.matchAll(/(?<![\w.])\d+(\.\d+)?(?![\w.:])/g)];

  it.each(extremes)(
    'with a number of %s',
    (extreme) => {
      expect(numbers.length).toBeGreaterThan(50);
      for (const { index, 0: number } of numbers) {
        const changed = text.slice(0, index) + extreme + text.slice(index + number.length);
        const where = changed.slice(Math.max(0, index - 40), index + 30);
        let fault: string | undefined;
        try {
          fault = misspoken(told(changed), 'editor');
        } catch (error) {
          fault = error instanceof Error ? error.stack : String(error);
        }
        expect(fault, where).toBeUndefined();
      }
    },
    120_000,
  );
});
