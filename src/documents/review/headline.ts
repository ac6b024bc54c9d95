import type { Finding } from '../../checks/finding.ts';
import { counted } from '../findings/located.ts';
import type { Review } from './review.ts';
import { sectionsOf } from './sections.ts';

/** Whether anything at all changed. */
function isUnchanged(review: Review): boolean {
  return sectionsOf(review).length === 0;
}

/** What a reviewer should know before reading on, the worst first: `1 new error`, `2 pictures change`. */
export function headlineOf(review: Review): string[] {
  const { newFindings, mendedFindings, acceptedFindings, noLongerAccepted, pictures, cover, steps, merge } =
    review;
  const byMerge = new Set(merge?.findings);
  const bad = [
    ...newFindings.filter((finding) => !byMerge.has(finding)),
    ...noLongerAccepted.map(({ finding }) => finding),
  ];
  const count = (severity: Finding['severity']) => bad.filter((one) => one.severity === severity).length;
  const lost = new Set(
    pictures.filter(({ change }) => change === 'loses its picture').map(({ name }) => name),
  );
  const changed = new Set(pictures.map(({ name }) => name));
  for (const name of lost) changed.delete(name);
  const uncovered = new Set(cover.filter(({ change }) => change === 'cover lost').map(({ name }) => name));
  const dark = steps.filter((step) => step.dark.length > 0).length;
  const phrases = [
    merge ? `${counted(byMerge.size, 'finding')} brought by the merge itself` : '',
    phrase(count('error'), 'new error'),
    phrase(count('warning'), 'new warning'),
    phrase(count('info'), 'new note'),
    lost.size > 0 ? `${spots(lost.size)} ${lost.size === 1 ? 'loses its' : 'lose their'} picture` : '',
    phrase(uncovered.size, 'picture', 'less safe against a failure'),
    changed.size > 0 ? `${spots(changed.size)} ${changed.size === 1 ? 'changes' : 'change'}` : '',
    phrase(mendedFindings.length, 'finding', 'mended'),
    phrase(acceptedFindings.length, 'finding', 'accepted'),
    steps.length > 0
      ? `${counted(steps.length, 'step')} on site${dark > 0 ? `, ${dark} with a picture dark` : ''}`
      : '',
  ].filter(Boolean);
  if (phrases.length > 0) return phrases;
  return [isUnchanged(review) ? 'nothing changes' : 'nothing changes for pictures and hands'];
}

/** Where pictures are watched or go in. */
function spots(count: number): string {
  return count === 1 ? '1 screen or input' : `${count} screens or inputs`;
}

function phrase(count: number, what: string, does = ''): string {
  return count === 0 ? '' : `${counted(count, what)}${does ? ` ${does}` : ''}`;
}
