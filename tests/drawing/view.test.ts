/** The drawing's view in a plain browser, driven by pointer and keys. */
import { afterAll, afterEach, beforeAll, describe, expect, it } from 'vitest';
import { textWidth } from '../../src/documents/drawing/text-size.ts';
import { firstLines } from '../../src/extension/webview/first-lines.ts';
import { findChromium } from '../editor/installation.ts';
import { Random } from '../incremental/random.ts';
import { brokenRules } from '../support/accessibility.ts';
import { type EditorTheme, editorThemes } from '../support/editor-colours.ts';
import { randomPlan } from './random-plans.ts';
import { sceneOfExample, sceneOfText } from './scenes.ts';
import { sceneMessage, type View, ViewBrowser } from './view.ts';

const chromium = findChromium();
if (!chromium) {
  const reason = 'no Chromium for the tests of the view';
  if (process.env.CI || process.env.FEEDPLOT_REQUIRE_EDITOR) it('finds a browser', () => expect.fail(reason));
  else console.warn(`SKIPPED, ${reason}.`);
}

const finals = sceneOfExample('finals');

/** Two boxes and a trunk; `words` stands on one of them, `more` are further statements. */
function small(words = 'Box one', more = ''): ReturnType<typeof sceneOfText> {
  return sceneOfText(`plan "Small" { rate 50 }
kit box { inputs in[1..4] as sdi_3g outputs out[1..4] as sdi_3g network net as ethernet_10g carries uncompressed }
place a "Left"
place b "Right"
node one "${words}" : box at a
node two "Box two" : box at b
link trunk one.net <-> two.net over cat6a 40 m
source camera at a sends 1080p50 as sdi_3g into one.in1 over rg6 5 m
destination screen at b takes 1080p50 as sdi_3g from two.out1 over rg6 5 m
feed camera -> screen
${more}`);
}

