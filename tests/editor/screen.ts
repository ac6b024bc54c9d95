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
  /** The middle of the text, in page coordinates. */
  x: number;
  y: number;
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
  const topOf = (element: Element) => element.getBoundingClientRect().top;
  const numbers = [...editor.querySelectorAll('.margin-view-overlays .line-numbers')]
    .filter((element) => element.textContent?.trim()) // a wrapped line goes on without a number
    .sort((a, b) => topOf(a) - topOf(b));
  const found = (['error', 'warning', 'info'] as const).flatMap((severity) =>
    [...editor.querySelectorAll(`.view-overlays .squiggly-${severity}`)].flatMap((element) => {
      const number = numbers.findLast((each) => topOf(each) <= topOf(element) + 2);
      return number ? [{ line: Number(number.textContent), severity }] : [];
    }),
  );
  return found.sort((a, b) => a.line - b.line);
}

/** Finds the first occurrence of a text in a line of an editor; undefined when it is not on the screen. */
export function findInLine(editor: Element, wanted: { line: number; text: string }): Place | undefined {
  const topOf = (element: Element) => element.getBoundingClientRect().top;
  const numbers = [...editor.querySelectorAll('.margin-view-overlays .line-numbers')].filter((element) =>
    element.textContent?.trim(),
  );
  const number = numbers.find((element) => Number(element.textContent) === wanted.line);
  if (!number) return undefined;
  // A long line is wrapped: its rows reach down to the next number.
  const top = topOf(number) - 3;
  const end = Math.min(...numbers.map(topOf).filter((each) => each > topOf(number))) - 3;
  const rows = [...editor.querySelectorAll('.view-lines .view-line')]
    .filter((row) => topOf(row) >= top && topOf(row) < end)
    .sort((a, b) => topOf(a) - topOf(b));

  // Each character of the line with the place where it is drawn.
  const characters: { node: Node; offset: number }[] = [];
  let lineText = '';
  for (const [index, row] of rows.entries()) {
    let indent = index > 0; // the blanks before a wrapped row are no part of the line
    const walker = document.createTreeWalker(row, NodeFilter.SHOW_TEXT);
    while (walker.nextNode()) {
      const node = walker.currentNode;
      if (node.parentElement?.matches('[class*="dyn-rule-"]')) continue; // a hint that the editor puts between
      const drawn = (node.nodeValue ?? '').replaceAll('\u00a0', ' ');
      for (const [offset, character] of [...drawn].entries()) {
        if (indent && character === ' ') continue;
        indent = false;
        characters.push({ node, offset });
        lineText += character;
      }
    }
  }

  const index = lineText.indexOf(wanted.text);
  if (rows.length === 0 || index < 0) return undefined;
  const first = characters[index];
  const last = characters[index + wanted.text.length - 1];
  const range = document.createRange();
  if (first && last) {
    range.setStart(first.node, first.offset);
    range.setEnd(last.node, last.offset + 1);
  }
  const { x, y, width, height } = range.getClientRects()[0] ?? rows[0]!.getBoundingClientRect();
  return { lineText, column: index + 1, x: x + width / 2, y: y + height / 2 };
}
