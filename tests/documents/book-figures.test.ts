/** Every figure that the book prints is the one of `show --json`, and no figure of these is missing from the book. */
import type { Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { bookParts } from '../../src/documents/book/book.ts';
import { bookPage } from '../../src/documents/book/page.ts';
import { placeScene } from '../../src/documents/drawing/place-scene.ts';
import { analysisJson } from '../../src/documents/json/analysis.ts';
import {
  formatBytes,
  formatLength,
  formatNumber,
  formatPower,
  formatRate,
  formatShare,
  formatTime,
  formatVoltage,
  formatWeight,
} from '../../src/physics/display.ts';
import { describeInBrowser, type Viewer } from '../support/browser.ts';
import { type CheckedExample, checkedExample } from '../support/example-plans.ts';

interface Seen {
  /** `section › head of the column › name of what the row is about`. */
  readonly where: string;
  readonly text: string;
  /** The figure behind the text; null for words. */
  readonly value: number | null;
}

/** What nobody can see is no delay on paper. */
const delaySeen = (delay_s: number, beside_s?: number) =>
  formatTime(delay_s < 0.00005 ? 0 : delay_s, beside_s);

/** Cells with a figure, and those of columns whose words are figures, in their order. */
function cellsOf(page: Page, wordColumns: readonly string[]): Promise<Seen[]> {
  return page.locator('section.sheet tr[data-of]').evaluateAll(
    (rows, words) =>
      rows.flatMap((row) => {
        const heads = [...(row.closest('table')?.querySelectorAll('th') ?? [])].map((th) => th.textContent);
        const section = row.closest('section')?.id;
        return [...row.children].flatMap((cell, i) => {
          const data = cell.querySelector('data');
          const column = `${section} › ${heads[i]}`;
          if (!data && !words.includes(column)) return [];
          const small = cell.querySelector('small')?.textContent ?? '';
          const text = data?.textContent ?? (cell.textContent ?? '').slice(0, -small.length || undefined);
          const of = (row as HTMLElement).dataset.of;
          return [{ where: `${column} › ${of}`, text, value: data ? Number(data.value) : null }];
        });
      }),
    wordColumns,
  );
}

const wordColumns = ['addresses › Address', 'addresses › Group', 'addresses › Hardware address'];

/** What the book is to say, from the JSON alone: where, in the order of its rows, and how it reads. */
function expectedOf({ analysis }: CheckedExample): Seen[] {
  const json = analysisJson(analysis, 'plan', []);
  const { units } = analysis.settings;
  const expected: Seen[] = [];
  const add = (
    where: string,
    of: string,
    value: number | null | undefined,
    write: (value: number) => string,
  ) => {
    if (value !== null && value !== undefined)
      expected.push({ where: `${where} › ${of}`, text: write(value), value });
  };
  const say = (where: string, of: string, text: string | null) => {
    if (text !== null) expected.push({ where: `${where} › ${of}`, text, value: null });
  };
  const length = (value: number) => formatLength(value, units);
  const beside =
    (format: (value: number, beside?: number) => string, other: number | null) => (value: number) =>
      format(value, other ?? undefined);

  for (const source of json.sources)
    add('signals › On a network', source.name, source.network_bits_per_second, formatRate);

  const kits = new Set(analysis.kits.keys());
  for (const { what, count, spare } of json.cost.lines.filter((line) => kits.has(line.what))) {
    add('kit › Bring', what, count, String);
    if (spare > 0) add('kit › Of these spare', what, spare, String);
  }
  for (const [i, { what, length_m, count, spare, each, sum }] of json.cost.lines.entries()) {
    add('cost › Count', what, count, String);
    if (spare > 0) add('cost › Of these spare', what, spare, String);
    add('cost › Each', what, each, (value) => formatNumber(value, 2));
    add('cost › Sum', what, sum, (value) => formatNumber(value, 2));
    expect(length_m === null, `line ${i} is kit or cable`).toBe(kits.has(what));
  }
  add('cost › Sum', 'total', json.cost.total, (value) => formatNumber(value, 2));

  for (const one of json.cases)
    add('packing › Weighs', one.name, one.weight_kg, beside(formatWeight, one.limit_kg));

  const pieces = new Map(json.cables.map((piece) => [piece.link, piece]));
  for (const link of json.links) {
    add('cables › Length', link.name, link.length_m, length);
    add('cables › Take', link.name, pieces.get(link.name)?.piece_m, length);
  }

  for (const { name, load_w, limit_w, share } of json.circuits) {
    add('power › Load', name, load_w, beside(formatPower, limit_w));
    add('power › At most', name, limit_w, beside(formatPower, load_w));
    add('power › Used', name, share, (value) => `${formatShare(value)}${value > 1 ? ' TOO MUCH' : ''}`);
  }
  for (const { place, load_w } of json.place_power) add('power › Load', place, load_w, formatPower);
  for (const { device, supply_w, device_w, device_v } of json.network_power) {
    add('power › Supplied', device, supply_w, formatPower);
    add('power › Arrives', device, device_w, formatPower);
    add('power › At', device, device_v, formatVoltage);
  }

  for (const { name, address } of json.nodes) say('addresses › Address', name, address);
  for (const { source, group, hardware_address } of json.groups) {
    say('addresses › Group', source, group);
    say('addresses › Hardware address', source, hardware_address);
  }

  for (const { destination, picture_s, sound_s, delay_to_set_s } of json.sound) {
    add('sound › Picture', destination, picture_s, formatTime);
    add('sound › Sound', destination, sound_s, formatTime);
    add('sound › Delay to set', destination, delay_to_set_s, formatTime);
  }
  for (const uplink of json.uplinks) {
    add('sound › Stated', uplink.name, uplink.stated_bits_per_second, formatRate);
    add('sound › Measured', uplink.name, uplink.measured_bits_per_second, formatRate);
    add('sound › Usable', uplink.name, uplink.usable_bits_per_second, formatRate);
    add(
      'sound › Needed',
      uplink.name,
      uplink.needed_bits_per_second,
      beside(formatRate, uplink.usable_bits_per_second),
    );
    add('sound › Used', uplink.name, uplink.share, formatShare);
  }
  for (const { destination, bytes } of json.recordings)
    add('sound › Storage to bring', destination, bytes, formatBytes);

  const feeds = new Set<string>();
  for (const feed of json.feeds) {
    const name = `${feed.source} -> ${feed.destination}`;
    if (feeds.has(name)) continue;
    feeds.add(name);
    add('line-check › At most', name, feed.delay_limit_s, beside(formatTime, feed.delay_s));
    add('line-check › Planned', name, feed.planned_delay_s, beside(delaySeen, feed.delay_limit_s));
    // As it was typed: in frames or in seconds.
    if (feed.delay_from === 'measured') add('line-check › Measured', name, feed.delay_s, () => '*');
  }
  return expected;
}

/** What the plan states of itself, of which nothing is worked out: no figures of the analysis. */
const stated = ['kit › Weighs each', 'kit › Length', 'sound › Rate'];
/** The list of pieces puts equal ones together; a test below counts them. */
const counted = ['kit › Bring', 'kit › Of these spare'];

/** Where a book differs from what it is to say; empty when every figure is there, reads as it should, and no other. */
function differences(
  seen: readonly Seen[],
  expected: readonly Seen[],
  exempt: (seen: Seen) => boolean,
): string[] {
  const waiting = new Map<string, Seen[]>();
  for (const one of expected) waiting.set(one.where, [...(waiting.get(one.where) ?? []), one]);
  const found: string[] = [];
  for (const { where, text, value } of seen) {
    const next = waiting.get(where)?.shift();
    if (!next) {
      if (!exempt({ where, text, value })) found.push(`${where}: ${text} is no figure of the analysis`);
    } else if (next.text !== '*' && next.text !== text) found.push(`${where}: ${text}, not ${next.text}`);
    // JSON has whole bits a second, and leaves out the noise behind the twelfth digit.
    else if (value !== null && Math.abs(value - next.value!) > Math.max(value * 1e-11, value > 1e5 ? 0.5 : 0))
      found.push(`${where}: value ${value}, not ${next.value}`);
  }
  for (const [where, left] of waiting)
    for (const { text } of left) found.push(`${where}: ${text} is missing`);
  return found;
}

function exemptIn({ analysis }: CheckedExample): (seen: Seen) => boolean {
  const cases = new Set(analysis.cases.keys());
  return ({ where }) => {
    const [section, head, of = ''] = where.split(' › ');
    const column = `${section} › ${head}`;
    if (stated.includes(column)) return true;
    if (counted.includes(column)) return analysis.cables.has(of);
    // What is in a case weighs what its kit states; a test below adds it up.
    return column === 'packing › Weighs' && !cases.has(of);
  };
}

async function openBook(viewer: Viewer, checked: CheckedExample): Promise<Page> {
  const parts = bookParts(checked);
  const html = await bookPage(parts, await Promise.all(parts.drawings.map(({ scene }) => placeScene(scene))));
  const { page } = await viewer.open();
  await page.setContent(html);
  return page;
}

describeInBrowser('figures of the book', (viewer) => {
  test.each(['finals', 'arena'])(
    '%s: they are those of `show --json`, all of them, in every section that has any',
    async (name) => {
      const checked = checkedExample(name);
      const page = await openBook(viewer, checked);
      const [expected, exempt] = [expectedOf(checked), exemptIn(checked)];
      const seen = await cellsOf(page, wordColumns);
      expect(differences(seen, expected, exempt)).toEqual([]);

      const compared = seen.filter((one) => !exempt(one));
      const sections = new Set(compared.map(({ where }) => where.split(' ')[0]));
      expect([...sections].sort()).toEqual(
        ['addresses', 'cables', 'cost', 'kit', 'line-check', 'packing', 'power', 'signals', 'sound'].sort(),
      );

      // The comparison notices any one figure that is otherwise, missing, or too many.
      for (const [i, one] of seen.entries()) {
        if (exempt(one) || one.where.startsWith('line-check › Measured')) continue;
        const other = seen.map((cell, j) => (i === j ? { ...cell, text: `${cell.text}1` } : cell));
        expect(differences(other, expected, exempt)).toHaveLength(1);
      }
      expect(differences(seen.slice(1), expected, exempt)).toHaveLength(1);
      expect(differences([...seen, seen.at(-1)!], expected, exempt)).toHaveLength(1);
      await page.close();
    },
    120_000,
  );

  test.each(['finals', 'arena'])(
    '%s: pieces of cable add up, and cases to their weight',
    async (name) => {
      const checked = checkedExample(name);
      const json = analysisJson(checked.analysis, 'plan', []);
      const page = await openBook(viewer, checked);
      const seen = await cellsOf(page, []);
      const sum = (column: string, of: string) =>
        seen.filter(({ where }) => where === `${column} › ${of}`).reduce((all, { value }) => all + value!, 0);
      const carried = [...json.cables, ...json.spare_cables].map(({ cable }) => cable);
      expect(new Set(carried).size).toBeGreaterThan(3);
      for (const what of new Set(carried)) {
        const spare = json.spare_cables.filter(({ cable }) => cable === what).length;
        expect(sum('kit › Bring', what), what).toBe(carried.filter((cable) => cable === what).length);
        expect(sum('kit › Of these spare', what), what).toBe(spare);
      }
      const cards = await page
        .locator('#packing .card')
        .evaluateAll((all) =>
          all.map((card) => [...card.querySelectorAll('data')].map((data) => Number(data.value))),
        );
      const weighed = cards.filter((weights) => weights.length > 0);
      expect(weighed.length).toBe(json.cases.length);
      for (const [i, weights] of weighed.entries()) {
        expect(weights.at(-1)).toBeCloseTo(json.cases[i]!.weight_kg, 9);
        expect(weights.slice(0, -1).reduce((a, b) => a + b, 0)).toBeCloseTo(weights.at(-1)!, 9);
      }
      await page.close();
    },
    120_000,
  );

  test.each(['finals', 'arena'])(
    '%s: the drawings tell each cable’s length, and changeovers and fault cards what the JSON has',
    async (name) => {
      const checked = checkedExample(name);
      const json = analysisJson(checked.analysis, 'plan', []);
      const page = await openBook(viewer, checked);
      const words = new Map<string, string>();
      for (const [id, label] of await page
        .locator('#drawing-whole-0 [data-kind="wire"], #drawing-whole-0 [data-kind="ribbon"]')
        .evaluateAll((all) =>
          all.map(
            (one) => [(one as SVGElement).dataset.id ?? '', one.getAttribute('aria-label') ?? ''] as const,
          ),
        ))
        words.set(id, label);
      expect(words.size).toBe(json.links.length);
      for (const link of json.links)
        if (link.length_m !== null)
          expect(words.get(link.name)).toContain(
            formatLength(link.length_m, checked.analysis.settings.units),
          );

      const delays = new Set(
        json.feeds.flatMap(({ delay_s, delay_limit_s }) =>
          delay_s === null ? [] : [delaySeen(delay_s, delay_limit_s ?? undefined)],
        ),
      );
      const looked = await page.locator('#changeovers td').allTextContents();
      const told = looked.flatMap((cell) => /delay (\S+ \S+)$/.exec(cell)?.[1] ?? []);
      expect(told.length).toBeGreaterThan(0);
      for (const delay of told) expect(delays).toContain(delay);

      const blamed = await page
        .locator('#faults tr[data-of]')
        .evaluateAll((rows) => rows.map((row) => (row as HTMLElement).dataset.of));
      const losses = json.failures.filter(({ dark, kept }) => dark.length + kept.length > 0);
      const darkening = json.failures.filter(({ kind, dark }) => kind !== 'run' && dark.length > 0);
      expect(blamed.length).toBeGreaterThan(10);
      for (const one of blamed) expect(losses.map((loss) => loss.name)).toContain(one);
      for (const loss of darkening) expect(blamed).toContain(loss.name);
      await page.close();
    },
    120_000,
  );
});
