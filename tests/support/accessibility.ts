/** What a page keeps from people who cannot see it, hear it or use a pointer, by the rules of axe. */
import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import type { Page } from 'playwright-core';

const axe = readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8');

interface Violation {
  readonly id: string;
  readonly impact: string;
  readonly nodes: readonly { readonly html: string }[];
}

/** Every rule that is broken, with the first thing that breaks it. */
export async function brokenRules(page: Page): Promise<{ id: string; impact: string; first: string }[]> {
  await page.evaluate(axe);
  const violations = await page.evaluate(async () => {
    const { axe } = window as unknown as { axe: { run(): Promise<{ violations: Violation[] }> } };
    return (await axe.run()).violations;
  });
  return violations.map(({ id, impact, nodes }) => ({
    id,
    impact,
    first: nodes[0]?.html.slice(0, 200) ?? '',
  }));
}
