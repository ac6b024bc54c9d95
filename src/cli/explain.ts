import type { Analysis } from '../analysis/model.ts';
import { catalogue } from '../checks/catalogue.ts';
import { cableExplanationJson } from '../documents/explain/cable-json.ts';
import { cableExplanation } from '../documents/explain/cable-text.ts';
import { checkExplanationJson } from '../documents/explain/check-json.ts';
import { checkExplanation } from '../documents/explain/check-text.ts';
import { type FormatFigures, formatFigures } from '../documents/explain/format-figures.ts';
import { formatExplanationJson } from '../documents/explain/format-json.ts';
import { formatExplanation } from '../documents/explain/format-text.ts';
import { interfaceExplanationJson } from '../documents/explain/interface-json.ts';
import { interfaceExplanation } from '../documents/explain/interface-text.ts';
import { oneLine } from '../documents/printable.ts';
import { wrapLine } from '../documents/wrap.ts';
import { nearest } from '../language/spelling.ts';
import { PhysicsError } from '../physics/physics-error.ts';
import { parseFormat } from '../physics/raster.ts';
import { nameFrom } from './file-uri.ts';
import { findPlan } from './find-plan.ts';
import { PlanReader } from './open-plan.ts';
import type { Define } from './program.ts';
import type { Terminal } from './terminal.ts';
import { Trouble } from './trouble.ts';

/** What is told of a thing, to people and to machines. */
interface Explanation {
  text(): string[];
  json(): object;
}

/** `feedplot explain`: what a check, a format, a cable or an interface means. */
export const define: Define = (command, { terminal, program }) => {
  command
    .argument('<thing...>', 'a check, a format such as 1080p59.94 4:4:4 12 bit, a cable, an interface')
    .option('--json', 'for machines')
    .action((words: string[], { json }: { json?: true }) => {
      const analysis = knownKinds(new PlanReader(program), terminal);
      const explanation = explain(words.join(' '), analysis, terminal);
      if (json) terminal.out(JSON.stringify(explanation.json(), undefined, 2));
      else
        for (const line of explanation.text()) {
          for (const part of wrapLine(line, terminal.width)) terminal.out(part);
        }
    });
};

/** The cables and interfaces of the one plan in this folder; without one, those of the shipped library. */
function knownKinds(reader: PlanReader, terminal: Terminal): Analysis {
  try {
    const { path } = findPlan(reader, terminal.folder, undefined);
    const { analysis, uri } = reader.plan(path);
    terminal.note(`With the cables and interfaces of ${nameFrom(terminal.folder, uri)}.`);
    return analysis;
  } catch (error) {
    if (error instanceof Trouble) return reader.library();
    throw error;
  }
}

/** @throws Trouble when there is no such thing, with the nearest name that there is. */
function explain(thing: string, analysis: Analysis, { paint, width }: Terminal): Explanation {
  const check = catalogue.find(({ name }) => name === thing);
  if (check) {
    return { text: () => checkExplanation(check, paint, width), json: () => checkExplanationJson(check) };
  }
  const face = analysis.interfaces.get(thing);
  if (face) {
    return {
      text: () => interfaceExplanation(analysis, face, width),
      json: () => interfaceExplanationJson(analysis, face),
    };
  }
  const cable = analysis.cables.get(thing);
  if (cable) {
    return {
      text: () => cableExplanation(analysis, cable, width),
      json: () => cableExplanationJson(analysis, cable),
    };
  }
  if (/^\d|^audio\b/i.test(thing)) {
    const figures = readFormat(thing, analysis);
    return { text: () => formatExplanation(figures, width), json: () => formatExplanationJson(figures) };
  }
  throw new Trouble(unknownThing(thing, analysis));
}

/** @throws Trouble that says what of the format cannot be. */
function readFormat(thing: string, analysis: Analysis): FormatFigures {
  try {
    return formatFigures(parseFormat(thing), analysis);
  } catch (error) {
    if (error instanceof PhysicsError) throw new Trouble(error.message);
    throw error;
  }
}

function unknownThing(thing: string, { interfaces, cables }: Analysis): string {
  const names = [...catalogue.map(({ name }) => name), ...interfaces.keys(), ...cables.keys()];
  const guess = nearest(thing.toLowerCase(), names);
  const hint = guess
    ? `Did you mean ${guess}?`
    : 'Name a check (link-overload), a format (1080p59.94), a cable (cat6a) or an interface (sdi_3g).';
  return `Nothing is called ${oneLine(thing, 80)}. ${hint}`;
}
