import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { fileNameOf } from '../documents/file-names.ts';
import { oneLine } from '../documents/printable.ts';
import { Titles } from '../documents/sheets/titles.ts';
import { movingPage } from '../documents/test-pictures/moving-page.ts';
import { fontsBeside } from './fonts.ts';
import type { OpenPlan } from './open-plan.ts';
import type { OutputFolder } from './output-folder.ts';
import type { Terminal } from './terminal.ts';

/** Writes a test picture for each source, as SVG and PNG, and the running one as a page. */
export async function writePictures(
  { analysis }: OpenPlan,
  folder: OutputFolder,
  program: string,
  terminal: Terminal,
): Promise<void> {
  const { Faces, makeTestPicture, pictureSubjects, testPicturePng, testPictureSvg } = await import(
    '../documents/papers.ts'
  );
  const faces = new Faces(fontsBeside(program));
  const subjects = pictureSubjects(analysis, new Titles(analysis));
  const { title, statement } = analysis.settings;
  const { revision, date } = statement?.fact ?? {};
  const from = [title, revision && `revision ${revision}`, date].filter(Boolean).join(' · ');
  const digits = String(Math.max(0, ...subjects.map(({ number }) => number))).length;
  for (const [i, subject] of subjects.entries()) {
    terminal.progress(`Test picture ${i + 1} of ${subjects.length}: ${oneLine(subject.name, 40)}`);
    const picture = makeTestPicture(subject, from, faces);
    const name = `test-pictures/${String(subject.number).padStart(Math.max(2, digits), '0')}-${fileNameOf(subject.name, 'source')}`;
    folder.write(`${name}.svg`, testPictureSvg(picture));
    folder.write(`${name}.png`, testPicturePng(picture));
  }
  const script = readFileSync(join(program, 'moving-picture.js'), 'utf8');
  folder.write('test-pictures/running.html', await movingPage(subjects, from, script));
}
