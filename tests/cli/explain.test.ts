import { describe, expect, test } from 'vitest';
import { catalogue } from '../../src/checks/catalogue.ts';
import { feedplot, folderWith } from './command-line.ts';

/** In a folder without a plan, so that only the shipped library is known. */
function explain(...words: string[]) {
  return feedplot(['explain', ...words], { folder: folderWith({}) });
}

describe('a format', () => {
  test('its figures, what carries it, how many fit, and the working', () => {
    const { code, stdout, stderr } = explain('1080p59.94');
    expect({ code, stderr }).toEqual({ code: 0, stderr: '' });
    expect(stdout).toMatch(/^1080p59\.94 4:2:2 10 bit audio 16\n/);
    // Three uncompressed 1080p59.94 pictures go one way through 10 Gb/s, not four (common practice, no source).
    expect(stdout).toMatch(/Fit one way.*3 in 10 Gb\/s/);
    expect(stdout).toContain('1080 x 4');
    expect(stdout).toMatch(/source: .*RFC 4175/);
  });

  // 1080p59.94 in 4:2:2 at 10 bit. Active payload: 1920 x 1080 x 20 x 60000/1001 (exact arithmetic). 4,320 packets:
  // 1080 rows of 4 packets (SMPTE ST 2110-20, general packing). SDI: 2200 x 1125 x 20 x 60000/1001 (SMPTE ST 274).
  test('the same figures as a source has, for machines', () => {
    const figures = JSON.parse(explain('1080p59.94', '--json').stdout);
    expect(figures).toMatchObject({
      schema: 1,
      kind: 'format',
      format: '1080p59.94',
      active_bits_per_second: 2_485_834_166,
      packets_per_frame: 4320,
      interface_bits_per_second: 2_967_032_967,
    });
    expect(figures.fits.ethernet_10g).toBe(3);
    // CTA-861: 148.352 MHz as RGB 8 bit, so every class of HDMI from 165 MHz on carries it.
    expect(
      figures.display_classes.map((one: { character_rate_hz: number }) => one.character_rate_hz),
    ).toContain(165_000_000);
    expect(figures.carried_by).toContainEqual({ interface: 'sdi_3g', fit: 'fits' });
    const analysis = JSON.parse(feedplot(['show', 'examples/starter', '--json']).stdout);
    const { name, carried, ...source } = analysis.sources[0];
    expect(figures).toMatchObject(source);
  });

  test('several words: sampling, depth, sound', () => {
    const figures = JSON.parse(explain('2160p50', '4:4:4', '12', 'bit', 'audio', '8', '--json').stdout);
    expect(figures).toMatchObject({
      format: '2160p50',
      sampling: '4:4:4',
      depth_bits: 12,
      audio_channels: 8,
    });
    // 3840 x 2160 x 36 x 50, exact arithmetic.
    expect(figures.active_bits_per_second).toBe(14_929_920_000);
  });

  test('sound alone', () => {
    const { stdout } = explain('audio', '2');
    expect(stdout).toMatch(/^audio 2\n/);
    expect(stdout).toMatch(/Carried by +aes3/);
  });

  test.each([
    ['1081i50', 'must be even'],
    ['1080p0', 'frame rate'],
    ['0p50', 'height'],
    ['1080p59.94 4:1:1', '4:1:1'],
    ['1080p59.94 4:2:0 9 bit', '9 bit'],
  ])('%s cannot be, and it is said why', (format, why) => {
    const { code, stdout, stderr } = explain(...format.split(' '));
    expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
    expect(stderr).toContain(why);
  });
});

describe('a check', () => {
  test('what it means, how it is judged, what mends it, and an example', () => {
    const { code, stdout } = explain('link-overload');
    expect(code).toBe(0);
    expect(stdout).toMatch(/^link-overload \(error\)\n/);
    expect(stdout).toMatch(/How it is judged\./);
    expect(stdout).toMatch(/What mends it\./);
    expect(stdout).toMatch(/Mended:/);
  });

  test('every one can be asked for', () => {
    const folder = folderWith({});
    const some = catalogue.filter((_, i) => i % 9 === 0);
    for (const { name, summary } of some) {
      expect(JSON.parse(feedplot(['explain', name, '--json'], { folder }).stdout)).toMatchObject({
        name,
        summary,
      });
    }
  });
});

describe('a cable and an interface', () => {
  test('a cable: loss, weight, what runs over it and how far, and who says so', () => {
    const { stdout } = explain('cat6a');
    expect(stdout).toMatch(/Medium +twisted pair/);
    expect(stdout).toMatch(/ethernet_10g_t: 100 m \(IEEE 802\.3 .*second-hand\)/);
  });

  test('a value from memory is marked', () => {
    expect(explain('rg59').stdout).toContain('from memory, verify before relying on it');
  });

  test('an interface: what it takes and how far it goes', () => {
    const { stdout } = explain('ethernet_10g_t');
    expect(stdout).toMatch(/^ethernet_10g_t, 10GBASE-T\n/);
    expect(stdout).toMatch(/cat6: 55 m, good to 37 m/);
    expect(JSON.parse(explain('sdi_3g', '--json').stdout)).toMatchObject({
      kind: 'interface',
      rate_bits_per_second: 2_970_000_000,
      accepts: ['sdi_hd', 'sdi_sd'],
    });
  });

  test('one that the plan in the folder declares', () => {
    const folder = folderWith({
      'show.feedplot':
        'plan "Show"\n/** Ours, grey. */\ncable house_coax {\n  medium coax\n  loss 20 dB per 100 m at 1485 MHz\n}\n',
    });
    const { stdout, stderr } = feedplot(['explain', 'house_coax'], { folder });
    expect(stdout).toMatch(/^house_coax\n\nOurs, grey\.\n/);
    expect(stdout).toContain('20 dB at 1.485 GHz (no source is stated)');
    expect(stderr).toContain('show.feedplot');
  });
});

test.each([
  ['link-overlode', 'Did you mean link-overload?'],
  ['cat6b', 'Did you mean cat6?'],
  ['what', 'Name a check'],
])('%s is nothing', (thing, hint) => {
  const { code, stdout, stderr } = explain(thing);
  expect({ code, stdout }).toEqual({ code: 2, stdout: '' });
  expect(stderr).toContain(hint);
});
