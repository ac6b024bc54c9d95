/** Everything that is found in a plan, put in order, with what the crew has accepted kept apart. */
import { firstFrom } from '../analysis/lists.ts';
import type { Acceptance, Analysis } from '../analysis/model.ts';
import type { Statement, StatementOf, Unreadable } from '../plan/plan.ts';
import type { ReadFile } from '../plan/read-file.ts';
import { checkNames, faultChecks, planChecks } from './catalogue.ts';
import { type Check, type CheckText, faultReports, type Report } from './check.ts';
import type { Finding, Fix } from './finding.ts';
import { acceptFix } from './fixes/accept.ts';
import { findUnusedAcceptances, nothingAccepted } from './nothing-accepted.ts';
import { subjectsOf } from './subjects.ts';
import { toolFault } from './tool-fault.ts';
import { unreadable } from './unreadable.ts';

export interface FindingsOptions {
  /** `typing`: without the checks whose figures are costly. Default: all checks. */
  readonly when?: 'typing' | 'all';
  /** Is told an exception inside a check, to log it. */
  readonly onToolFault?: (check: string, error: unknown) => void;
  /** The statements in which the reader found something wrong, where they are known. */
  readonly faulty?: readonly Statement[];
  /** The checks to ask; tests put in their own. */
  readonly checks?: readonly Check[];
}

/** A finding that the crew lives with, and where they say why. */
export interface AcceptedFinding {
  readonly finding: Finding;
  readonly acceptance: StatementOf<'accept'>;
}

export interface CheckedPlan {
  /** In order of files and statements, then of checks. */
  readonly findings: readonly Finding[];
  /** In the same order. */
  readonly accepted: readonly AcceptedFinding[];
}

/** Asks every check about a plan. */
export function checkPlan(
  analysis: Analysis,
  unreadables: readonly Unreadable[],
  options?: FindingsOptions,
): CheckedPlan {
  const steps = checking(analysis, unreadables, options);
  for (;;) {
    const step = steps.next();
    if (step.done) return step.value;
  }
}

/** The same in steps, a check a step; it may be given up after any of them. */
export function* checking(
  analysis: Analysis,
  unreadables: readonly Unreadable[],
  { when = 'all', onToolFault, faulty, checks = planChecks }: FindingsOptions = {},
): Generator<undefined, CheckedPlan> {
  const collected = new Collection(analysis);
  for (const one of firstOfEachLine(unreadables)) collected.addUnreadable(one);
  const ask = (check: CheckText, find: (report: (found: Report) => void) => void) => {
    try {
      find((report) => collected.add(check, report));
    } catch (error) {
      onToolFault?.(check.name, error);
      collected.addToolFault(check.name);
    }
  };
  const withFaults = faultyPart(analysis, faulty);
  const [now, later] = when === 'all' ? [checks, []] : byCost(checks);
  for (const check of now) {
    ask(check, (report) => check.find(readsFaults.has(check) ? withFaults : analysis, report, unreadables));
    yield;
  }
  const accepted = matchAcceptances(collected.all(), analysis.acceptances);
  const outcome = {
    names: checkNames,
    used: new Set(accepted.values()),
    notAsked: new Set(later.map(({ name }) => name)),
  };
  ask(nothingAccepted, (report) => findUnusedAcceptances(analysis, outcome, report));
  const findings = collected.inOrder();
  return {
    findings: findings.filter((finding) => !accepted.has(finding)),
    accepted: findings.flatMap((finding) => {
      const acceptance = accepted.get(finding);
      return acceptance ? [{ finding, acceptance }] : [];
    }),
  };
}

const readsFaults: ReadonlySet<CheckText> = new Set(faultChecks);

/** The analysis with those statements alone in which the reader found something wrong: there are few. */
function faultyPart(analysis: Analysis, known: readonly Statement[] | undefined): Analysis {
  const statements = known ?? analysis.plan.statements.filter(({ faults }) => faults.length > 0);
  return { ...analysis, plan: { ...analysis.plan, statements } };
}

/** One slip often leaves several words of its line over; the first is where to look. */
function firstOfEachLine(unreadables: readonly Unreadable[]): Unreadable[] {
  const lines = new Set<string>();
  return unreadables.filter(({ file, range }) => {
    const line = `${range.line} ${file}`;
    if (lines.has(line)) return false;
    lines.add(line);
    return true;
  });
}

function byCost(checks: readonly Check[]): [quick: readonly Check[], idle: readonly Check[]] {
  return [checks.filter(({ when }) => when !== 'idle'), checks.filter(({ when }) => when === 'idle')];
}

/** What is wrong with a plan, without what the crew has accepted. */
export function findingsOf(
  analysis: Analysis,
  unreadables: readonly Unreadable[],
  options?: FindingsOptions,
): readonly Finding[] {
  return checkPlan(analysis, unreadables, options).findings;
}

/** Whether a finding comes from a check that is not asked while somebody types. */
export function waitsForRest({ check, place }: Finding): boolean {
  if (idleChecks.has(check)) return true;
  // That nothing was accepted is known only when the check that is named has been asked.
  const fact = check === nothingAccepted.name && 'statement' in place ? place.statement.fact : undefined;
  return fact?.kind === 'accept' && fact.check !== undefined && idleChecks.has(fact.check);
}

const idleChecks: ReadonlySet<string> = new Set(byCost(planChecks)[1].map(({ name }) => name));

