import { type LangiumDocument, URI } from 'langium';
import type { Connection } from 'vscode-languageserver';
import type { Analysis, Traffic } from '../analysis/model.ts';
import { formatShare } from '../physics/display.ts';
import { type Health, type HealthQuestion, serverRequests, type WorstLink } from './protocol.ts';
import { rangeOf } from './publish.ts';
import type { FeedplotSharedServices } from './services.ts';

/** Answers how the plan stands that a file belongs to. */
export function addHealthHandler(connection: Connection, services: FeedplotSharedServices): void {
  connection.onRequest(serverRequests.health, ({ uri }: HealthQuestion): Health | null => {
    const document = services.workspace.LangiumDocuments.getDocument(URI.parse(uri));
    return document ? healthOf(document, services) : null;
  });
}

function healthOf(document: LangiumDocument, services: FeedplotSharedServices): Health | null {
  const plan = services.plans.Plans.of(document);
  if (!plan) return null;
  const count = (severity: string) => plan.findings.filter((finding) => finding.severity === severity).length;
  return {
    plan: plan.uri,
    title: plan.analysis.settings.title,
    errors: count('error'),
    warnings: count('warning'),
    worst: worstLink(plan.analysis),
  };
}

function worstLink({ traffic }: Analysis): WorstLink | null {
  let worst: Traffic | undefined;
  for (const one of traffic) {
    if (!one.link.network || one.worst.share === undefined || one.worst.share <= 0) continue;
    if (!worst || one.worst.share > worst.worst.share!) worst = one;
  }
  if (worst?.worst.share === undefined) return null;
  const { link } = worst;
  const { source } = link.statement;
  return {
    name: link.name,
    share: formatShare(worst.worst.share),
    segment: worst.worst.segment?.name ?? null,
    place: { uri: source.file, range: rangeOf(source.range('name')) },
  };
}
