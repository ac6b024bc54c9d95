import { Disposable, Range, ThemeColor, window } from 'vscode';
import type { ShownReview } from '../server/protocol/review.ts';

/** Behind the text of each network link whose load differs: how full it was and is. */
export class LoadsInText extends Disposable {
  readonly #decoration = window.createTextEditorDecorationType({
    after: { color: new ThemeColor('editorCodeLens.foreground'), margin: '0 0 0 2em', fontStyle: 'italic' },
  });

  constructor() {
    super(() => this.#decoration.dispose());
  }

  show(review: ShownReview | undefined): void {
    for (const editor of window.visibleTextEditors) {
      const { document } = editor;
      const here = (review?.loads ?? []).filter(({ place }) => place.uri === document.uri.toString());
      editor.setDecorations(
        this.#decoration,
        here.map(({ place, text }) => {
          const line = document.validateRange(
            new Range(
              place.range.end.line,
              Number.MAX_SAFE_INTEGER,
              place.range.end.line,
              Number.MAX_SAFE_INTEGER,
            ),
          );
          return { range: line, renderOptions: { after: { contentText: text } } };
        }),
      );
    }
  }
}
