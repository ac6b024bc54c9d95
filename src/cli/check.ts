import { join } from 'node:path';
import { catalogue } from '../checks/catalogue.ts';
import type { Finding } from '../checks/finding.ts';
import { findingsForGithub } from '../documents/findings/github.ts';
import { reportJson } from '../documents/findings/json.ts';
import { countBySeverity, type LocatedFinding, locateFindings } from '../documents/findings/located.ts';
import { findingsMarkdown } from '../documents/findings/markdown.ts';
import { findingsSarif } from '../documents/findings/sarif.ts';
import { findingsText, summaryText } from '../documents/findings/text.ts';
import { boundaryOf } from './disk.ts';
import { nameFrom } from './file-uri.ts';
import { findPlan } from './find-plan.ts';
import { jsonText } from './json-text.ts';
import { PlanReader } from './open-plan.ts';
import type { Define } from './program.ts';
import type { Terminal } from './terminal.ts';
import { EXIT_FINDINGS } from './trouble.ts';

const outputs = ['text', 'json', 'sarif', 'github', 'markdown'] as const;

interface Options {
  readonly output: (typeof outputs)[number];
  readonly strict?: true;
}

/** `feedplot check`: everything that is wrong or doubtful, by file and line. */
export const define: Define = (command, { terminal, program, version }) => {
  command
    .argument(
      '[plan...]',
      'plan files, or folders with one plan in each; without any, the one plan in this folder',
    )
    .addOption(
      command.createOption('--output <form>', 'how findings are printed').choices(outputs).default('text'),
    )
    .option('--strict', 'let warnings fail too')
    .action((named: string[], { output, strict }: Options) => {
      const checked = checkFiles(new PlanReader(program), terminal, named);
      // Machines look for the file below the repository, people below the folder they are in.
      const forMachines = output === 'sarif' || output === 'github';
      const root = forMachines ? boundaryOf(join(terminal.folder, 'any')) : terminal.folder;
      const nameOf = (uri: string) => nameFrom(root, uri);
      const findings = locateFindings(checked.findings, checked.files, nameOf);
      const plans = checked.named.map(nameOf);
      write(output, findings, plans, terminal, version);
      const { error, warning } = countBySeverity(findings);
      if (error > 0 || (strict && warning > 0)) process.exitCode = EXIT_FINDINGS;
    });
};

/** What was read and found. */
interface Checked {
  /** Addresses of the files that were named. */
  readonly named: readonly string[];
  /** Addresses of all files, in the order in which they were read. */
  readonly files: readonly string[];
  readonly findings: readonly Finding[];
}

function checkFiles(reader: PlanReader, terminal: Terminal, named: readonly string[]): Checked {
  const found = (named.length > 0 ? named : [undefined]).map((name) =>
    findPlan(reader, terminal.folder, name),
  );
  const read = new Map(found.map(({ path }) => [path, reader.file(path)]));
  for (const { path, chosen } of found) {
    if (chosen) terminal.note(`Checking ${nameFrom(terminal.folder, read.get(path)!.uri)}.`);
  }
  // A part is checked with the plans that import it; by itself it is told that its `plan` statement is missing.
  const plansFirst = [...read].sort(([, a], [, b]) => Number(b.hasPlan) - Number(a.hasPlan));
  const files = new Set<string>();
  const findings: Finding[] = [];
  for (const [path, { uri, hasPlan }] of plansFirst) {
    if (!hasPlan && files.has(uri)) continue;
    const plan = reader.plan(path);
    for (const file of plan.files) files.add(file);
    findings.push(...plan.findings);
  }
  return { named: [...read.values()].map(({ uri }) => uri), files: [...files], findings };
}

function write(
  output: Options['output'],
  findings: readonly LocatedFinding[],
  plans: readonly string[],
  terminal: Terminal,
  version: string,
): void {
  switch (output) {
    case 'text':
      for (const line of findingsText(findings, terminal.paint)) terminal.out(line);
      terminal.out(summaryText(findings, plans, terminal.paint));
      break;
    case 'json':
      terminal.out(jsonText(reportJson(findings, plans)));
      break;
    case 'sarif':
      terminal.out(jsonText(findingsSarif(findings, catalogue, version)));
      break;
    case 'github':
      for (const line of findingsForGithub(findings)) terminal.out(line);
      break;
    case 'markdown':
      terminal.out(findingsMarkdown(findings, plans));
      break;
  }
}
