import { basename, dirname, resolve } from 'node:path';
import { drawSvg } from '../documents/drawing/draw-svg.ts';
import { makeScene, type SceneChoice } from '../documents/drawing/make-scene.ts';
import { type ThemeName, themes } from '../documents/drawing/themes.ts';
import { countBySeverity, counted } from '../documents/findings/located.ts';
import { oneLine } from '../documents/printable.ts';
import { nearest } from '../language/spelling.ts';
import { nameFrom } from './file-uri.ts';
import { findPlan } from './find-plan.ts';
import { type OpenPlan, PlanReader } from './open-plan.ts';
import { OutputFolder } from './output-folder.ts';
import type { Define } from './program.ts';
import type { Terminal } from './terminal.ts';
import { Trouble } from './trouble.ts';

interface Options {
  readonly to?: string;
  readonly segment?: string;
  readonly place?: string;
  readonly feed?: string;
  readonly theme: ThemeName;
}

/** `feedplot draw`: the plan as a picture. */
export const define: Define = (command, { terminal, program }) => {
  command
    .argument('[plan]', 'a plan file, or a folder with one plan; without it, the one plan in this folder')
    .option('--to <file>', 'write the SVG into this file instead of printing it')
    .option('--segment <name>', 'a part of the show; without it, what is always on')
    .option('--place <name>', 'only what stands in this place or is plugged into it')
    .option('--feed <name>', 'only what carries this source, or this feed: "program -> judges"')
    .addOption(
      command
        .createOption('--theme <name>', 'the colours around the pictures')
        .choices(Object.keys(themes))
        .default('light'),
    )
    .action(async (name: string | undefined, options: Options) => {
      const reader = new PlanReader(program);
      const { path, chosen } = findPlan(reader, terminal.folder, name);
      const plan = reader.plan(path);
      const planName = nameFrom(terminal.folder, plan.uri);
      if (chosen) terminal.note(`Drawing ${planName}.`);
      const svg = await draw(plan, options, terminal);
      tellErrors(plan, planName, terminal);
      if (options.to === undefined) terminal.out(svg);
      else write(svg, resolve(terminal.folder, options.to), terminal);
    });
};

/** @throws Trouble for a segment, place or feed that the plan does not have. */
async function draw({ analysis }: OpenPlan, options: Options, terminal: Terminal): Promise<string> {
  const { theme, segment, place, feed } = options;
  if (segment !== undefined) mustBeOneOf('segment', segment, [...analysis.segments.keys()]);
  if (place !== undefined) mustBeOneOf('place', place, [...analysis.places.keys()]);
  const scene = makeScene(analysis, {
    ...(place === undefined ? {} : { place }),
    ...(feed === undefined ? {} : chosenFeed(feed, analysis)),
  });
  if (scene.boxes.length === 0)
    terminal.note('Nothing of this plan can be drawn yet: no node stands anywhere.');
  terminal.progress(`Laying out ${scene.boxes.length} boxes`);
  const { placeScene } = await import('../documents/drawing/place-scene.ts');
  const placement = await placeScene(scene);
  terminal.progress('');
  return drawSvg(scene, placement, { theme, segment: segment ?? null });
}

/** A source by its name, or a feed as it is written, whatever blanks and arrow. */
function chosenFeed(wanted: string, { sources, feeds }: OpenPlan['analysis']): SceneChoice {
  if (sources.has(wanted)) return { source: wanted };
  const name = wanted.trim().replace(/\s*(->|→)\s*/, ' -> ');
  const names = [...new Set(feeds.map((feed) => feed.name))];
  if (!names.includes(name)) mustBeOneOf('source or feed', name, [...sources.keys(), ...names]);
  return { feed: name };
}

/** So many names are listed; more are no help. */
const MOST_LISTED = 12;

function mustBeOneOf(kind: string, name: string, names: readonly string[]): void {
  if (names.includes(name)) return;
  const guess = nearest(name, names);
  const listed = names.slice(0, MOST_LISTED).join(', ') + (names.length > MOST_LISTED ? ', …' : '');
  throw new Trouble(
    [
      `This plan has no ${kind} called ${oneLine(name, 80)}.`,
      guess && `Did you mean ${guess}?`,
      names.length > 0 ? `There ${names.length === 1 ? 'is' : 'are'} ${listed}.` : 'It has none at all.',
    ]
      .filter(Boolean)
      .join(' '),
  );
}

function tellErrors({ findings }: OpenPlan, name: string, terminal: Terminal): void {
  const { error } = countBySeverity(findings);
  if (error > 0)
    terminal.note(
      `${name} has ${counted(error, 'error')}: the drawing shows what could be read, and \`feedplot check\` tells where.`,
    );
}

/** Into exactly this file, whole or not at all. */
function write(svg: string, path: string, terminal: Terminal): void {
  new OutputFolder(dirname(path)).write(basename(path), `${svg}\n`);
  terminal.out(`Wrote ${path}.`);
}
