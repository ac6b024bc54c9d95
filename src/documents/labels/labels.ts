import type { Analysis, Link, LinkEnd } from '../../analysis/model.ts';
import { socketsOf } from '../../analysis/ports.ts';
import { formatLength } from '../../physics/display.ts';
import type { Titles } from '../sheets/titles.ts';

/** What one label says, the most important first. */
export interface Label {
  /** In the largest letters: what this end goes into, or what the socket is called. */
  readonly main: string;
  /** Where the other end is, or whose socket it is. */
  readonly second: string;
  /** The cable's own label, its kind and length. */
  readonly foot: string;
  /** What a 2D code on it says. */
  readonly code: string;
}

/** Two labels for each cable, one for each end, in the order of statements: first the end that is written first. */
export function cableLabels(analysis: Analysis, titles: Titles): Label[] {
  return analysis.links.flatMap((link) => [
    cableLabel(link, link.from, link.to, analysis, titles),
    cableLabel(link, link.to, link.from, analysis, titles),
  ]);
}

function cableLabel(link: Link, here: LinkEnd, there: LinkEnd, analysis: Analysis, titles: Titles): Label {
  const { length_m } = link.length;
  const length = length_m === undefined ? undefined : formatLength(length_m, analysis.settings.units);
  const kind = link.cable && titles.cable(link.cable);
  const standby = link.standbyFor && `SPARE for ${titles.link(link.standbyFor)}`;
  return {
    main: titles.end(here),
    second: `other end: ${titles.end(there)}`,
    foot: [titles.ownLabel(link), standby, kind, length].filter(Boolean).join(' · '),
    code: codeOf(analysis, link.name, here.text),
  };
}

/** A label for each socket that is in use or that the crew gave a name. */
export function portLabels(analysis: Analysis, titles: Titles): Label[] {
  return [...analysis.nodes.values()].flatMap((node) =>
    socketsOf(node)
      .filter(({ label, port }) => label !== undefined || (port && port.links.length > 0))
      .map(({ kitPort, label, port }): Label => {
        const link = port?.links[0];
        const other = link && (link.from.port === port ? link.to : link.from);
        return {
          main: label ?? (other ? titles.end(other) : kitPort.name),
          second: `${titles.of(node)} · ${kitPort.name}`,
          foot: label !== undefined && other ? `takes ${titles.end(other)}` : '',
          code: codeOf(analysis, link?.name ?? '', `${node.name}.${kitPort.name}`),
        };
      }),
  );
}

/** A phone shows these lines as they are: plan and revision, link, end. */
function codeOf({ settings }: Analysis, link: string, end: string): string {
  const { revision } = settings.statement?.fact ?? {};
  const plan = [settings.title, revision].filter(Boolean).join(' ');
  return [plan, link, end].map((line) => (line.length > 60 ? `${line.slice(0, 59)}…` : line)).join('\n');
}
