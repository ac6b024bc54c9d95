import { layoutWorkerMay, pageHead } from './page-head.ts';

/** What the page needs of the place that it is shown in. */
export interface PageSurroundings {
  readonly script: string;
  /** Where the layout library's worker lies. */
  readonly layout: string;
  /** A mark that nobody can guess: only what bears it runs. */
  readonly nonce: string;
  /** What of the editor's own may be read. */
  readonly cspSource: string;
}

/** The page in which the drawing lives: no script but its own, no style but its own, nothing from a network. */
export function drawingPage({ script, layout, nonce, cspSource }: PageSurroundings): string {
  return `${pageHead('Drawing', nonce, ['img-src data:', ...layoutWorkerMay(cspSource)])}
<style nonce="${nonce}">${style}</style>
</head>
<body>
<header>
<h1>Drawing</h1>
<div id="bar" role="toolbar" aria-label="Drawing">
<select id="place" aria-label="What is drawn" title="What is drawn" hidden></select>
<select id="segment" aria-label="Part of the show" title="Part of the show ([ and ] go through them)" hidden></select>
<select id="feed" aria-label="Follow a picture from end to end" title="Follow a picture from end to end" hidden></select>
<input id="search" type="search" placeholder="Find" aria-label="Find in the drawing" title="Find in the drawing (/)">
<span class="group">
<button id="further" type="button" title="Smaller (-)" aria-label="Smaller">−</button>
<button id="closer" type="button" title="Larger (+)" aria-label="Larger">+</button>
<button id="whole" type="button" title="Show all of it (0)">All</button>
</span>
<button id="words" type="button" aria-expanded="false" aria-controls="panel" title="Everything that is drawn, as words">In words</button>
<span class="group">
<button id="svg" type="button" aria-label="Save the drawing as SVG" title="Save the drawing as SVG">SVG</button>
<button id="png" type="button" aria-label="Save the drawing as PNG" title="Save the drawing as PNG">PNG</button>
</span>
</div>
<div id="notice" role="status" hidden></div>
</header>
<main>
<div id="frame" tabindex="0" role="group" aria-label="Drawing of the plan. Arrows go from thing to thing, with Shift they move the picture; Enter shows the text of a thing; plus and minus scale, 0 shows all; T follows the pictures through a thing; Escape ends it."><div id="sheet"></div><svg id="overview" aria-hidden="true" hidden></svg></div>
<section id="panel" tabindex="0" aria-label="The drawing in words" hidden></section>
</main>
<footer><div id="figures" role="status" aria-live="polite"></div><span id="count" role="status"></span></footer>
<script nonce="${nonce}" src="${script}" data-layout="${layout}" id="script"></script>
</body>
</html>`;
}

const style = `
html, body { height: 100%; }
body { margin: 0; padding: 0; display: flex; flex-direction: column; color: var(--vscode-foreground); background: var(--vscode-editor-background); font-family: var(--vscode-font-family); font-size: var(--vscode-font-size); }
h1 { position: absolute; width: 1px; height: 1px; margin: 0; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
[hidden] { display: none !important; }
#bar { display: flex; flex-wrap: wrap; gap: 6px; align-items: center; padding: 6px 10px; border-bottom: 1px solid var(--vscode-panel-border, var(--vscode-contrastBorder, transparent)); }
#bar .group { display: inline-flex; gap: 2px; }
#bar select, #bar input, button { font: inherit; color: var(--vscode-input-foreground); background: var(--vscode-input-background); border: 1px solid var(--vscode-input-border, var(--vscode-contrastBorder, transparent)); border-radius: 3px; padding: 3px 6px; }
#bar select, #bar input { flex: 1 1 7em; min-width: 7em; max-width: 15em; text-overflow: ellipsis; }
button { color: var(--vscode-button-secondaryForeground, var(--vscode-foreground)); background: var(--vscode-button-secondaryBackground, transparent); border-color: var(--vscode-button-border, var(--vscode-contrastBorder, transparent)); cursor: pointer; min-width: 2em; }
button:hover { background: var(--vscode-button-secondaryHoverBackground, transparent); }
:focus-visible { outline: 2px solid var(--vscode-focusBorder, #0078d4); outline-offset: 1px; }
#notice { padding: 6px 10px; background: var(--vscode-inputValidation-warningBackground); color: var(--vscode-inputValidation-warningForeground, var(--vscode-foreground)); border-bottom: 1px solid var(--vscode-inputValidation-warningBorder, var(--vscode-contrastBorder, transparent)); white-space: pre-wrap; }
main { flex: 1; display: flex; min-height: 0; }
#frame { flex: 1; overflow: clip; position: relative; cursor: grab; touch-action: none; min-width: 0; }
#frame:focus-visible { outline-offset: -2px; }
#frame.stale::after { content: ''; position: absolute; inset: 0; border: 3px dashed var(--vscode-inputValidation-warningBorder, var(--vscode-foreground)); pointer-events: none; }
#sheet { transform-origin: 0 0; width: max-content; }
#panel { flex: 0 1 34em; overflow: auto; padding: 4px 14px 14px; border-left: 1px solid var(--vscode-panel-border, var(--vscode-contrastBorder, transparent)); }
#panel h2 { font-size: 1em; margin: 12px 0 2px; }
#panel ul { margin: 0; padding: 0; list-style: none; }
#panel li > * { display: block; width: 100%; padding: 2px 4px; text-align: left; background: none; color: inherit; border: 0; }
#figures { flex: 1; }
#count { white-space: nowrap; }
footer { display: flex; gap: 10px; align-items: baseline; padding: 5px 10px; min-height: 1.4em; border-top: 1px solid var(--vscode-panel-border, var(--vscode-contrastBorder, transparent)); }
#overview { position: absolute; right: 8px; bottom: 8px; background: var(--vscode-editorWidget-background, var(--vscode-editor-background)); border: 1px solid var(--vscode-editorWidget-border, var(--vscode-contrastBorder, var(--vscode-foreground))); cursor: crosshair; }
#overview rect { fill: none; stroke: var(--vscode-foreground); stroke-width: 1; vector-effect: non-scaling-stroke; opacity: 0.55; }
#overview rect.box { fill: var(--vscode-foreground); stroke: none; opacity: 0.35; }
#overview rect.sight { fill: var(--vscode-focusBorder, #0078d4); fill-opacity: 0.12; stroke: var(--vscode-focusBorder, #0078d4); stroke-width: 2; opacity: 1; }
g[data-id] { cursor: pointer; }
path.near { stroke-width: var(--near, 12); }
g.room { cursor: inherit; }
g[data-id]:focus { outline: none; }
g.selected, g.found, g.cursor:not(.room), g[data-id]:focus-visible { filter: drop-shadow(0 0 1px var(--vscode-focusBorder, #0078d4)) drop-shadow(0 0 3px var(--vscode-focusBorder, #0078d4)); }
g.room.cursor > rect { stroke: var(--vscode-focusBorder, #0078d4); stroke-width: 3; }
g.selected > rect:first-of-type, g[data-id]:focus-visible > rect:first-of-type { stroke-width: 3; }
g.aside { opacity: 0.16; }
`;
