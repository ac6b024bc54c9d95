/**
 * The running test picture in a browser: frame count, sweep, and a flash with a beep each second. It is put into one
 * file with its data and its style, and asks nothing of a network.
 */
import { tickAt } from './clock.ts';
import { paintStill } from './still.ts';

/** One picture as the page has it in its data. */
export interface MovingSubject {
  readonly number: number;
  readonly title: string;
  readonly raster: string;
  readonly frames_per_second: number;
  readonly colour: string;
  readonly ink: string;
}

const subjects = JSON.parse(element('pictures').textContent ?? '[]') as readonly MovingSubject[];
const choice = element('choice') as HTMLSelectElement;
const still = element('still') as HTMLCanvasElement;
const sweep = element('sweep') as HTMLCanvasElement;

let subject = subjects[0];
let began_ms: number | undefined;
let sound: AudioContext | undefined;
let nextBeep = 1;

for (const [i, { number, title, raster }] of subjects.entries())
  choice.add(new Option(`${number} ${title}, ${raster}`, String(i)));
choice.addEventListener('change', () => choose(Number(choice.value)));
element('start').addEventListener('click', () => void start());
window.addEventListener('resize', draw);
document.addEventListener('keydown', ({ key }) => {
  if (key === 'Escape' || key === 'm') element('menu').hidden = false;
});
document.addEventListener('fullscreenchange', () => {
  if (!document.fullscreenElement) element('menu').hidden = false;
});
element('stage').addEventListener('dblclick', () => {
  element('menu').hidden = !element('menu').hidden;
});
const asked = subjects.findIndex(({ number }) => `#${number}` === location.hash);
choose(Math.max(0, asked));

function element(id: string): HTMLElement {
  const found = document.getElementById(id);
  if (!found) throw new Error(`The page has no ${id}`);
  return found;
}

function choose(index: number): void {
  subject = subjects[index];
  choice.value = String(index);
  if (!subject) return;
  location.replace(`#${subject.number}`);
  const plate = element('number');
  plate.textContent = String(subject.number);
  plate.style.background = subject.colour;
  plate.style.color = subject.ink;
  element('title').textContent = subject.title;
  element('raster').textContent = subject.raster;
  document.title = `${subject.number} ${subject.title}`;
  draw();
}

/** A click allows full screen and sound; without either the picture runs all the same. */
async function start(): Promise<void> {
  element('menu').hidden = true;
  try {
    await document.documentElement.requestFullscreen({ navigationUI: 'hide' });
  } catch {
    // The browser does not allow it: F11 does the same.
  }
  sound ??= new AudioContext({ latencyHint: 'interactive' });
  await sound.resume();
  if (began_ms === undefined) {
    began_ms = performance.now();
    nextBeep = 1;
    requestAnimationFrame(step);
  }
  draw();
}

function step(now_ms: number): void {
  requestAnimationFrame(step);
  if (!subject || began_ms === undefined) return;
  const seconds = Math.max(0, (now_ms - began_ms) / 1000);
  const tick = tickAt(seconds, subject.frames_per_second);
  element('frame').textContent = String(tick.inSecond).padStart(2, '0');
  element('count').textContent = `${tick.second} s  frame ${tick.frame}`;
  element('flash').style.visibility = tick.flash ? 'visible' : 'hidden';
  drawSweep(tick.inSecond, Math.ceil(subject.frames_per_second));
  planBeep(tick.second);
}

/** One cell a frame: the lit one tells the frame even where two blend. */
function drawSweep(at: number, cells: number): void {
  const paint = sweep.getContext('2d');
  if (!paint) return;
  const { width, height } = sweep;
  paint.fillStyle = '#000';
  paint.fillRect(0, 0, width, height);
  for (let i = 0; i < cells; i++) {
    const x = Math.round((i * width) / cells);
    paint.fillStyle = i === at ? '#fff' : i % 10 === 0 ? '#777' : '#333';
    paint.fillRect(x + 1, i % 10 === 0 || i === at ? 0 : height / 4, Math.round(width / cells) - 2, height);
  }
}

/** The beep is handed to the sound clock a second ahead, at the very time of the flash. */
function planBeep(second: number): void {
  if (!sound || began_ms === undefined || second + 1 < nextBeep) return;
  nextBeep = second + 2;
  const heard = sound.getOutputTimestamp();
  // Both are nought until the first sound has left: then the two clocks are read here.
  const known = Boolean(heard.performanceTime && heard.contextTime);
  const contextTime = known ? heard.contextTime! : sound.currentTime;
  const performanceTime = known ? heard.performanceTime! : performance.now();
  const at = contextTime + (began_ms + (second + 1) * 1000 - performanceTime) / 1000;
  const tone = new OscillatorNode(sound, { frequency: 1000 });
  const level = new GainNode(sound, { gain: 0.5 });
  tone.connect(level).connect(sound.destination);
  tone.start(Math.max(sound.currentTime, at));
  tone.stop(Math.max(sound.currentTime, at) + 0.05);
}

function draw(): void {
  const scale = window.devicePixelRatio;
  still.width = Math.round(window.innerWidth * scale);
  still.height = Math.round(window.innerHeight * scale);
  sweep.width = Math.round(sweep.clientWidth * scale);
  sweep.height = Math.round(sweep.clientHeight * scale);
  const paint = still.getContext('2d');
  if (paint) paintStill(paint, still.width, still.height);
  const warning =
    subject && !subject.raster.startsWith(`${still.height}`)
      ? `this screen runs at ${still.width}x${still.height}`
      : '';
  element('screen').textContent = warning;
}
