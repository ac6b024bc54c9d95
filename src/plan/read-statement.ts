import type { AstNode } from 'langium';
import type * as ast from '../language/generated/ast.ts';
import type { Fact } from './facts.ts';
import type { Source, Statement } from './plan.ts';
import { readCable, readInterface, readKit } from './read-kinds.ts';
import {
  readAccept,
  readBlack,
  readCase,
  readFeed,
  readMeasured,
  readPlan,
  readProved,
  readSegment,
  readStock,
} from './read-show.ts';
import {
  readCircuit,
  readDestination,
  readLink,
  readNode,
  readRun,
  readSource,
  readUplink,
} from './read-things.ts';
import { Reading } from './reading.ts';
import { stringsOf } from './strings.ts';

/**
 * What a statement says, read from its syntax tree alone.
 *
 * @returns no fact while a part without which it means nothing is missing: its name, an end, a target. The parser has
 *   told that already.
 */
export function readStatement(
  node: ast.Statement,
  source: Source,
  description: string | undefined,
): Statement | undefined {
  if (!nameless.has(node.$type) && (node as { name?: string }).name === undefined) return undefined;
  const reading = new Reading();
  const fact = readFact(reading, node);
  if (!fact) return undefined;
  reading.checkName((node as { name?: string }).name);
  checkStrings(reading, node);
  return { fact, label: labelOf(node), description, faults: reading.faults, source };
}

/** Statements that declare no name, or need none. What is missing after an error is missing as a property too. */
const nameless: ReadonlySet<string> = new Set<ast.Statement['$type']>([
  'PlanHead',
  'Import',
  'Run',
  'Link',
  'Feed',
  'Black',
  'Stock',
  'Accept',
  'Measured',
  'Proved',
]);

function readFact(r: Reading, node: ast.Statement): Fact | undefined {
  switch (node.$type) {
    case 'PlanHead':
      return readPlan(r, node);
    case 'Import':
      return node.path === undefined ? undefined : { kind: 'import', path: node.path };
    case 'Place':
      return { kind: 'place', name: node.name };
    case 'Run':
      return readRun(r, node);
    case 'Circuit':
      return readCircuit(r, node);
    case 'Kit':
      return readKit(r, node);
    case 'Cable':
      return readCable(r, node);
    case 'Interface':
      return readInterface(r, node);
    case 'Node':
      return readNode(r, node);
    case 'Source':
      return readSource(r, node);
    case 'Destination':
      return readDestination(r, node);
    case 'Link':
      return readLink(r, node);
    case 'Feed':
      return readFeed(r, node);
    case 'Segment':
      return readSegment(r, node);
    case 'Black':
      return readBlack(r, node);
    case 'Uplink':
      return readUplink(r, node);
    case 'Stock':
      return readStock(r, node);
    case 'Case':
      return readCase(r, node);
    case 'Accept':
      return readAccept(r, node);
    case 'Measured':
      return readMeasured(r, node);
    case 'Proved':
      return readProved(r, node);
  }
}

function labelOf(node: ast.Statement): string | undefined {
  return 'label' in node ? node.label : undefined;
}

/** Tells curly quotes and strings that end with their line: both are read, so that the rest is kept. */
function checkStrings(r: Reading, node: AstNode): void {
  let count = 0;
  for (const { text } of stringsOf(node.$cstNode)) {
    const part = `string:${count++}`;
    if (/^[“”„«]/.test(text)) {
      const mended = `"${text.slice(1).replace(/["“”»]$/, '')}"`;
      r.fault('curly-quotes', part, 'Text stands between straight quotes: "like this".', {
        title: 'Use straight quotes',
        text: mended,
      });
    } else if (text.length < 2 || !text.endsWith('"')) {
      r.fault('open-string', part, 'This text is not closed: a string ends on its own line, with a ".', {
        title: 'Close the text',
        text: `${text}"`,
      });
    }
  }
}
