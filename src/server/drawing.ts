import { AstUtils, CstUtils, type LangiumDocument, URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import type { Analysis } from '../analysis/model.ts';
import { makeScene } from '../documents/drawing/make-scene.ts';
import type { Scene } from '../documents/drawing/scene.ts';
import type { Statement } from '../plan/plan.ts';
import type { CurrentPlan } from './plans.ts';
import {
  type Drawing,
  type DrawingQuestion,
  type PlaceInText,
  serverRequests,
  type ThingAtQuestion,
  type ThingQuestion,
} from './protocol.ts';
import { rangeOf } from './publish.ts';
import type { FeedplotSharedServices } from './services.ts';

/** Answers what a drawing of a plan shows, where its things stand in the text, and which of them the cursor is in. */
export function addDrawingHandlers(connection: Connection, services: FeedplotSharedServices): void {
  /** The last drawing of each plan that was read without an error of the text. */
  const whole = new Map<string, Scene>();
  const documentOf = (uri: string) => services.workspace.LangiumDocuments.getDocument(URI.parse(uri));

  connection.onRequest(serverRequests.drawing, ({ uri }: DrawingQuestion): Drawing | null => {
    const document = documentOf(uri);
    const plan = document && services.plans.Plans.of(document);
    return plan ? drawingOf(plan, whole) : null;
  });

  connection.onRequest(serverRequests.thingPlace, ({ plan, id, what }: ThingQuestion): PlaceInText | null => {
    const statement = statementOf(services.plans.Plans.all().get(plan)?.analysis, id, what);
    if (!statement) return null;
    return { uri: statement.source.file, range: rangeOf(statement.source.range('name')) };
  });

  connection.onRequest(serverRequests.thingAt, ({ uri, position }: ThingAtQuestion): string | null => {
    const document = documentOf(uri);
    return document ? thingAt(document, position, services) : null;
  });
}

/** While the text has errors, the last whole drawing stands in: half a plan would tear the picture apart. */
function drawingOf({ uri, assembled, analysis }: CurrentPlan, whole: Map<string, Scene>): Drawing {
  const last = whole.get(uri);
  const stale = assembled.unreadables.length > 0 && last !== undefined;
  const scene = stale ? last : makeScene(analysis);
  if (assembled.unreadables.length === 0) whole.set(uri, scene);
  return { plan: uri, scene, stale };
}

function statementOf(analysis: Analysis | undefined, id: string, what: string): Statement | undefined {
  if (!analysis) return undefined;
  if (what === 'room') return analysis.places.get(id)?.statement;
  if (what === 'wire' || what === 'ribbon') return analysis.links.find((link) => link.name === id)?.statement;
  return analysis.things.get(id)?.statement;
}

/** The thing that the statement under the cursor makes: its own, or the link that a short form stands for. */
function thingAt(
  document: LangiumDocument,
  { line, character }: ThingAtQuestion['position'],
  services: FeedplotSharedServices,
): string | null {
  const root = document.parseResult.value.$cstNode;
  const leaf =
    root && CstUtils.findLeafNodeBeforeOffset(root, document.textDocument.offsetAt({ line, character }));
  if (!leaf) return null;
  const fact = services.plans.Plans.statementOf(leaf.astNode)?.fact;
  if (!fact || AstUtils.getDocument(leaf.astNode) !== document) return null;
  if (fact.kind === 'link')
    return fact.name ?? `${fact.from.node}.${fact.from.port}>${fact.to.node}.${fact.to.port}`;
  const drawn = fact.kind === 'node' || fact.kind === 'source' || fact.kind === 'destination';
  return drawn ? fact.name : null;
}
