import { type Command, InvalidArgumentError, Option } from 'commander';
import {
  type LabelPaper,
  paperSizes,
  rollPaper,
  SMALLEST_MM,
  spotsOn,
} from '../documents/labels/label-paper.ts';
import { cableLabels, portLabels } from '../documents/labels/labels.ts';
import { Titles } from '../documents/sheets/titles.ts';
import { fontsBeside } from './fonts.ts';
import type { OpenPlan } from './open-plan.ts';
import type { OutputFolder } from './output-folder.ts';
import type { Terminal } from './terminal.ts';
import { Trouble } from './trouble.ts';

export interface LabelOptions {
  readonly labelPaper: readonly [number, number];
  readonly labelGrid: readonly [number, number];
  readonly labelMargins: readonly [number, number, number, number];
  readonly labelGaps: readonly [number, number];
  readonly labelSkip: number;
  readonly labelRoll?: readonly [number, number];
  readonly labelCodes?: true;
  readonly labelFrames?: true;
}

/** Settings of the label sheets; all lengths in millimetres. */
export function addLabelOptions(command: Command): void {
  const option = (
    flags: string,
    words: string,
    parse: (text: string) => unknown,
    usual: unknown,
    shown: string,
  ) => command.addOption(new Option(flags, words).argParser(parse).default(usual, shown));
  option(
    '--label-paper <size>',
    'sheet of labels: a4, letter, or 210x297 in mm',
    parsePaper,
    [210, 297],
    'a4',
  );
  option('--label-grid <columns x rows>', 'labels on a sheet', counts(2), [3, 8], '3x8');
  option(
    '--label-margins <mm>',
    'free edges: top,right,bottom,left',
    lengths(4),
    [12, 7, 12, 7],
    '12,7,12,7',
  );
  option('--label-gaps <mm>', 'between labels: across,down', lengths(2), [2.5, 0], '2.5,0');
  option('--label-skip <count>', 'spots of the first sheet that are used up', count, 0, '0');
  command
    .addOption(
      new Option('--label-roll <size>', 'one label a page instead, of this size in mm: 60x20').argParser(
        parsePaper,
      ),
    )
    .option('--label-codes', 'a 2D code on each label: plan, link and end')
    .option('--label-frames', 'a hair line round each label');
}

/** Writes the labels of cables and of sockets. @throws Trouble when the settings leave no room for a label. */
export async function writeLabels(
  { analysis }: OpenPlan,
  options: LabelOptions,
  folder: OutputFolder,
  program: string,
  terminal: Terminal,
): Promise<void> {
  const paper = paperOf(options);
  if (spotsOn(paper).length === 0)
    throw new Trouble(
      `These margins and gaps leave no room for a label of at least ${SMALLEST_MM} mm each way.`,
    );
  const { Faces, labelPdf } = await import('../documents/papers.ts');
  const faces = new Faces(fontsBeside(program));
  const titles = new Titles(analysis);
  const common = {
    paper,
    faces,
    codes: options.labelCodes === true,
    frames: options.labelFrames === true,
    skip: options.labelSkip,
  };
  const title = analysis.settings.title || 'Plan';
  const cables = cableLabels(analysis, titles);
  terminal.progress(`Labels of cables: ${cables.length}`);
  folder.write('labels/cables.pdf', await labelPdf(cables, { ...common, title: `${title}: cables` }));
  const ports = portLabels(analysis, titles);
  terminal.progress(`Labels of sockets: ${ports.length}`);
  folder.write('labels/sockets.pdf', await labelPdf(ports, { ...common, title: `${title}: sockets` }));
}

function paperOf({ labelPaper, labelGrid, labelMargins, labelGaps, labelRoll }: LabelOptions): LabelPaper {
  if (labelRoll) return rollPaper(...labelRoll);
  const [width_mm, height_mm] = labelPaper;
  const [columns, rows] = labelGrid;
  const [top_mm, right_mm, bottom_mm, left_mm] = labelMargins;
  const [across_mm, down_mm] = labelGaps;
  return { width_mm, height_mm, columns, rows, top_mm, right_mm, bottom_mm, left_mm, across_mm, down_mm };
}

const LONGEST_MM = 2000;

function parsePaper(text: string): readonly [number, number] {
  const known = paperSizes.get(text.toLowerCase());
  if (known) return known;
  const [width = 0, height = 0] = numbers(text, /[x×]/i, 2);
  if (width < SMALLEST_MM || height < SMALLEST_MM)
    throw new InvalidArgumentError(`At least ${SMALLEST_MM} mm each way.`);
  return [width, height];
}

function lengths(count: number): (text: string) => readonly number[] {
  return (text) => numbers(text, /,/, count);
}

function counts(many: number): (text: string) => readonly number[] {
  return (text) =>
    numbers(text, /[x×]/i, many).map((number) => {
      if (!Number.isInteger(number) || number < 1 || number > 100)
        throw new InvalidArgumentError('Whole numbers from 1 to 100, as 3x8.');
      return number;
    });
}

function count(text: string): number {
  const number = Number(text);
  if (!Number.isInteger(number) || number < 0 || number > 10_000)
    throw new InvalidArgumentError('A whole number from 0 on.');
  return number;
}

function numbers(text: string, between: RegExp, count: number): number[] {
  const found = text.split(between).map((part) => (part.trim() === '' ? Number.NaN : Number(part)));
  if (found.length !== count || found.some((number) => !(number >= 0 && number <= LONGEST_MM)))
    throw new InvalidArgumentError(`${count} numbers from 0 to ${LONGEST_MM} are expected.`);
  return found;
}
