import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, test } from 'vitest';
import { feedplot, folderWith, root } from './command-line.ts';

const links = `Link                                    Cable  Length         Forward             Backward
trunk: box_platform.net <->             cat6a  58 m of 100 m  8.051 Gb/s, 80.5 %  5.368 Gb/s, 53.7 %
box_desk.net
wide -> box_platform.in1                rg6    18 m of 78 m   wide
close -> box_platform.in2               rg6    12 m of 78 m   close
slides -> box_platform.in3              rg6    3 m of 78 m    slides
box_desk.out1 -> mixer.in1              rg6    1 m of 78 m    wide
box_desk.out2 -> mixer.in2              rg6    1 m of 78 m    close
box_desk.out3 -> mixer.in3              rg6    1 m of 78 m    slides
mixer.out1 -> box_desk.in1              rg6    1 m of 78 m    program
mixer.out2 -> box_desk.in2              rg6    1 m of 78 m    clean
box_platform.out1 -> lecturer           rg6    8 m of 78 m    program
box_platform.out2 -> wall               rg6    15 m of 78 m   clean
`;

describe('tables', () => {
  test('the links of the starter plan, as they are in the README', () => {
    expect(feedplot(['show', 'examples/starter/starter.feedplot', 'links'])).toEqual({
      code: 0,
      stdout: links,
      stderr: '',
    });
  });

  test('several tables, in the order in which they are asked for', () => {
    const { stdout } = feedplot(['show', 'examples/starter', 'nodes', 'links']);
    expect(stdout).toMatch(/^Node [\s\S]+\n\nLink /);
    expect(stdout.endsWith(links)).toBe(true);
  });

  test('without any: links, feeds, sources, nodes', () => {
    const { stdout } = feedplot(['show', 'examples/starter']);
    expect(stdout.split('\n\n').map((table) => /^\w+/.exec(table)?.[0])).toEqual([
      'Link',
      'Feed',
      'Source',
      'Node',
    ]);
  });

  test.each([
    'links',
    'feeds',
    'sources',
    'nodes',
    'power',
    'uplinks',
    'sound',
    'recordings',
    'addresses',
    'cables',
    'cost',
    'cases',
  ])('%s: every example, and an empty plan, in 100 columns', (table) => {
    for (const plan of ['examples/starter', 'examples/finals', 'examples/arena']) {
      const { code, stdout } = feedplot(['show', plan, table]);
      expect(code).toBe(0);
      expect(Math.max(...stdout.split('\n').map((line) => line.length))).toBeLessThanOrEqual(100);
    }
    const folder = folderWith({ 'show.feedplot': 'plan "Show"\n' });
    const { stdout } = feedplot(['show', 'show.feedplot', table], { folder });
    expect(stdout).toMatch(/^(No|Nothing|Everything) [^\n]+\.\n$/);
  });

  test('lengths are in the unit of the plan', () => {
    const { stdout } = feedplot(['show', 'examples/finals', 'links']);
    expect(stdout).toMatch(/ ft of \d/);
    expect(stdout).not.toMatch(/\d m\b/);
  });

  test('a table that there is not', () => {
    expect(feedplot(['show', 'examples/starter', 'lnks'])).toMatchObject({ code: 2, stdout: '' });
    expect(feedplot(['show', 'lnks']).stderr).toContain('Did you mean links?');
  });

  test('errors of the plan are told beside the tables, which are shown all the same', () => {
    const { code, stdout, stderr } = feedplot(['show', 'examples/mistakes/loads.feedplot', 'links']);
    expect(code).toBe(0);
    expect(stdout).toContain('10.74 Gb/s, 107.4 %');
    expect(stderr).toContain('loads.feedplot has 1 error: `feedplot check` tells it.');
  });

  test('text of a plan does not steer the terminal', () => {
    const folder = folderWith({
      'show.feedplot': 'plan "Show"\nplace desk\nkit box {\n}\nnode a "\u001b[2J\u0007" : box at desk\n',
    });
    const { stdout } = feedplot(['show', 'show.feedplot', 'nodes'], { folder });
    expect(stdout).toContain('\\u{1b}[2J\\u{7}');
    expect(stdout).not.toMatch(/\p{Cc}(?<!\n)/u);
  });
});

