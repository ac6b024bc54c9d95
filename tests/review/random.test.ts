import fc from 'fast-check';
import { expect, test } from 'vitest';
import { reviewOf } from '../../src/documents/review/compare.ts';
import type { Review } from '../../src/documents/review/review.ts';
import { sectionsOf } from '../../src/documents/review/sections.ts';
import { twoShows } from './random-shows.ts';
import { pluggedIn, replay } from './replay.ts';
import { sideOf } from './reviews.ts';

const runs = { numRuns: 150 };

/** Old names of boxes and what they are called now. */
function renamed({ things }: Review): Map<string, string> {
  return new Map(
    things.flatMap(({ kind, was, name }) =>
      was !== undefined && ['node', 'source', 'destination'].includes(kind) ? [[was, name]] : [],
    ),
  );
}

test('the steps can be done by hand in their order, and in the end every cable is where the new plan has it', () => {
  fc.assert(
    fc.property(twoShows, ([before, after]) => {
      const [old, fresh] = [sideOf(before, 'before'), sideOf(after, 'after')];
      const review = reviewOf(old, fresh);
      expect(replay(pluggedIn(old), review, renamed(review))).toEqual(pluggedIn(fresh));
    }),
    runs,
  );
});

test('what goes dark comes back, and only that: a picture that the new plan shows is never left dark', () => {
  fc.assert(
    fc.property(twoShows, ([before, after]) => {
      const { steps, pictures } = reviewOf(sideOf(before, 'before'), sideOf(after, 'after'));
      const dark = new Set<string>();
      for (const step of steps) {
        for (const title of step.dark) dark.add(title);
        for (const title of step.back) {
          expect(dark).toContain(title);
          dark.delete(title);
        }
      }
      expect([...dark]).toEqual([]);
      const lost = pictures.filter(({ change }) => change === 'loses its picture').map(({ title }) => title);
      // Where a picture ends as planned, it was dark before at most for the time of one step.
      const left = steps.flatMap((step) => step.dark.filter((title) => !step.back.includes(title)));
      for (const title of lost) expect(left).not.toContain(title);
    }),
    runs,
  );
});

test('a plan compared with itself has nothing to tell', () => {
  fc.assert(
    fc.property(twoShows, ([text]) => {
      expect(sectionsOf(reviewOf(sideOf(text, 'one'), sideOf(text, 'other')))).toEqual([]);
    }),
    runs,
  );
});

test('the same two plans give the same review', () => {
  fc.assert(
    fc.property(twoShows, ([before, after]) => {
      const told = () => JSON.stringify(sectionsOf(reviewOf(sideOf(before, 'a'), sideOf(after, 'b'))));
      expect(told()).toBe(told());
    }),
    { numRuns: 40 },
  );
});