describe.runIf(chromium)('the view of the drawing', () => {
  let browser: ViewBrowser;
  let view: View;

  beforeAll(async () => {
    browser = await ViewBrowser.start(chromium!);
  }, 60_000);
  afterAll(() => browser?.close());
  afterEach(async () => {
    // Nothing that any test does may break the page's policy or throw.
    const complaints = view?.complaints ?? [];
    await view?.page.close();
    expect(complaints).toEqual([]);
  });

  const classOf = (id: string) => view.page.locator(`g[data-id="${id}"]`).first().getAttribute('class');
  const figures = () => view.page.locator('#figures').textContent();
  const notice = () => view.page.locator('#notice').textContent();
  const said = async (kind: string) => (await view.said()).filter((message) => message.kind === kind);
  const transform = () => view.page.locator('#sheet').evaluate((sheet) => sheet.style.transform);
  /** Until the next picture of the screen. */
  const painted = () =>
    view.page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 0))));

  /** With the whole picture in sight. */
  async function open(scene = finals, theme: EditorTheme = 'light'): Promise<void> {
    view = await browser.open({ width: 1100, height: 750 }, theme);
    await view.draw(scene);
    await view.page.locator('#whole').click();
    await painted();
  }

  describe('draws', () => {
    it('what it is sent, laid out in a thread of its own', async () => {
      await open();
      expect(view.page.workers()).toHaveLength(1);
      expect(await view.page.locator('svg').first().getAttribute('aria-label')).toContain(
        'Harbour Hall science final',
      );
      expect(await said('ready')).toHaveLength(1);
    });

    it('in the colours of the editor, whatever they become', async () => {
      await open(finals, 'light');
      const ground = () => view.page.locator('svg > rect').first().getAttribute('fill');
      expect(await ground()).toBe('#FFFFFF');
      await view.useTheme('dark');
      await expect.poll(ground).toBe('#1C1D1F');
      await view.useTheme('contrast');
      await expect.poll(ground).toBe('#000000');
      await view.useTheme('contrast-light');
      await expect
        .poll(() => view.page.locator('g.room rect').first().getAttribute('stroke'))
        .toBe('#000000');
    });

    it.each([
      ['the example', finals],
      ['labels of every script', sceneOfText(randomPlan(new Random(11), 40))],
    ])('no word wider than it has room for: %s', async (_, scene) => {
      await open(scene);
      const words = await view.page.locator('g.things text').evaluateAll((texts) =>
        (texts as SVGTextElement[]).map((text) => ({
          words: text.textContent ?? '',
          width: text.getComputedTextLength(),
          size: Number(text.getAttribute('font-size')),
          bold: text.getAttribute('font-weight') === '700',
        })),
      );
      expect(words.length).toBeGreaterThan(50);
      const tooWide = words.filter(
        ({ words, width, size, bold }) => width > textWidth(words, size, bold) + 1,
      );
      expect(tooWide).toEqual([]);
    });

    it('only the latest of many scenes that come while it lays one out', async () => {
      await open(small());
      const stages = ['A', 'B', 'C', 'D'].map((letter, i) =>
        small(
          `Box ${letter}`,
          Array.from({ length: i + 1 }, (_, n) => `node extra${n} : box at a`).join('\n'),
        ),
      );
      await view.page.evaluate(
        (messages) => {
          const drawn: string[] = [];
          Object.assign(window, { drawn });
          new MutationObserver(() =>
            drawn.push(document.querySelector('g[data-id="one"]')?.textContent ?? ''),
          ).observe(document.getElementById('sheet')!, { childList: true });
          for (const message of messages) window.postMessage(message, '*');
        },
        stages.map((scene) => sceneMessage(scene)),
      );
      await expect.poll(() => view.page.locator('g[data-id="one"]').textContent()).toContain('Box D');
      const drawn = await view.page.evaluate(() => (window as unknown as { drawn: string[] }).drawn);
      expect(drawn.length).toBeLessThanOrEqual(2);
      expect(await view.page.locator('g.node').count()).toBe(2 + 4);
    });

    it('a changed label alone, and leaves every other thing alone', async () => {
      await open(small('Box one'));
      await view.page.locator('g[data-id="two"]').evaluate((thing) => Object.assign(thing, { kept: true }));
      await view.page.locator('g[data-id="one"]').evaluate((thing) => Object.assign(thing, { kept: true }));
      // As wide as before, so nothing moves.
      await view.send(sceneMessage(small('Box ono')));
      await expect.poll(() => view.page.locator('g[data-id="one"]').textContent()).toContain('Box ono');
      const kept = (id: string) =>
        view.page.locator(`g[data-id="${id}"]`).evaluate((thing) => 'kept' in thing);
      expect(await kept('two')).toBe(true);
      expect(await kept('one')).toBe(false);
    });
  });

  describe('keeps', () => {
    it('its place and scale while the plan changes', async () => {
      await open();
      await view.page.locator('#closer').click();
      await view.page.mouse.move(500, 400);
      await view.page.mouse.down();
      await view.page.mouse.move(420, 370, { steps: 4 });
      await view.page.mouse.up();
      await painted();
      const before = await transform();
      const labelled = {
        ...finals,
        boxes: finals.boxes.map((box) =>
          box.id === 'mixer' ? { ...box, subtitle: 'Vision mixer, nine' } : box,
        ),
      };
      await view.draw(labelled);
      await painted();
      expect(await transform()).toBe(before);
    });

    it('what a person looks at where it is, when something comes in beside it', async () => {
      await open(small());
      for (let i = 0; i < 3; i++) await view.page.locator('#closer').click();
      await view.page.locator('g[data-id="two"]').click();
      await painted();
      const at = async () => {
        const { x, y } = (await view.page.locator('g[data-id="two"] > rect').first().boundingBox())!;
        return { x: Math.round(x), y: Math.round(y) };
      };
      const before = await at();
      await view.draw(
        small(
          'Box one',
          'node extra "A box in a third room" : box at a\nlink extra.net <-> one.out2 over cat6a 3 m\nnode more : box at a',
        ),
      );
      await painted();
      expect(await at()).toEqual(before);
    });

    it('the last picture, marked, while the text is broken or the server is away', async () => {
      await open();
      await view.send(sceneMessage(null, { stale: true }));
      await expect.poll(notice).toContain('last drawing of it that was whole');
      expect(await view.page.locator('#frame').getAttribute('class')).toContain('stale');
      expect(await view.page.locator('g[data-id]').count()).toBeGreaterThan(40);
      await view.send(sceneMessage(null));
      await expect.poll(() => view.page.locator('#notice').isHidden()).toBe(true);

      await view.send({ kind: 'nothing', reason: 'The language server is not running.', keep: true });
      await expect.poll(notice).toBe('The language server is not running.');
      expect(await view.page.locator('g[data-id]').count()).toBeGreaterThan(40);
      await view.send({ kind: 'nothing', reason: 'No plan imports this file.', keep: false });
      await expect.poll(() => view.page.locator('g[data-id]').count()).toBe(0);
    });

    it('the chosen part of the show and the followed feed while there are such', async () => {
      await open();
      await view.page.locator('#segment').selectOption('results');
      await view.page.locator('#feed').selectOption('clean -> judges');
      await view.draw({ ...finals, title: 'Another title' });
      expect(await view.page.locator('#segment').inputValue()).toBe('results');
      expect(await view.page.locator('#feed').inputValue()).toBe('clean -> judges');
      await view.draw(small());
      expect(await view.page.locator('#segment').isHidden()).toBe(true);
    });
  });

  describe('begins', () => {
    const sheetScale = async () => Number(/scale\(([\d.]+)\)/.exec(await transform())?.[1]);
    const overview = () => view.page.locator('#overview');

    it('where the picture begins, as large as words can be read, with the whole of it in a corner', async () => {
      view = await browser.open({ width: 800, height: 700 });
      await view.draw(finals);
      await painted();
      expect(await sheetScale()).toBe(0.6);
      expect((await view.page.locator('#sheet svg').boundingBox())!.x).toBe(0);
      expect(await overview().isVisible()).toBe(true);
      expect(await overview().locator('rect.box').count()).toBe(finals.boxes.length + finals.ribbons.length);
    });

    it('with the whole picture, where that can be read', async () => {
      view = await browser.open({ width: 1100, height: 700 });
      await view.draw(small());
      await painted();
      expect(await sheetScale()).toBeGreaterThan(0.6);
      expect(await overview().isVisible()).toBe(false);
    });

    it('with what the cursor stands in, and follows it when it goes on out of sight', async () => {
      view = await browser.open({ width: 800, height: 700 });
      await view.send({ kind: 'cursor', at: { kind: 'thing', names: ['foyer_screen'] } });
      await view.draw(finals);
      await painted();
      const inSight = async (id: string) => {
        const { x, y, width, height } = (await view.page
          .locator(`g[data-id="${id}"] > rect`)
          .first()
          .boundingBox())!;
        return x >= 0 && y >= 0 && x + width <= 800 && y + height <= 700;
      };
      expect(await inSight('foyer_screen')).toBe(true);
      expect(await inSight('mixer')).toBe(false);
      await view.send({ kind: 'cursor', at: { kind: 'thing', names: ['mixer'] } });
      await expect.poll(() => inSight('mixer')).toBe(true);
      // Not when a person has moved the picture and writes on in the same statement.
      await view.page.mouse.move(400, 400);
      await view.page.mouse.wheel(1500, 0);
      await expect.poll(() => inSight('mixer')).toBe(false);
      await view.send({ kind: 'cursor', at: { kind: 'thing', names: ['mixer'] } });
      await painted();
      expect(await inSight('mixer')).toBe(false);
    });

    it('and goes where the overview is pressed', async () => {
      view = await browser.open({ width: 800, height: 700 });
      await view.draw(finals);
      await painted();
      const { x, y, width, height } = (await overview().boundingBox())!;
      await view.page.mouse.click(x + width * 0.9, y + height / 2);
      const middleOf = async () => {
        const at = (await view.page.locator('#sheet svg').boundingBox())!;
        const frame = (await view.page.locator('#frame').boundingBox())!;
        return (frame.x + frame.width / 2 - at.x) / at.width;
      };
      await expect.poll(middleOf).toBeCloseTo(0.9, 1);
      await view.page.locator('#whole').click();
      await expect.poll(() => overview().isVisible()).toBe(false);
    });
  });

  it('says the figures of what the pointer is on', async () => {
    await open();
    await view.page.locator('g[data-id="judges"]').hover();
    await expect.poll(figures).toContain('5.5 of 6 frames measured');
    await view.page.mouse.move(5, 5);
    await expect.poll(figures).toBe('');
  });

  it('says what to write while nothing stands anywhere', async () => {
    view = await browser.open();
    await view.send(sceneMessage(sceneOfText('plan "Empty" { rate 50 }')));
    // The thread that lays out is started first.
    await expect.poll(notice, { timeout: 20_000 }).toContain(firstLines);
  });

  describe('shows', () => {
    it('what the cursor stands in: a thing, a room, the way of a feed, all that carries a picture', async () => {
      await open();
      const lit = () =>
        view.page
          .locator('g.cursor')
          .evaluateAll((all) => all.map((one) => (one as SVGElement).dataset.id).sort());
      await view.send({ kind: 'cursor', at: { kind: 'thing', names: ['mixer'] } });
      await expect.poll(lit).toEqual(['mixer']);
      expect(await figures()).toMatch(/^Vision mixer, .*Control desk, balcony/);
      await view.send({ kind: 'cursor', at: { kind: 'room', names: ['booth'] } });
      await expect.poll(lit).toEqual(['booth']);
      await view.send({ kind: 'cursor', at: { kind: 'feed', names: ['screen -> projector'] } });
      await expect.poll(lit).toEqual(expect.arrayContaining(['mixer', 'tie_1', 'projector']));
      await view.send({ kind: 'cursor', at: { kind: 'picture', names: ['program'] } });
      await expect.poll(lit).toEqual(expect.arrayContaining(['capture', 'host', 'judges', 'trunk', 'web']));
      await view.send({ kind: 'cursor', at: null });
      await expect.poll(lit).toEqual([]);
    });

    it('another part of the show without moving anything', async () => {
      await open();
      const boxes = () =>
        view.page
          .locator('g[data-id]:not(.wire) > rect:first-of-type')
          .evaluateAll((all) =>
            all.map((one) => ['x', 'y', 'width', 'height'].map((name) => one.getAttribute(name)).join(' ')),
          );
      const before = await boxes();
      await view.page.locator('#segment').selectOption('results');
      await expect
        .poll(() => view.page.locator('g[data-id="judges"]').getAttribute('aria-label'))
        .toContain('Clean feed');
      expect(await boxes()).toEqual(before);
      await view.page.locator('#frame').focus();
      await view.page.keyboard.press(']');
      expect(await view.page.locator('#segment').inputValue()).toBe('');
      await view.page.keyboard.press('[');
      expect(await view.page.locator('#segment').inputValue()).toBe('results');
    });

    it('a picture from end to end, with its delay and its way in words', async () => {
      await open();
      await view.page.locator('#feed').selectOption('clean -> overflow');
      expect(await classOf('trunk')).toContain('onway');
      expect(await classOf('overflow')).toContain('onway');
      expect(await classOf('projector')).toContain('aside');
      const strandsOf = (aside: string) =>
        view.page
          .locator(`g[data-id="trunk"] .strand${aside}`)
          .evaluateAll((all) => [...new Set(all.map((one) => (one as SVGGElement).dataset.picture))]);
      // The clean feed is picture 8.
      expect(await strandsOf(':not(.aside)')).toEqual(['8']);
      expect((await strandsOf('.aside')).length).toBeGreaterThan(3);
      expect(await figures()).toMatch(/clean -> overflow: [\d.]+ of 150 ms · Vision mixer → Box D → T1/);
    });

    it('free ports, pale and hollow', async () => {
      await open();
      const free = view.page.locator('g[data-id="box_d"] rect[stroke="#857F6F"]');
      expect(await free.count()).toBeGreaterThan(3);
    });

    it('everything in words, each line leading to its thing', async () => {
      await open();
      await view.page.locator('#words').click();
      expect(await view.page.locator('#words').getAttribute('aria-expanded')).toBe('true');
      const words = (await view.page.locator('#panel').textContent())!;
      for (const figure of [
        '46.3 % free',
        '19.6 % free',
        '5.5 of 6 frames measured',
        '18.21 of 20 dB',
        '200 ft measured',
      ])
        expect(words).toContain(figure);
      expect(await view.page.locator('#panel li button').count()).toBe(
        finals.boxes.length + finals.wires.length + finals.ribbons.length,
      );
      await view.page.locator('#panel button', { hasText: "Judges' monitor, destination" }).click();
      expect(await said('open')).toEqual([{ kind: 'open', id: 'judges', what: 'destination' }]);
      expect(await classOf('judges')).toContain('selected');
    });
  });

  describe('obeys', () => {
    it('a click: the text of what was clicked', async () => {
      await open();
      for (const [id, what] of [
        ['mixer', 'node'],
        ['bench', 'source'],
        ['judges', 'destination'],
        ['trunk', 'ribbon'],
      ] as const) {
        await view.page.locator(`g[data-id="${id}"]`).first().click();
        expect((await said('open')).at(-1)).toEqual({ kind: 'open', id, what });
      }
      // A cable is met a little beside it too.
      const at = await view.page
        .locator('g[data-id="tie_1"] path')
        .first()
        .evaluate((path) => {
          const line = path as SVGPathElement;
          const { x, y } = line.getPointAtLength(20).matrixTransform(line.getScreenCTM()!);
          return { x, y };
        });
      // As near as a pointer comes at this scale, not at the one before.
      await view.page.waitForFunction(() => {
        const { style } = document.getElementById('sheet')!;
        const scale = Number(/scale\(([\d.]+)\)/.exec(style.transform)?.[1]);
        return Math.abs(Number(style.getPropertyValue('--near')) * scale - 11) < 0.5;
      });
      await view.page.mouse.click(at.x, at.y - 4);
      expect((await said('open')).at(-1)).toEqual({ kind: 'open', id: 'tie_1', what: 'wire' });
    });

    it('a drag, which opens nothing', async () => {
      await open();
      const before = await transform();
      const { x, y } = (await view.page.locator('g[data-id="mixer"]').boundingBox())!;
      await view.page.mouse.move(x + 10, y + 10);
      await view.page.mouse.down();
      await view.page.mouse.move(x + 60, y + 40, { steps: 5 });
      await view.page.mouse.up();
      await painted();
      expect(await transform()).not.toBe(before);
      expect(await said('open')).toEqual([]);
    });

    it('the wheel: it moves, with Ctrl it scales about the pointer', async () => {
      await open();
      const box = () => view.page.locator('g[data-id="mixer"] > rect').first().boundingBox();
      const before = (await box())!;
      await view.page.mouse.move(before.x, before.y);
      await view.page.mouse.wheel(0, 50);
      await expect.poll(async () => Math.round((await box())!.y)).toBe(Math.round(before.y - 50));
      await view.page.mouse.move(before.x, before.y - 50);
      await view.page.keyboard.down('Control');
      await view.page.mouse.wheel(0, -300);
      await view.page.keyboard.up('Control');
      await expect.poll(async () => (await box())!.width).toBeGreaterThan(before.width * 2);
      const after = (await box())!;
      expect(Math.abs(after.x - before.x)).toBeLessThan(2);
    });

    it('keys: from thing to thing, their text, a picture through one, the scale, the end of it', async () => {
      await open();
      await view.page.locator('#frame').focus();
      await view.page.keyboard.press('ArrowRight');
      const selected = () => view.page.locator('g.selected').getAttribute('data-id');
      expect(await selected()).toBe('trunk');
      await view.page.keyboard.press('ArrowDown');
      expect(await selected()).toBe('trunk_b');
      await view.page.keyboard.press('ArrowUp');
      await view.page.keyboard.press('Enter');
      expect((await said('open')).at(-1)).toEqual({ kind: 'open', id: 'trunk', what: 'ribbon' });
      await view.page.keyboard.press('t');
      const first = await view.page.locator('#feed').inputValue();
      await view.page.keyboard.press('t');
      const second = await view.page.locator('#feed').inputValue();
      expect(first).not.toBe('');
      expect(second).not.toBe(first);
      await view.page.keyboard.press('Escape');
      expect(await view.page.locator('#feed').inputValue()).toBe('');
      expect(await view.page.locator('g.selected').count()).toBe(0);

      await view.page.locator('#frame').focus();
      await view.page.keyboard.press('0');
      await painted();
      const before = await transform();
      await view.page.keyboard.press('+');
      await expect.poll(transform).not.toBe(before);
      await view.page.keyboard.press('Shift+ArrowLeft');
      await view.page.keyboard.press('0');
      await expect.poll(transform).toBe(before);
    });

    it('a search by any word or figure', async () => {
      await open();
      await view.page.locator('#frame').focus();
      await view.page.keyboard.press('/');
      await view.page.keyboard.type('monitor');
      expect(await view.page.locator('#count').textContent()).toMatch(/^[3-9] found$|^\d\d found$/);
      expect(await classOf('judges')).toContain('found');
      expect(await classOf('mixer')).toContain('aside');
      await view.page.keyboard.press('Enter');
      const first = await view.page.locator('g.selected').getAttribute('data-id');
      await view.page.keyboard.press('Enter');
      expect(await view.page.locator('g.selected').getAttribute('data-id')).not.toBe(first);
      await view.page.keyboard.press('Escape');
      expect(await view.page.locator('g.aside').count()).toBe(0);
      await view.page.locator('#search').fill('nothing like it');
      expect(await view.page.locator('#count').textContent()).toBe('0 found');
    });

    it('who chooses a place', async () => {
      await open();
      await view.draw(finals, {
        places: [
          { name: 'desk', title: 'Control desk' },
          { name: 'platform', title: 'Platform' },
        ],
      });
      await view.page.locator('#place').selectOption('platform');
      expect((await said('place')).at(-1)).toEqual({ kind: 'place', place: 'platform' });
      await view.page.locator('#place').selectOption('');
      expect((await said('place')).at(-1)).toEqual({ kind: 'place', place: null });
      await view.draw(small(), {
        places: [
          { name: 'a', title: 'A' },
          { name: 'b', title: 'B' },
        ],
        place: 'b',
        onlyPlaces: true,
      });
      expect(await view.page.locator('#place').inputValue()).toBe('b');
      expect(await view.page.locator('#place option').allTextContents()).toEqual(['A', 'B']);
    });
  });

  describe('gives out', () => {
    it('the drawing as SVG, on white paper', async () => {
      await open(finals, 'dark');
      await view.page.locator('#svg').click();
      const [message] = await said('export');
      const svg = Buffer.from((message as { base64: string }).base64, 'base64').toString('utf8');
      expect(svg).toMatch(/^<svg [\s\S]*<\/svg>$/);
      expect(svg).toContain('<rect width="100%" height="100%" fill="#FFFFFF"/>');
      // A browser reads it as XML without a fault.
      const fault = await view.page.evaluate(
        (text) =>
          new DOMParser().parseFromString(text, 'image/svg+xml').querySelector('parsererror')?.textContent ??
          null,
        svg,
      );
      expect(fault).toBeNull();
    });

    it('the drawing as PNG, twice as large', async () => {
      await open(small());
      await view.page.locator('#png').click();
      await expect.poll(() => said('export')).toHaveLength(1);
      const [message] = await said('export');
      const png = Buffer.from((message as { base64: string }).base64, 'base64');
      // The signature and the header's width (PNG, third edition, W3C 2025, clauses 5.2 and 11.2.1).
      expect([...png.subarray(0, 8)]).toEqual([0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a]);
      const width = await view.page
        .locator('svg')
        .first()
        .evaluate((svg) => (svg as SVGSVGElement).width.baseVal.value);
      expect(png.readUInt32BE(16)).toBe(Math.round(width * 2));
    });
  });

  describe('is open to everybody', () => {
    it.each(editorThemes)('no rule of axe is broken, %s', async (theme) => {
      await open(finals, theme);
      await view.page.locator('#words').click();
      await view.send(sceneMessage(null, { stale: true }));
      await expect.poll(notice).not.toBe('');
      expect(await brokenRules(view.page)).toEqual([]);
    });

    it('every control has a name, and Tab comes to all of them and to the drawing', async () => {
      await open();
      await view.page.locator('#segment').focus();
      const reached: string[] = [];
      for (let i = 0; i < 14; i++) {
        await view.page.keyboard.press('Tab');
        reached.push(
          await view.page.evaluate(
            () => document.activeElement?.id || document.activeElement?.getAttribute('data-id') || '',
          ),
        );
      }
      for (const id of ['feed', 'search', 'further', 'closer', 'whole', 'words', 'svg', 'png', 'frame'])
        expect(reached).toContain(id);
      // One stop for all things of the drawing: arrows go between them.
      expect(
        reached.filter((id) => finals.boxes.some((box) => box.id === id) || id === 'trunk'),
      ).toHaveLength(1);
    });
  });

  it('takes nothing that the extension does not send', async () => {
    await open();
    const before = await view.page.locator('#sheet').innerHTML();
    for (const message of [
      'text',
      null,
      7,
      {},
      { kind: 'scene' },
      { kind: 'scene', scene: { boxes: '<b>' } },
      { kind: 'cursor', at: 'x' },
      { kind: '__proto__' },
    ])
      await view.send(message);
    await painted();
    expect(await view.page.locator('#sheet').innerHTML()).toBe(before);
  });

  it('shows names as what they are, whatever they are', async () => {
    const label = '<img src=x onerror=window.hacked=1>';
    await open(small(label));
    expect(await view.page.locator('g[data-id="one"]').textContent()).toContain('<img src=x');
    expect(await view.page.evaluate(() => 'hacked' in window)).toBe(false);
    expect(await view.page.locator('img').count()).toBe(0);
  });
});
