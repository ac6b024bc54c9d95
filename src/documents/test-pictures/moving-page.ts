import { formatRaster } from '../../physics/raster.ts';
import { framesPerSecond } from '../../physics/rate.ts';
import { text } from '../book/html.ts';
import { hashOf } from '../book/page.ts';
import { inkOn, pictureColour } from '../drawing/colours.ts';
import { oneLine } from '../printable.ts';
import type { MovingSubject } from './moving/main.ts';
import type { PictureSubject } from './test-picture.ts';

/** What the page knows of a picture. An interlaced one counts fields. */
function movingSubject({ number, title, format }: PictureSubject): MovingSubject {
  const colour = pictureColour(number);
  return {
    number,
    title: oneLine(title, 500),
    raster: formatRaster(format),
    frames_per_second: framesPerSecond(format.rate) * (format.scan === 'i' ? 2 : 1),
    colour,
    ink: inkOn(colour),
  };
}

/**
 * The running test picture as one file for a laptop. @param script Its program, `moving/main.ts` in one piece.
 */
export async function movingPage(
  subjects: readonly PictureSubject[],
  from: string,
  script: string,
): Promise<string> {
  const [style, program] = await Promise.all([hashOf(STYLE), hashOf(script)]);
  // Inside a script element only `<` could end it; as data it may be written as its code.
  const data = JSON.stringify(subjects.map(movingSubject)).replaceAll('<', '\\u003c');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src '${program}'; style-src '${style}'; base-uri 'none'; form-action 'none'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Test picture</title>
<style>${STYLE}</style>
</head>
<body>
<main id="stage">
<canvas id="still" aria-hidden="true"></canvas>
<div id="flash" aria-hidden="true"></div>
<div id="plates">
<div id="number"></div>
<div id="name"><div id="title" dir="auto"></div><div id="raster"></div><div id="screen"></div></div>
<div id="frame" aria-label="frame in this second">00</div>
</div>
<canvas id="sweep" aria-hidden="true"></canvas>
<div id="count">stopped</div>
<div id="plan" dir="auto">${text(from)}</div>
</main>
<section id="menu" aria-labelledby="heading">
<h1 id="heading">Running test picture</h1>
<p><label for="choice">Picture of this laptop</label> <select id="choice"></select></p>
<p><button id="start" type="button">Full screen, with flash and beep</button></p>
<p>Set the laptop's screen to the picture's size and rate. Photograph this screen and the one at the other end side by side: the difference of the two frame numbers is the delay in frames. The flash and the beep leave at the same moment: where the beep comes later than the flash, the sound is late. Type what you read back into the plan as <code>measured</code>.</p>
<p>Esc or M brings this page back.</p>
</section>
<script type="application/json" id="pictures">${data}</script>
<script>${script}</script>
</body>
</html>
`;
}

const STYLE = `html, body { margin: 0; height: 100%; overflow: hidden; background: #6e6e6e; color: #fff; font: 18px/1.4 system-ui, "Segoe UI", Arial, "DejaVu Sans", sans-serif; }
#stage, #still, #flash { position: fixed; inset: 0; width: 100vw; height: 100vh; }
#flash { background: #fff; clip-path: inset(15vh 40vw 68vh 40vw); visibility: hidden; }
#plates { position: fixed; top: 34vh; left: 16vw; width: 68vw; height: 34vh; display: grid; grid-template-columns: 1fr 1.6fr 1.2fr; gap: 1vw; }
#plates > div { display: flex; align-items: center; justify-content: center; background: #000; overflow: hidden; }
#number, #frame { font-size: min(26vh, 16vw); font-weight: 700; line-height: 1; font-variant-numeric: tabular-nums; }
#plates > #name { flex-direction: column; text-align: center; padding: .5vw; }
#title { font-size: min(5vh, 3vw); font-weight: 700; line-height: 1.15; overflow-wrap: anywhere; max-height: 26vh; overflow: auto; }
#raster, #screen { font-size: min(3vh, 2vw); }
#sweep { position: fixed; left: 16vw; width: 68vw; top: 71vh; height: 7vh; }
#count { position: fixed; left: 16vw; width: 68vw; top: 79vh; background: #000; text-align: center; font-size: 3vh; white-space: pre; font-variant-numeric: tabular-nums; }
#plan { position: fixed; left: 16vw; width: 68vw; top: 86vh; background: #000; text-align: center; font-size: 2vh; overflow-wrap: anywhere; max-height: 6vh; overflow: hidden; }
#menu { position: fixed; left: 50%; top: 50%; transform: translate(-50%, -50%); max-width: 40em; max-height: 94vh; overflow: auto; background: #fff; color: #000; padding: 1em 1.6em; border: 3px solid #000; }
#menu[hidden] { display: none; }
h1 { font-size: 1.3em; margin: 0; }
select, button { font: inherit; padding: .4em .7em; max-width: 100%; }`;
