import {
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { hostileShow } from '../support/hostile-show.ts';
import { feedplot, folderWith, machinesNode, root } from './command-line.ts';

const finals = join(root, 'examples/finals');

/** Every file below a folder, sorted. */
function filesIn(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((path) => statSync(join(folder, path)).isFile())
    .sort();
}

describe('what is written', () => {
  test('the book, a table for each sheet and a Markdown file; where, and what to do with it', () => {
    const folder = folderWith({});
    const { code, stdout, stderr } = feedplot(['book', finals, '--to', 'papers'], { folder });
    expect({ code, stderr: stderr.replace(/.*finals/, '…finals') }).toEqual({
      code: 0,
      stderr: '…finals.feedplot.\n',
    });
    const files = filesIn(join(folder, 'papers'));
    expect(stdout).toBe(
      `Wrote ${files.length} files to ${join(folder, 'papers')}.\nOpen book.html in a browser and print it.\n`,
    );
    expect(files).toEqual(
      expect.arrayContaining(['book.html', 'book.md', 'tables/cables.csv', 'tables/line-check.csv']),
    );
    expect(files.filter((file) => !/^(book\.(html|md)|tables\/[a-z-]+\.csv)$/.test(file))).toEqual([]);
    expect(readFileSync(join(folder, 'papers/book.html'), 'utf8')).toContain('Harbour Hall science final');
  });

  test('without a plan: the one in the folder, into a folder of its own', () => {
    const folder = folderWith({ 'show.feedplot': 'plan "Small" { }\n' });
    const { code, stderr } = feedplot(['book'], { folder });
    expect([code, stderr]).toEqual([0, 'Writing the papers of show.feedplot.\n']);
    expect(existsSync(join(folder, 'papers/book.html'))).toBe(true);
  });

  test('labels and test pictures when they are asked for, and then nothing else', () => {
    const folder = folderWith({});
    const { code } = feedplot(['book', finals, '--to', 'p', '--only', 'labels,pictures'], { folder });
    expect(code).toBe(0);
    const files = filesIn(join(folder, 'p'));
    expect(files).toEqual(
      expect.arrayContaining([
        'labels/cables.pdf',
        'labels/sockets.pdf',
        'test-pictures/01-scores.png',
        'test-pictures/01-scores.svg',
        'test-pictures/12-trailer.svg',
        'test-pictures/running.html',
      ]),
    );
    expect(files.some((file) => file.endsWith('.csv') || file.startsWith('book'))).toBe(false);
    const running = readFileSync(join(folder, 'p/test-pictures/running.html'), 'utf8');
    expect(running).toContain("default-src 'none'");
    expect(running).not.toMatch(/https?:|src=|href=/);
  });

  test('sections alone', () => {
    const folder = folderWith({});
    feedplot(['book', finals, '--to', 'p', '--only', 'html,tables,line-check'], { folder });
    expect(filesIn(join(folder, 'p'))).toEqual(['book.html', 'tables/line-check.csv']);
  });

  test('a second time over the first, the same files byte for byte', () => {
    const folder = folderWith({});
    const write = () => {
      feedplot(['book', finals, '--to', 'p', '--only', 'html,tables,markdown,labels'], { folder });
      return filesIn(join(folder, 'p')).map((file) => [
        file,
        readFileSync(join(folder, 'p', file)).toString('base64'),
      ]);
    };
    expect(write()).toEqual(write());
  });

  test('hostile names stay inside the folder, and their files can be written anywhere', () => {
    const folder = folderWith({ 'show.feedplot': hostileShow });
    const { code } = feedplot(['book', '--to', 'inner/p', '--only', 'html,tables,markdown,labels,pictures'], {
      folder,
    });
    expect(code).toBe(0);
    expect(readdirSync(folder).sort()).toEqual(['inner', 'show.feedplot']);
    expect(readdirSync(join(folder, 'inner'))).toEqual(['p']);
    for (const file of filesIn(join(folder, 'inner/p')))
      expect(file).toMatch(/^[\p{L}\p{M}\p{N}/_-]+\.(html|md|csv|pdf|svg|png)$/u);
    expect(filesIn(join(folder, 'inner/p'))).toContain('test-pictures/02-con_.png');
    for (const file of filesIn(join(folder, 'inner/p/tables'))) {
      const text = readFileSync(join(folder, 'inner/p/tables', file), 'utf8').replace(/^\uFEFF/, '');
      for (const cell of text.split(/\r\n|,/))
        expect(cell, `${file}: ${cell}`).not.toMatch(/^"?[=+@]|^"?-(?!\d+(\.\d+)?$)/);
    }
  });

  test('a plan with errors: the papers are written, and it is told', () => {
    const folder = folderWith({ 'show.feedplot': 'plan "Broken" { }\nfeed x -> y\n' });
    const { code, stderr } = feedplot(['book', 'show.feedplot', '--only', 'html'], { folder });
    expect(code).toBe(0);
    expect(stderr).toMatch(/^show\.feedplot has \d+ errors: the papers say so/);
    expect(readFileSync(join(folder, 'papers/book.html'), 'utf8')).toContain('NOT READY');
  });

  test.runIf(machinesNode())('on the Node that the machine has', () => {
    const folder = folderWith({});
    const node = machinesNode()!;
    expect(
      feedplot(['book', finals, '--to', 'p', '--only', 'html,labels,pictures'], { folder, node }).code,
    ).toBe(0);
    expect(filesIn(join(folder, 'p')).length).toBeGreaterThan(20);
  });
});

describe('what is refused', () => {
  const write = (folder: string, ...options: string[]) =>
    feedplot(['book', finals, '--to', 'p', '--only', 'markdown,tables', ...options], { folder });

  test('a link in place of a file is not written through', () => {
    const folder = folderWith({ 'precious.txt': 'keep me', 'p/readme': '' });
    symlinkSync(join(folder, 'precious.txt'), join(folder, 'p/book.md'));
    const { code, stderr } = write(folder);
    expect(code).toBe(2);
    expect(stderr).toContain('book.md is there and is no plain file');
    expect(readFileSync(join(folder, 'precious.txt'), 'utf8')).toBe('keep me');
  });

  test('a link in place of a folder leads nowhere', () => {
    const folder = folderWith({ 'elsewhere/readme': '', 'p/readme': '' });
    symlinkSync(join(folder, 'elsewhere'), join(folder, 'p/tables'));
    const { code, stderr } = write(folder);
    expect(code).toBe(2);
    expect(stderr).toContain('through a link');
    expect(readdirSync(join(folder, 'elsewhere'))).toEqual(['readme']);
  });

  test('a file where the folder should be, and a folder where a file should be', () => {
    const folder = folderWith({});
    writeFileSync(join(folder, 'p'), 'a file');
    expect(write(folder)).toMatchObject({
      code: 2,
      stderr: expect.stringContaining('cannot be used as a folder'),
    });
    const other = folderWith({});
    mkdirSync(join(other, 'p/book.md'), { recursive: true });
    expect(write(other)).toMatchObject({ code: 2, stderr: expect.stringContaining('no plain file') });
  });

  test('a paper that does not exist: the nearest one is named', () => {
    const { code, stderr } = feedplot(['book', finals, '--only', 'chaneovers']);
    expect(code).toBe(2);
    expect(stderr).toContain('There is no paper called chaneovers. Did you mean changeovers?');
  });

  test.each([
    [['--label-grid', '3'], '2 numbers'],
    [['--label-grid', '0x8'], 'Whole numbers from 1 to 100'],
    [['--label-grid', '3.5x8'], 'Whole numbers from 1 to 100'],
    [['--label-paper', '4x4'], 'At least 5 mm'],
    [['--label-paper', 'a5'], '2 numbers'],
    [['--label-margins', '1,2,3'], '4 numbers'],
    [['--label-margins', '1,2,3,-4'], '4 numbers'],
    [['--label-skip', '1.5'], 'A whole number'],
    [['--label-margins', '10,100,10,100'], 'leave no room for a label'],
  ])('%j', (options, reason) => {
    const folder = folderWith({});
    const { code, stderr } = feedplot(['book', finals, '--to', 'p', '--only', 'labels', ...options], {
      folder,
    });
    expect(code).toBe(2);
    expect(stderr).toContain(reason);
  });
});

test('no other command loads what the papers need', () => {
  const traces = ['PDFKit', 'Adobe-Identity-UCS', 'IHDR'];
  const tracesIn = (file: string) => {
    const program = readFileSync(join(root, 'dist', file), 'utf8');
    return traces.filter((trace) => program.includes(trace));
  };
  const commands = readdirSync(join(root, 'dist/commands')).map((file) => `commands/${file}`);
  expect(commands).toContain('commands/book.mjs');
  expect(tracesIn('papers.cjs')).toEqual(traces);
  for (const file of ['feedplot.cjs', ...commands]) expect(tracesIn(file), file).toEqual([]);
});
