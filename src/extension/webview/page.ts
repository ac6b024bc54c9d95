/** The page in which the drawing lives: no script but its own, no style but its own, nothing from a network. */
export function drawingPage(scriptUri: string, nonce: string, cspSource: string): string {
  const policy = [
    "default-src 'none'",
    `script-src 'nonce-${nonce}'`,
    `style-src 'nonce-${nonce}'`,
    `img-src data: ${cspSource}`,
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Drawing</title>
<style nonce="${nonce}">
body { margin: 0; padding: 0; height: 100vh; display: flex; flex-direction: column; color: var(--vscode-foreground); background: var(--vscode-editor-background); font-family: var(--vscode-font-family); font-size: var(--vscode-font-size); }
#bar { display: flex; flex-wrap: wrap; gap: 6px; align-items: center; padding: 6px 10px; border-bottom: 1px solid var(--vscode-panel-border, transparent); }
#bar select, #bar input, #bar button { font: inherit; color: var(--vscode-input-foreground); background: var(--vscode-input-background); border: 1px solid var(--vscode-input-border, var(--vscode-contrastBorder, transparent)); border-radius: 3px; padding: 3px 6px; }
#bar button { color: var(--vscode-button-secondaryForeground); background: var(--vscode-button-secondaryBackground); cursor: pointer; min-width: 2em; }
#bar :focus-visible { outline: 2px solid var(--vscode-focusBorder); outline-offset: 1px; }
#bar input { flex: 0 1 14em; }
#bar [hidden], #notice[hidden] { display: none; }
#notice { padding: 6px 10px; background: var(--vscode-inputValidation-warningBackground); color: var(--vscode-inputValidation-warningForeground, var(--vscode-foreground)); border-bottom: 1px solid var(--vscode-inputValidation-warningBorder, transparent); }
#frame { flex: 1; overflow: hidden; position: relative; cursor: grab; touch-action: none; }
#sheet { transform-origin: 0 0; will-change: transform; width: max-content; }
#figures { padding: 5px 10px; min-height: 1.4em; border-top: 1px solid var(--vscode-panel-border, transparent); }
g[data-id] { cursor: pointer; }
g.room { cursor: inherit; }
g[data-id]:focus { outline: none; }
g[data-id]:focus-visible > rect, g.selected > rect { stroke-width: 3; }
g.cursor > rect, g.cursor > path { filter: drop-shadow(0 0 4px var(--vscode-focusBorder, #0078d4)); }
g.found { filter: drop-shadow(0 0 5px var(--vscode-focusBorder, #0078d4)); }
g.aside { opacity: 0.16; }
</style>
</head>
<body>
<div id="bar" role="toolbar" aria-label="Drawing">
<select id="segment" aria-label="Part of the show" title="Part of the show"></select>
<select id="feed" aria-label="Follow a picture from end to end" title="Follow a picture from end to end"></select>
<input id="search" type="search" placeholder="Find in the drawing" aria-label="Find in the drawing">
<button id="further" title="Smaller (-)" aria-label="Smaller">−</button>
<button id="closer" title="Larger (+)" aria-label="Larger">+</button>
<button id="whole" title="Show all of it (0)">All</button>
<button id="svg" title="Save the drawing as SVG">SVG</button>
<button id="png" title="Save the drawing as PNG">PNG</button>
</div>
<div id="notice" role="status" hidden></div>
<div id="frame" tabindex="0" aria-label="Drawing of the plan: arrows move it, plus and minus scale it, 0 shows all, Tab goes through its things, Enter opens their text"><div id="sheet"></div></div>
<div id="figures" role="status" aria-live="polite"></div>
<script nonce="${nonce}" src="${scriptUri}"></script>
</body>
</html>`;
}