describe('how a figure was got', () => {
  const why = (name: string, plan = 'examples/starter') => feedplot(['show', plan, '--why', name]);

  test('a link: its flows, its share, its length, its reach, each with a source', () => {
    const { code, stdout } = why('trunk');
    expect(code).toBe(0);
    expect(stdout).toContain('load of trunk, box_platform.net to box_desk.net: 8.051 Gb/s');
    expect(stdout).toContain(
      '  wide + close + slides\n  = 2.684 Gb/s + 2.684 Gb/s + 2.684 Gb/s = 8.051 Gb/s',
    );
    expect(stdout).toContain('  = 8.051 Gb/s / 10 Gb/s = 80.5 %');
    expect(stdout).toContain('  = 52 m + 2 x 3 m = 58 m');
    expect(stdout).toMatch(
      /reach of 10GBASE-T on cat6a: 100 m\n {2}rule: as tabulated\n {2}source: IEEE 802\.3 /,
    );
    // ST 2110-20 arithmetic: 1080 rows in 4 packets each.
    expect(stdout).toContain('packets in a frame: 4320 packets');
  });

  test('what went into several figures is told once', () => {
    const { stdout } = why('trunk');
    expect(stdout.match(/^ *packets in a frame: /gm)).toHaveLength(1);
  });

  test('a source: on the network, its visible pixels, on its cable', () => {
    const { stdout } = why('wide');
    expect(stdout).toContain('on one network link: 2.684 Gb/s');
    expect(stdout).toContain('visible pixels alone: 2.486 Gb/s');
    expect(stdout).toContain('on SDI: 2.967 Gb/s');
  });

  test('a destination and a feed: the delay, passage by passage', () => {
    // Two frames to the mixer, one in it, two back to the screen: five frames of 16.7 ms, 83.4 ms.
    expect(why('lecturer').stdout).toMatch(
      /delay of program -> lecturer: 83\.4 ms\n {2}rule: .*at most 100\.1 ms/,
    );
    expect(why('program -> lecturer').stdout).toContain('delay of program -> lecturer: 83.4 ms');
  });

  test('what was measured says so, and what was computed stands below', () => {
    const { stdout } = why('judges', 'examples/finals');
    expect(stdout).toMatch(/delay of program -> judges: 91\.8 ms\n {2}rule: as measured on site/);
    expect(stdout).toMatch(/\n {2}delay of program -> judges: \d/);
  });

  test('cables that count as one, with the loss of each', () => {
    const { stdout } = why('tie_1', 'examples/finals');
    expect(stdout).toContain('all cables between the two active ports: 233 ft');
    expect(stdout).toContain('loss of 60 m of coax at 1.485 GHz: 15.38 dB');
  });

  test('a node: what its network links carry', () => {
    expect(why('box_desk').stdout).toContain('load of trunk, box_platform.net to box_desk.net: 8.051 Gb/s');
  });

  test('a value from memory is marked where it decides', () => {
    expect(why('trunk_b', 'examples/arena').stdout).toContain('from memory: verify');
  });

  test('a name that there is not', () => {
    expect(why('trunc')).toEqual({
      code: 2,
      stdout: '',
      stderr: expect.stringContaining('Nothing in this plan is called trunc. Did you mean trunk?'),
    });
  });
});

describe('two designs side by side', () => {
  const starter = readFileSync(join(root, 'examples/starter/starter.feedplot'), 'utf8');
  const kit = readFileSync(join(root, 'examples/starter/kit.feedplot'), 'utf8');
  const beside = (...more: string[]) => {
    const folder = folderWith({
      'kit.feedplot': kit,
      'copper.feedplot': starter,
      'fibre.feedplot': starter.replace(/over cat6a/, 'over os2'),
    });
    return feedplot(['show', 'copper.feedplot', '--beside', 'fibre.feedplot', ...more], { folder });
  };

  // By hand from the kit's prices: the copper trunk is the one piece of 75 m for 61 dollars; no piece of fibre is at hand.
  test('what differs is seen in one line', () => {
    const { code, stdout } = beside();
    expect(code).toBe(0);
    const [titles, ...lines] = stdout.split('\n');
    expect(titles!.trim().split(/\s{2,}/)).toEqual(['copper', 'fibre']);
    const row = (name: string) =>
      lines
        .find((line) => line.startsWith(name))
        ?.trim()
        .split(/\s{2,}/);
    expect(row('Pictures that arrive')).toEqual(['Pictures that arrive', '5 of 5', '5 of 5']);
    expect(row('Cost')).toEqual(['Cost', '5645 USD', '5584 USD without 1 piece to get']);
    expect(row('Fullest link')?.[1]).toBe('trunk, 80.5 %');
    expect(row('Worst single loss')?.[1]).toBe('link trunk: 5 dark');
    expect(stdout).toMatch(/cat6a, 75 m +1 +61 *\n/);
  });

  test('tables that are asked for follow, one plan after the other', () => {
    const { stdout } = beside('links');
    expect(stdout).toMatch(/\ncopper\nLink[\s\S]* cat6a [\s\S]*\nfibre\nLink[\s\S]* os2 /);
  });

  test('it does not go together with what machines read', () => {
    const { code, stderr } = beside('--json');
    expect(code).toBe(2);
    expect(stderr).toContain('side by side');
  });
});

describe('losses', () => {
  // By hand: the standby by the annex keeps everything that the trunk carries; the mixer is what most depends on.
  test('the worst first, with what a standby brings back', () => {
    const { stdout } = feedplot(['show', 'examples/finals', 'failures']);
    const [titles, worst] = stdout.split('\n');
    expect(titles).toMatch(/^Lost +In +Dark +What goes dark +What stays, or comes back$/);
    expect(worst).toMatch(/^node mixer +always +12 /);
    expect(stdout.replace(/\s+/g, ' ')).toMatch(/link trunk always 0 .* once trunk_b is plugged/);
  });
});
