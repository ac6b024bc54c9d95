/** What stands in the margin of every printed page. */
export interface RunningHead {
  readonly title: string;
  readonly revision: string;
  readonly date: string;
}

/** The style of the book: black on white, grey only where nothing is lost without it. */
export function bookStyle({ title, revision, date }: RunningHead): string {
  return `${marginBoxes(title, [revision, date].filter(Boolean).join(' · '))}
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { font: 10.5pt/1.3 system-ui, "Segoe UI", "Helvetica Neue", Arial, "Noto Sans", "DejaVu Sans", sans-serif; color: #000; background: #fff; margin: 0 auto; padding: 1rem; max-width: 60rem; }
h1 { font-size: 26pt; line-height: 1.15; margin: 0 0 .3em; }
h2 { font-size: 18pt; margin: 0 0 .1em; }
h3, h4 { font-size: 12.5pt; margin: .9em 0 .25em; break-after: avoid; }
h3.part { font-size: 16pt; border-bottom: 2.5pt solid #000; padding-bottom: .1em; margin-top: 1.1em; }
.subtitle { font-weight: 400; font-size: 10.5pt; margin-left: .6em; }
.from { font-size: 9pt; margin: 0 0 .6em; }
.about { max-width: 46rem; margin: .2em 0 .6em; }
.note { margin: .35em 0; font-size: 10.5pt; }
.empty { font-style: italic; }
code { font-family: ui-monospace, "DejaVu Sans Mono", monospace; font-size: .92em; }
table { border-collapse: collapse; width: 100%; margin: .3em 0 .6em; font-size: 9.5pt; line-height: 1.25; }
th, td { border: .6pt solid #000; padding: .2em .4em; text-align: start; vertical-align: top; }
thead { display: table-header-group; }
th { font-size: 9pt; background: #e9e9e9; white-space: nowrap; }
tr { break-inside: avoid; }
.long tbody tr:nth-last-child(-n+2) { break-before: avoid; }
td small { display: block; font-size: 8.2pt; }
.tick { width: 2.9em; text-align: center; vertical-align: middle; white-space: nowrap; }
.short, .quantity { white-space: nowrap; }
.quantity { text-align: right; }
td.quantity small { white-space: normal; }
.write { min-width: 6em; }
td.write { min-width: 6em; height: 2.2em; }
svg.box { width: 15pt; height: 15pt; vertical-align: middle; }
svg.badge { width: 15pt; height: 15pt; vertical-align: -3pt; }
.card { break-inside: avoid; border: 1.6pt solid #000; border-radius: 4pt; padding: .35em .6em; margin: .6em 0; }
.card table { margin-bottom: .2em; }
.card > h3, .card > h4 { margin-top: 0; font-size: 16pt; line-height: 1.2; }
.card td { font-size: 9.5pt; padding: .22em .45em; vertical-align: middle; }
td.strong { font-size: 11pt; font-weight: 700; }
td.strong small { font-weight: 400; }
.card td.strong { font-size: 11.5pt; }
.card td.strong small { font-size: 9pt; }
.card td.wide { min-width: 11em; }
.card td.large, .card td.wide { font-size: 15pt; font-weight: 700; line-height: 1.2; }
.card td.large small, .card td.wide small { font-weight: 400; font-size: 9.5pt; }
.cautions { border: 2pt solid #000; border-left-width: 9pt; margin: .6em 0; padding: .4em .8em .4em 1.8em; font-size: 9.5pt; break-inside: avoid; }
.cautions li { margin: .12em 0; }
.cover .state { font-size: 13pt; font-weight: 700; border: 2pt solid #000; padding: .5em .7em; }
.cover .open { margin: .3em 0; padding-left: 1.4em; }
.cover dl { display: grid; grid-template-columns: max-content 1fr; gap: .15em 1em; }
.cover dt { font-weight: 700; }
.cover dd { margin: 0; }
.cover .description { max-width: 46rem; }
.together { break-inside: avoid; }
.contents ol { columns: 2; padding-left: 1.5em; margin: .3em 0; }
.contents a { color: inherit; }
figure.drawing { margin: 0 0 1rem; }
.key { font-size: 9pt; margin: .2em 0 1em; }
.key span { display: inline-block; margin-right: 1em; }
figcaption { font-weight: 700; font-size: 13pt; margin-bottom: .3em; }
figure.drawing > svg { display: block; max-width: 100%; height: auto; }
section, .cover { margin-bottom: 2.5rem; }
@media print {
  body { max-width: none; padding: 0 .4mm; }
  section { break-before: page; margin: 0 0 9mm; }
  section.brief { break-before: auto; break-inside: avoid; }
  a { text-decoration: none; }
  figure.drawing { break-inside: avoid; margin: 0 0 4mm; }
  figcaption { font-size: 12pt; break-after: avoid; }
  .drawings h2 { font-size: 14pt; }
  .drawings .about { font-size: 9pt; max-width: none; margin: 0 0 1mm; }
  .key { font-size: 8pt; margin: 1mm 0 0; }
  .drawings > div { break-after: avoid; break-inside: avoid; }
  .across { page: across; }
  .upright { page: upright; }
}
@page across { size: landscape; }
@page upright { size: portrait; }`;
}

/** Title on the left, revision and date on the right, the page's number below. */
function marginBoxes(title: string, right: string): string {
  const face = 'font: 9pt system-ui, "Segoe UI", Arial, "DejaVu Sans", sans-serif';
  return `@page {
  margin: 16mm 13mm 15mm;
  @top-left { content: ${cssString(title)}; ${face}; }
  @top-right { content: ${cssString(right)}; ${face}; }
  @bottom-left { content: "Planning values: verify on site. Local codes come first."; ${face}; }
  @bottom-right { content: "page " counter(page) " of " counter(pages); ${face}; }
}`;
}

/**
 * A string of CSS (CSS Syntax Level 3, "consume a string token"): everything that could end it, or end the style
 * element around it, is written as its code.
 */
export function cssString(words: string): string {
  const short = words.length > 90 ? `${words.slice(0, 89)}…` : words;
  return `"${short.replace(/[^\p{L}\p{N} .,:;·…–-]/gu, (c) => `\\${(c.codePointAt(0) ?? 0).toString(16)} `)}"`;
}
