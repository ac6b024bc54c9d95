import { catalogue } from '../../checks/catalogue.ts';
import { bold, paragraphs } from './markdown.ts';

/** What a check judges, in its own words. */
export function checkHover(name: string): string | undefined {
  const check = catalogue.find((one) => one.name === name);
  return check && paragraphs(`${bold(check.name)} · ${check.severity}`, check.summary, check.explanation);
}
