/** The shipped examples as plans, read from their files. */
import { readdirSync, readFileSync } from 'node:fs';
import { join, relative, resolve } from 'node:path';
import { analyse } from '../../src/analysis/analyse.ts';
import type { Analysis } from '../../src/analysis/model.ts';
import { type CheckedPlan, checkPlan } from '../../src/checks/findings.ts';
import { assembledOf } from './plans.ts';

const examples = resolve(import.meta.dirname, '../../examples');

/** An analysis with its findings, as the papers are made of it. */
export type CheckedExample = { readonly analysis: Analysis } & CheckedPlan;

/** The plan `NAME/NAME.feedplot` with everything in its folder. */
export function checkedExample(name: string): CheckedExample {
  const folder = join(examples, name);
  const paths = readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => path.endsWith('.feedplot'))
    .sort((a, b) => Number(b === `${name}.feedplot`) - Number(a === `${name}.feedplot`));
  const files = paths.map((path) => [
    relative(folder, join(folder, path)).replaceAll('\\', '/'),
    readFileSync(join(folder, path), 'utf8'),
  ]);
  return checkedPlan(Object.fromEntries(files));
}

/** A plan from its text, or from several files, the first of which is the plan. */
export function checkedPlan(files: string | Record<string, string>): CheckedExample {
  const { plan, unreadables } = assembledOf(files);
  const analysis = analyse(plan);
  return { analysis, ...checkPlan(analysis, unreadables) };
}
