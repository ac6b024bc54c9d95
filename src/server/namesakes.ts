/** Whether a new name would clash with one that stands. */
import type { AstNode, LangiumDocument, ReferenceDescription } from 'langium';
import type { PlanFile, Statement, Subject } from '../language/generated/ast.ts';

/** Statements whose names share one space; every other kind has a space of its own. */
const things: ReadonlySet<string> = new Set(['Node', 'Source', 'Destination', 'Link', 'Circuit', 'Uplink']);

/** What already has this name, in words: in the space of the target, or in any where that is asked. */
export function namesakeOf(
  name: string,
  target: AstNode,
  documents: Iterable<LangiumDocument>,
  anySpace: boolean,
): string | undefined {
  for (const statement of statementsOf(documents)) {
    if (statement === target || !('name' in statement) || statement.name !== name) continue;
    const sameSpace =
      statement.$type === target.$type || (things.has(statement.$type) && things.has(target.$type));
    if (sameSpace || anySpace) return `a ${statement.$type.toLowerCase()} named \`${name}\``;
  }
  return undefined;
}

/**
 * Whether the old or the new name stands alone behind `accept … on` or `measured`: there a name can mean anything
 * that has one, so a namesake of any kind would change what is meant.
 */
export function spokenOfAlone(
  newName: string,
  target: AstNode,
  uses: readonly ReferenceDescription[],
  documents: Iterable<LangiumDocument>,
): boolean {
  const oldName = (target as { name?: string }).name;
  if (uses.length === 0) return false;
  for (const statement of statementsOf(documents)) {
    if (statement.$type !== 'Accept' && statement.$type !== 'Measured') continue;
    const subject: Subject | undefined = statement.subject;
    if (!subject || subject.arrow !== undefined || subject.first?.port) continue;
    const spoken = subject.first?.thing?.$refText;
    if (spoken !== undefined && (spoken === newName || spoken === oldName)) return true;
  }
  return false;
}

function* statementsOf(documents: Iterable<LangiumDocument>): Generator<Statement> {
  for (const document of documents) yield* (document.parseResult.value as PlanFile).statements;
}
