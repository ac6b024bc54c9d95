import type { PageSurroundings } from './page.ts';
import { layoutWorkerMay, pageHead } from './page-head.ts';

/** The page in which the papers are shown: no script but its own, no style but those with its mark, no network. */
export function bookPreviewPage({ script, layout, nonce, cspSource }: PageSurroundings): string {
  return `${pageHead('Papers', nonce, layoutWorkerMay(cspSource))}
<style id="book-style" nonce="${nonce}"></style>
<style nonce="${nonce}">
body { padding: 0 20px 20px; }
#head { position: sticky; top: 0; z-index: 1; }
#bar { display: flex; gap: 10px; align-items: center; padding: 8px 0; background: #fff; border-bottom: 1px solid #000; }
#bar button { font: inherit; padding: 3px 10px; color: #000; background: #eee; border: 1px solid #000; border-radius: 3px; cursor: pointer; }
#bar button:focus-visible { outline: 3px solid #0050d0; outline-offset: 1px; }
#bar button:disabled { color: #555; cursor: default; }
#bar progress { width: 8em; }
#book [data-of], #book [data-id] { cursor: pointer; }
#book tr[data-of]:hover > td { background: #fff3c4; }
</style>
</head>
<body>
<header id="head">
<div id="bar" role="toolbar" aria-label="Papers">
<button id="save" type="button" disabled>Save as HTML, to print</button>
<span id="state" role="status" aria-live="polite">Working…</span>
<progress id="progress" aria-label="Drawings laid out" hidden></progress>
</div>
</header>
<div id="book"></div>
<script nonce="${nonce}" src="${script}" data-layout="${layout}" id="script"></script>
</body>
</html>`;
}
