import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { decode } from 'fast-png';
import { describe, expect, test } from 'vitest';
import { Titles } from '../../src/documents/sheets/titles.ts';
import { fillOutline } from '../../src/documents/test-pictures/fill.ts';
import { tickAt } from '../../src/documents/test-pictures/moving/clock.ts';
import { movingPage } from '../../src/documents/test-pictures/moving-page.ts';
import { testPicturePng } from '../../src/documents/test-pictures/png.ts';
import { testPictureSvg } from '../../src/documents/test-pictures/svg.ts';
import { makeTestPicture, pictureSubjects } from '../../src/documents/test-pictures/test-picture.ts';
import { frameRateOf } from '../../src/physics/rate.ts';
import { root } from '../cli/command-line.ts';
import { describeInBrowser } from '../support/browser.ts';
import { checkedExample, checkedPlan } from '../support/example-plans.ts';
import { faces } from '../support/fonts.ts';
import { hostileShow } from '../support/hostile-show.ts';

const finals = checkedExample('finals').analysis;
const subjects = pictureSubjects(finals, new Titles(finals));
const hostile = checkedPlan(hostileShow).analysis;
const hostileSubjects = pictureSubjects(hostile, new Titles(hostile));
const from = 'Harbour Hall science final · revision C';

/** A decoded PNG, asked for the colour of a pixel. */
function pixelsOf(png: Uint8Array): { width: number; height: number; at: (x: number, y: number) => string } {
  const { width, height, data, palette } = decode(png, { checkCrc: true });
  return {
    width,
    height,
    at: (x, y) =>
      `#${palette![data[y * width + x]!]!.map((one) => one.toString(16).padStart(2, '0')).join('')}`,
  };
}

describe('which', () => {
  test('every source that sends a picture, with its number of the drawing; sound alone has none', () => {
    expect(subjects.map(({ number, name }) => `${number} ${name}`)).toEqual([
      '1 scores',
      '2 bench',
      '3 slides',
      '4 arrivals',
      '5 wide',
      '7 program',
      '8 clean',
      '9 screen',
      '10 overview',
      '11 welcome',
      '12 trailer',
    ]);
  });
});

describe('as PNG', () => {
  const slides = pixelsOf(testPicturePng(makeTestPicture(subjects[2]!, from, faces)));

  test('in the raster of the source', () => {
    expect([slides.width, slides.height]).toEqual([1920, 1200]);
  });

  test('the outermost pixels are white, the next black, on all four sides', () => {
    for (const [x, y, inwards] of [
      [300, 0, [300, 1]],
      [300, 1199, [300, 1198]],
      [0, 300, [1, 300]],
      [1919, 300, [1918, 300]],
    ] as const) {
      expect(slides.at(x, y)).toBe('#ffffff');
      expect(slides.at(inwards[0], inwards[1])).toBe('#000000');
    }
  });

  test('an arrow touches each edge in its middle', () => {
    expect(slides.at(1, 600)).toBe('#ffffff');
    expect(slides.at(1918, 600)).toBe('#ffffff');
    expect(slides.at(960, 2)).toBe('#ffffff');
    expect(slides.at(960, 1197)).toBe('#ffffff');
  });

  test('the cross stands in the very middle: two pixels where a side is even', () => {
    expect([slides.at(959, 599), slides.at(960, 599), slides.at(959, 600), slides.at(960, 600)]).toEqual(
      Array(4).fill('#ffffff'),
    );
    expect(slides.at(957, 589)).not.toBe('#ffffff');
  });

  test('lines of one pixel, upright and lying, in each corner', () => {
    // Patches of a ninth of the height, 133 pixels, a third of that, 44, from the edges.
    const row = Array.from({ length: 6 }, (_, i) => slides.at(44 + i, 100));
    expect(row).toEqual(['#ffffff', '#000000', '#ffffff', '#000000', '#ffffff', '#000000']);
    const column = Array.from({ length: 6 }, (_, i) => slides.at(44 + 133 + 50, 44 + i));
    expect(column).toEqual(row);
    const last = Array.from({ length: 4 }, (_, i) => slides.at(1920 - 44 - 266 + i, 1200 - 44 - 60));
    expect(last).toEqual(row.slice(0, 4));
  });

  test('no two sources of a plan have the same picture', () => {
    const pictures = subjects.map((subject) =>
      Buffer.from(testPicturePng(makeTestPicture(subject, from, faces))),
    );
    expect(new Set(pictures.map((picture) => picture.toString('base64'))).size).toBe(pictures.length);
  });

  test('small and odd rasters work, too', () => {
    const format = { ...subjects[0]!.format, width: 35, height: 21 };
    const tiny = pixelsOf(testPicturePng(makeTestPicture({ ...subjects[0]!, format }, from, faces)));
    expect([tiny.width, tiny.height, tiny.at(34, 5)]).toEqual([35, 21, '#ffffff']);
  });
});