/** What is wrong and accepted: the accepted risks of the book. */
export function acceptedFindingsOf(
  analysis: Analysis,
  options?: FindingsOptions,
): readonly AcceptedFinding[] {
  return checkPlan(analysis, [], options).accepted;
}

/** What can be told of a file that belongs to no plan: what cannot be read, and what is wrong inside its statements. */
export function statementFindings({ statements, unreadables }: ReadFile): readonly Finding[] {
  const found = statements.flatMap((statement) =>
    faultChecks.flatMap((check) =>
      faultReports(statement, check.name).map((report) => findingOf(check, report)),
    ),
  );
  return [...firstOfEachLine(unreadables).map(unreadableFinding), ...found];
}

/** What is found, and where it stands in the order of statements; text positions are not asked, they cost and move. */
class Collection {
  readonly #analysis: Analysis;
  readonly #found: { readonly finding: Finding; readonly where: Statement | string }[] = [];

  constructor(analysis: Analysis) {
    this.#analysis = analysis;
  }

  add(check: CheckText, report: Report): void {
    this.#push(findingOf(check, report, this.#analysis), 'file' in report ? report.file : report.statement);
  }

  addUnreadable(one: Unreadable): void {
    this.#push(unreadableFinding(one), one.file);
  }

  addToolFault(check: string): void {
    const { file } = this.#analysis.plan;
    this.#push(toolFaultFinding(file, check), file);
  }

  all(): Finding[] {
    return this.#found.map(({ finding }) => finding);
  }

  /** Within a statement as they were added, so in the order of the catalogue. */
  inOrder(): Finding[] {
    if (this.#found.length < 2) return this.all();
    const orders = ordersOf(this.#analysis.plan, new Set(this.#found.map(({ where }) => where)));
    const orderOf = (where: Statement | string) => orders.get(where) ?? -1;
    return [...this.#found].sort((a, b) => orderOf(a.where) - orderOf(b.where)).map(({ finding }) => finding);
  }

  #push(finding: Finding, where: Statement | string): void {
    this.#found.push({ finding, where });
  }
}

/** Places of some statements and of the beginnings of some files; the statements of a file stand together. */
function ordersOf(
  { files, statements }: Analysis['plan'],
  some: ReadonlySet<Statement | string>,
): Map<Statement | string, number> {
  const orders = new Map<Statement | string, number>();
  for (let i = 0; i < statements.length; i++) if (some.has(statements[i]!)) orders.set(statements[i]!, i);
  const ranks = new Map(files.map((file, rank) => [file, rank]));
  for (const file of some) {
    const rank = typeof file === 'string' ? ranks.get(file) : undefined;
    if (rank === undefined) continue;
    // Just ahead of its first statement, and behind files before it that have none.
    const first = firstFrom(statements, ({ source }) => ranks.get(source.file)! >= rank);
    orders.set(file, first - 1 + (rank + 1) / (files.length + 1));
  }
  return orders;
}

function findingOf(check: CheckText, report: Report, analysis?: Analysis): Finding {
  const { message, severity, subject = null, segment = null, related = [], fixes } = report;
  let made: readonly Fix[] | undefined;
  const finding: Finding = {
    check: check.name,
    severity: severity ?? check.severity,
    message,
    place: 'file' in report ? topOf(report.file) : { statement: report.statement, part: report.part },
    subject,
    segment,
    related,
    get fixes() {
      made ??= [...fixesOf(fixes, analysis), ...acceptFixes(this, analysis)];
      return made;
    },
  };
  return finding;
}

function fixesOf(fixes: Report['fixes'], analysis: Analysis | undefined): readonly Fix[] {
  if (typeof fixes !== 'function') return fixes ?? [];
  return analysis ? fixes(analysis) : [];
}

function topOf(file: string): Finding['place'] {
  return { file, range: { line: 0, column: 0, endLine: 0, endColumn: 1 } };
}

function acceptFixes(finding: Finding, analysis: Analysis | undefined): readonly Fix[] {
  const fix = analysis && acceptFix(analysis, finding);
  return fix ? [fix] : [];
}

/** Its place is the unreadable text itself, which moves with every line typed above. */
function unreadableFinding(place: Unreadable): Finding {
  return {
    check: unreadable.name,
    severity: unreadable.severity,
    message: place.message,
    place,
    subject: null,
    segment: null,
    related: [],
    fixes: [],
  };
}

function toolFaultFinding(file: string, check: string): Finding {
  return {
    check: toolFault.name,
    severity: toolFault.severity,
    message: `The check \`${check}\` has failed. This is a fault of Feedplot, not of the plan: everything else still holds. Please report it together with the plan.`,
    place: topOf(file),
    subject: null,
    segment: null,
    related: [],
    fixes: [],
  };
}

/** The findings that are accepted: one check, one subject, in all segments. */
function matchAcceptances(
  findings: readonly Finding[],
  acceptances: readonly Acceptance[],
): Map<Finding, StatementOf<'accept'>> {
  const accepted = new Map<Finding, StatementOf<'accept'>>();
  if (acceptances.length === 0) return accepted;
  const bySubject = new Map<string, StatementOf<'accept'>>();
  for (const { statement, of } of acceptances) {
    for (const subject of subjectsOf(statement, of)) {
      const key = `${statement.fact.check} on ${subject}`;
      if (!bySubject.has(key)) bySubject.set(key, statement);
    }
  }
  for (const finding of findings) {
    if (finding.subject === null) continue;
    const acceptance = bySubject.get(`${finding.check} on ${finding.subject}`);
    if (acceptance) accepted.set(finding, acceptance);
  }
  return accepted;
}
