import { pageHead } from './page-head.ts';

/** The page in which a comparison is shown: no script but its own, no style but its own, nothing from a network. */
export function reviewPage(script: string, nonce: string): string {
  return `${pageHead('Comparison', nonce, ['img-src data:'])}
<style nonce="${nonce}">${style}</style>
</head>
<body>
<header>
<h1><span id="headline" role="status"></span></h1>
<p id="compared"></p>
<div id="bar" role="toolbar" aria-label="Drawing">
<select id="segment" aria-label="Part of the show" title="Part of the show" hidden></select>
<button id="further" type="button" title="Smaller" aria-label="Smaller">−</button>
<button id="closer" type="button" title="Larger" aria-label="Larger">+</button>
<button id="changes" type="button" title="What has changed, as large as the halves allow">Changes</button>
<button id="whole" type="button" title="Fit the drawings into their halves">Fit</button>
</div>
</header>
<div id="notice" role="status" hidden></div>
<div id="sides" role="region" aria-label="Drawings">
<figure><figcaption>Before</figcaption><div class="frame" id="before" tabindex="0" role="group" aria-label="Drawing before the change"></div></figure>
<figure><figcaption>After</figcaption><div class="frame" id="after" tabindex="0" role="group" aria-label="Drawing after the change"></div></figure>
</div>
<main id="list"></main>
<script nonce="${nonce}" src="${script}"></script>
</body>
</html>`;
}

const style = `
body { margin: 0; padding: 0 16px 16px; color: var(--vscode-foreground); background: var(--vscode-editor-background); font-family: var(--vscode-font-family); font-size: var(--vscode-font-size); }
[hidden] { display: none !important; }
h1 { font-size: 1.25em; margin: 12px 0 2px; }
#compared { margin: 0 0 6px; opacity: .85; }
#bar { display: flex; gap: 4px; }
#bar button, #bar select { font: inherit; color: var(--vscode-button-secondaryForeground, var(--vscode-foreground)); background: var(--vscode-button-secondaryBackground, transparent); border: 1px solid var(--vscode-button-border, var(--vscode-contrastBorder, transparent)); border-radius: 3px; padding: 3px 8px; cursor: pointer; }
#bar select { color: var(--vscode-dropdown-foreground, var(--vscode-foreground)); background: var(--vscode-dropdown-background, transparent); }
#notice { margin: 6px 0; padding: 6px 10px; background: var(--vscode-inputValidation-warningBackground); color: var(--vscode-inputValidation-warningForeground, var(--vscode-foreground)); border: 1px solid var(--vscode-inputValidation-warningBorder, var(--vscode-contrastBorder, transparent)); }
#sides { display: flex; gap: 8px; margin: 8px 0; }
figure { flex: 1; min-width: 0; margin: 0; }
figcaption { font-weight: 600; margin-bottom: 2px; }
.frame { overflow: auto; max-height: 42vh; border: 1px solid var(--vscode-panel-border, var(--vscode-contrastBorder, transparent)); }
/* One above the other, lower: the list below has the worst news. */
@media (max-width: 700px) { #sides { flex-direction: column; } .frame { max-height: 27vh; } }
:focus-visible { outline: 2px solid var(--vscode-focusBorder, #0078d4); outline-offset: 1px; }
.frame svg { display: block; }
section, details { margin: 10px 0; max-width: 72em; }
h2, summary { font-size: 1.05em; font-weight: 600; margin: 0 0 4px; }
summary { cursor: pointer; }
.about { margin: 0 0 4px; opacity: .85; }
ol, ul { margin: 0; padding-left: 1.8em; }
li { margin: 3px 0; }
li.grave > :first-child::before { content: "▲ " / ""; }
.note { margin: 1px 0 1px 1em; font-weight: 600; }
.cautions { margin-top: 6px; padding: 6px 6px 6px 2em; border: 1px solid var(--vscode-inputValidation-warningBorder, currentColor); border-left-width: 5px; }
li button { font: inherit; color: inherit; text-align: left; background: none; border: 0; padding: 0; cursor: pointer; vertical-align: top; }
code { font-family: var(--vscode-editor-font-family, monospace); }
li button:hover { text-decoration: underline; }
`;
