/** The nearest spelling of a word, for what speaks of names after the plan is read. */
export { nearest } from '../language/spelling.ts';