describe('an outline is filled by the non-zero rule', () => {
  const square = (left: number, top: number, side: number, turned = false) => {
    const points = [
      { x: left, y: top },
      { x: left + side, y: top },
      { x: left + side, y: top + side },
      { x: left, y: top + side },
    ];
    return turned ? points.reverse() : points;
  };
  const filled = (outline: Parameters<typeof fillOutline>[0]) => {
    const rows = Array.from({ length: 6 }, () => '......');
    fillOutline(outline, 6, 6, (y, start, end) => {
      rows[y] = rows[y]!.slice(0, start) + '#'.repeat(end - start) + rows[y]!.slice(end);
    });
    return rows;
  };

  test('a hole that is drawn the other way round stays open; pixels outside are left out', () => {
    expect(filled([square(-1, -1, 6), square(1, 1, 2, true)])).toEqual([
      '#####.',
      '#..##.',
      '#..##.',
      '#####.',
      '#####.',
      '......',
    ]);
  });

  test('shapes that overlap the same way round are one', () => {
    expect(filled([square(0, 0, 3), square(2, 2, 3)]).slice(0, 4)).toEqual([
      '###...',
      '###...',
      '#####.',
      '..###.',
    ]);
  });
});

describe('the clock of the running picture', () => {
  const rate = frameRateOf('59.94');
  const fps = rate.numerator / rate.denominator;

  test('counts frames of the rate, anew in each second', () => {
    expect(tickAt(0, 50)).toEqual({ frame: 0, second: 0, inSecond: 0, flash: true });
    expect(tickAt(1.5, 50)).toEqual({ frame: 75, second: 1, inSecond: 25, flash: false });
    expect(tickAt(10, fps).frame).toBe(599);
  });

  test('the flash is there in the first two frames of each second, and never else', () => {
    for (let i = 0; i < 600; i++) expect(tickAt(i / 60 + 0.001, 60).flash).toBe(i % 60 < 2);
  });
});

describeInBrowser('test pictures in a browser', (viewer) => {
  test.each([
    [subjects[0]!, from],
    [hostileSubjects[0]!, 'a plan'],
  ])('the SVG and the PNG are the same picture, pixel by pixel', async (subject, line) => {
    const picture = makeTestPicture(subject, line, faces);
    const { width, height } = picture;
    const { page, requests, complaints } = await viewer.open({ width, height });
    const url = `data:image/svg+xml;base64,${Buffer.from(testPictureSvg(picture)).toString('base64')}`;
    await page.setContent(`<style>html,body{margin:0}img{display:block}</style><img src="${url}">`);
    await page.locator('img').evaluate((image: HTMLImageElement) => image.decode());
    const shown = decode(await page.screenshot({ animations: 'disabled' }));
    const written = pixelsOf(testPicturePng(picture));
    let differing = 0;
    for (let y = 0; y < height; y++) {
      for (let x = 0; x < width; x++) {
        const at = (y * width + x) * shown.channels;
        const colour = `#${[...shown.data.slice(at, at + 3)].map((one) => one.toString(16).padStart(2, '0')).join('')}`;
        if (colour !== written.at(x, y)) differing++;
      }
    }
    // The browser smooths the edges of letters and arrows; everything else is the same to the pixel.
    expect(differing / (width * height)).toBeLessThan(0.02);
    expect(differing).toBeGreaterThan(0);
    expect(requests.filter((address) => !address.startsWith('data:'))).toEqual([]);
    expect(complaints).toEqual([]);
    await page.close();
  });

  test('the running page counts, flashes and sounds, under its policy and without a network', async () => {
    const program = join(root, 'dist/moving-picture.js');
    expect(existsSync(program), 'run `npm run build` first').toBe(true);
    const html = await movingPage(
      hostileSubjects,
      '</script><script>alert(1)</script>',
      readFileSync(program, 'utf8'),
    );
    const { page, requests, complaints } = await viewer.open({ width: 1280, height: 720 });
    await page.addInitScript(() => {
      const played: number[] = [];
      Object.assign(window, { played });
      const start = OscillatorNode.prototype.start;
      OscillatorNode.prototype.start = function (when) {
        played.push(when ?? 0);
        start.call(this, when);
      };
    });
    // A file, as a laptop opens it.
    await page.route('http://file.test/**', (route) =>
      route.fulfill({ body: html, contentType: 'text/html' }),
    );
    await page.goto('http://file.test/running.html#3');
    expect(await page.locator('#number').textContent()).toBe('3');
    await page.locator('#start').click();
    expect(await page.locator('#menu').isVisible()).toBe(false);
    const read = () => page.locator('#count').textContent();
    await page.waitForFunction(() => /^[1-9]/.test(document.getElementById('count')?.textContent ?? ''));
    const first = await read();
    await page.waitForFunction((before) => document.getElementById('count')?.textContent !== before, first);
    const flashes = await page.evaluate(
      () =>
        new Promise<number>((resolve) => {
          const seen = new Set<string>();
          const ends = performance.now() + 2500;
          const look = () => {
            const second = /^\d+/.exec(document.getElementById('count')?.textContent ?? '')?.[0] ?? '';
            if (document.getElementById('flash')?.style.visibility === 'visible') seen.add(second);
            if (performance.now() < ends) requestAnimationFrame(look);
            else resolve(seen.size);
          };
          look();
        }),
    );
    expect(flashes).toBeGreaterThanOrEqual(2);
    const played = await page.evaluate(() => (window as unknown as { played: number[] }).played);
    expect(played.length).toBeGreaterThanOrEqual(2);
    // Beeps are a second apart on the sound clock.
    expect(played[1]! - played[0]!).toBeCloseTo(1, 1);
    expect(await page.locator('#plan').textContent()).toBe('</script><script>alert(1)</script>');
    expect(complaints).toEqual([]);
    expect(requests).toEqual([]);
    await page.close();
  }, 60_000);
});
