import type { Analysis } from '../../analysis/model.ts';
import { prose, text } from '../book/html.ts';
import { hashOf } from '../book/page.ts';
import { drawSvg } from '../drawing/draw-svg.ts';
import { placeScene } from '../drawing/place-scene.ts';
import type { NameOf } from '../findings/located.ts';
import { headlineOf } from './headline.ts';
import type { Review } from './review.ts';
import { reviewScenes } from './scenes.ts';
import { type Entry, type Section, sectionsOf } from './sections.ts';
import { comparedText, placeText } from './text.ts';

/**
 * A review as one page that needs nothing else: no script, no font, no link to anywhere; its policy lets nothing load. The
 * show is drawn as it was and as it is.
 */
export async function reviewHtml(
  review: Review,
  was: Analysis,
  is: Analysis,
  nameOf: NameOf,
): Promise<string> {
  const title = `${review.title || 'Plan'}: review`;
  const style = pageStyle;
  const body = [
    `<header><p class="kind">Review of a change</p><h1>${text(review.title || 'Plan')}</h1>`,
    `<p class="news">${text(capital(headlineOf(review).join(', ')))}.</p>`,
    `<p class="compared">${text(comparedText(review))}</p></header>`,
    ...sectionsOf(review).map((section) => sectionHtml(section, nameOf)),
    await drawings(was, is),
  ];
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src '${await hashOf(style)}'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="generator" content="Feedplot">
<title>${text(title)}</title>
<style>${style}</style>
</head>
<body>
<main>
${body.join('\n')}
</main>
</body>
</html>
`;
}

/** The whole show twice, everything in the same places: before with what is gone, after with what came. */
async function drawings(was: Analysis, is: Analysis): Promise<string> {
  const { before, after, marks } = reviewScenes(was, is);
  if (after.boxes.length === 0) return '';
  const placement = await placeScene(after);
  const figure = (title: string, svg: string) => `<figure><figcaption>${title}</figcaption>${svg}</figure>`;
  return `<section id="drawing"><h2>Drawing</h2><div class="sides">
${figure('Before', drawSvg(before, placement, { marks: marks.before }))}
${figure('After', drawSvg(after, placement, { marks: marks.after }))}
</div></section>`;
}

function sectionHtml(
  { title, about, open, numbered, entries, name, cautions }: Section,
  nameOf: NameOf,
): string {
  const list = numbered ? 'ol' : 'ul';
  const words = about ? `<p class="about">${text(about)}</p>` : '';
  const items = entries.map((entry) => entryHtml(entry, nameOf)).join('\n');
  const careful = cautions.map((caution) => `<li>${text(caution)}</li>`).join('');
  const body = `${words}<${list}>\n${items}\n</${list}>${careful ? `<ul class="cautions">${careful}</ul>` : ''}`;
  if (open) return `<section id="${name}"><h2>${text(title)}</h2>${body}</section>`;
  return `<details id="${name}"><summary>${text(title)}</summary>${body}</details>`;
}

function entryHtml({ lead, text: words, notes, place, grave }: Entry, nameOf: NameOf): string {
  const where = place ? ` <span class="place">${text(placeText(place, nameOf))}</span>` : '';
  const below = notes.map((note) => `<p class="note">${text(note)}</p>`).join('');
  return `<li${grave ? ' class="grave"' : ''}><strong>${text(lead)}</strong>: ${prose(words)}${where}${below}</li>`;
}

function capital(words: string): string {
  return words.charAt(0).toUpperCase() + words.slice(1);
}

const pageStyle = `:root { color-scheme: light; }
* { box-sizing: border-box; }
body { font: 11pt/1.4 system-ui, "Segoe UI", "Helvetica Neue", Arial, "Noto Sans", "DejaVu Sans", sans-serif; color: #1b1a17; background: #fff; margin: 0; padding: 1rem 2rem; }
h1 { font-size: 24pt; line-height: 1.15; margin: 0; }
h2, summary { font-size: 14pt; font-weight: 700; margin: 1.2em 0 .3em; }
summary { cursor: pointer; }
.kind, .compared, .about { color: #55503f; margin: .2em 0; }
.news { font-size: 14pt; margin: .4em 0; }
.place { color: #55503f; font: .88em ui-monospace, "DejaVu Sans Mono", monospace; overflow-wrap: anywhere; }
code { font-family: ui-monospace, "DejaVu Sans Mono", monospace; font-size: .92em; }
ul, ol, .about, .cautions { max-width: 62rem; }
ul, ol { margin: .3em 0; padding-left: 1.8em; }
li { margin: .3em 0; max-width: 60rem; }
li.grave { border-left: 4pt solid #1b1a17; padding-left: .5em; }
.note { margin: .15em 0 .15em 1em; font-weight: 600; }
figure { margin: 1rem 0; overflow-x: auto; }
@media (min-width: 200rem) { .sides { display: grid; grid-template-columns: 1fr 1fr; gap: 1rem; } }
figcaption { font-weight: 700; margin-bottom: .3em; }
figure svg { display: block; max-width: 100%; height: auto; }
.cautions { border: 2pt solid #1b1a17; border-left-width: 9pt; padding: .5em .8em .5em 1.8em; font-size: 10pt; }
@media print { details { break-inside: avoid; } section, figure { break-inside: avoid; } }`;
