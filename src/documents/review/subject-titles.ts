import type { Finding } from '../../checks/finding.ts';
import type { Comparison } from './comparison.ts';

/** What people call the things that findings are about, where that is not their name in the plan already. */
export function subjectTitles(comparison: Comparison, findings: readonly Finding[]): Map<string, string> {
  const titles = new Map<string, string>();
  for (const { subject } of findings) {
    if (subject === null) continue;
    const title = subject
      .split(' -> ')
      .map((name) => titleOf(comparison, name))
      .join(' → ');
    if (title !== subject.replaceAll(' -> ', ' → ')) titles.set(subject, title);
  }
  return titles;
}

/** Of a thing, or of a socket of a box. */
function titleOf({ is, titles: { is: titles } }: Comparison, name: string): string {
  const thing = is.things.get(name);
  if (thing) return thing.kind === 'link' ? titles.link(thing) : titles.of(thing);
  const node = is.nodes.get(name.slice(0, Math.max(0, name.indexOf('.'))));
  const port = node?.usedPorts.find((one) => one?.text === name);
  return port ? titles.port(port) : name;
}
