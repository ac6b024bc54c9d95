/** Reads the workbench's screen. Each function runs inside the page, so it uses nothing from outside itself. */

export type Severity = 'error' | 'warning' | 'info';

/** One row of the Problems view. */
export interface Problem {
  /** Message, source, code and position, with blanks between. */
  text: string;
  severity: Severity;
}

/** A wavy line under a text. */
export interface Squiggle {
  line: number;
  severity: Severity;
}

/** Where a text stands on the screen. */
export interface Place {
  lineText: string;
  /** Column of the text's first character, from 1. */
  column: number;
  /** In page coordinates. */
  box: { x: number; y: number; width: number; height: number };
}

/** The rows of the Problems view's list that are on the screen, and whether these are all. */
export function readProblems(list: Element): { problems: Problem[]; complete: boolean } {
  const problems = [...list.querySelectorAll('.monaco-list-row')].flatMap((row) => {
    const icon = row.querySelector('.marker-icon .codicon');
    if (!icon) return []; // the row of a file
    const severity = (['error', 'warning', 'info'] as const).find((kind) =>
      icon.classList.contains(`codicon-${kind}`),
    );
    const walker = document.createTreeWalker(row, NodeFilter.SHOW_TEXT);
    const parts: string[] = [];
    while (walker.nextNode()) parts.push((walker.currentNode.nodeValue ?? '').trim());
    const text = parts.filter(Boolean).join(' ').replaceAll('\u00a0', ' ');
    return [{ text, severity: severity ?? 'info' }];
  });
  // The list draws only the rows on the screen, in a box as high as all rows would be.
  const rows = list.querySelector('.monaco-list-rows');
  return { problems, complete: !rows || rows.clientHeight <= list.clientHeight };
}

/** The squiggles of an editor that are on the screen, from the top. */
export function readSquiggles(editor: Element): Squiggle[] {
  const numbers = [...editor.querySelectorAll('.margin-view-overlays .line-numbers')].map((element) => ({
    line: Number(element.textContent),
    top: element.getBoundingClientRect().top,
  }));
  const found = (['error', 'warning', 'info'] as const).flatMap((severity) =>
    [...editor.querySelectorAll(`.view-overlays .squiggly-${severity}`)].flatMap((element) => {
      const top = element.getBoundingClientRect().top;
      const number = numbers.findLast((each) => each.top <= top + 2);
      return number ? [{ line: number.line, severity }] : [];
    }),
  );
  return found.sort((a, b) => a.line - b.line);
}

/** Finds the first occurrence of a text in a line of an editor; undefined when it is not on the screen. */
export function findInLine(editor: Element, wanted: { line: number; text: string }): Place | undefined {
  const number = [...editor.querySelectorAll('.margin-view-overlays .line-numbers')].find(
    (element) => Number(element.textContent) === wanted.line,
  );
  if (!number) return undefined;
  const top = number.getBoundingClientRect().top;
  const row = [...editor.querySelectorAll('.view-lines .view-line')].find(
    (element) => Math.abs(element.getBoundingClientRect().top - top) < 3,
  );
  if (!row) return undefined;

  const walker = document.createTreeWalker(row, NodeFilter.SHOW_TEXT);
  const pieces: { node: Node; start: number; end: number }[] = [];
  let lineText = '';
  while (walker.nextNode()) {
    const start = lineText.length;
    lineText += (walker.currentNode.nodeValue ?? '').replaceAll('\u00a0', ' ');
    pieces.push({ node: walker.currentNode, start, end: lineText.length });
  }
  const index = lineText.indexOf(wanted.text);
  if (index < 0) return undefined;
  const range = document.createRange();
  const end = index + wanted.text.length;
  const first = pieces.find((piece) => index < piece.end) ?? pieces.at(-1);
  const last = pieces.find((piece) => end <= piece.end);
  if (!first || !last) return undefined;
  range.setStart(first.node, index - first.start);
  range.setEnd(last.node, end - last.start);
  const { x, y, width, height } = range.getBoundingClientRect();
  return { lineText, column: index + 1, box: { x, y, width, height } };
}
