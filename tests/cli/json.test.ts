import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import { feedplot, folderWith, root } from './command-line.ts';

const ajv = new Ajv2020({ allErrors: true, strict: true });

/** What does not match a shipped schema. */
function faults(schema: string, value: unknown): string[] {
  const validate = ajv.compile(JSON.parse(readFileSync(join(root, 'dist', schema), 'utf8')));
  validate(value);
  return (validate.errors ?? []).map(({ instancePath, message }) => `${instancePath} ${message}`);
}

interface Joined {
  readonly loss_db: number;
  readonly joined_loss_db: number;
}

interface Failure {
  readonly name: string;
  readonly segment: string | null;
  readonly dark: readonly string[];
}

function analysisOf(plan: string, folder = root) {
  const { code, stdout } = feedplot(['show', plan, '--json'], { folder });
  expect(code).toBe(0);
  return JSON.parse(stdout);
}

describe('the whole analysis', () => {
  const mistakes = readdirSync(join(root, 'examples/mistakes')).filter((file) => file.endsWith('.feedplot'));

  test.each([
    'examples/starter',
    'examples/finals',
    'examples/arena',
    ...mistakes.map((file) => `examples/mistakes/${file}`),
  ])('%s matches the shipped schema', (plan) => {
    expect(faults('feedplot-analysis.schema.json', analysisOf(plan))).toEqual([]);
  });

  test('an empty file has an analysis too', () => {
    const folder = folderWith({ 'show.feedplot': '' });
    expect(faults('feedplot-analysis.schema.json', analysisOf('show.feedplot', folder))).toEqual([]);
  });

  test('the same plan gives the same bytes', () => {
    const args = ['show', 'examples/finals', '--json'];
    expect(feedplot(args).stdout).toBe(feedplot(args).stdout);
  });

  // Worked by hand in the plan's own comment and in examples/starter: three pictures of 2.684 Gb/s one way are
  // 8.05 Gb/s, two the other way 5.37 Gb/s; 52 m of run and 3 m of slack at each end are 58 m.
  test('the trunk of the starter plan', () => {
    const { schema, plan, links } = analysisOf('examples/starter');
    expect(schema).toBe(1);
    expect(plan).toEqual({
      title: 'Evening lecture',
      revision: 'A',
      file: join('examples', 'starter', 'starter.feedplot'),
    });
    const trunk = links.find((link: { name: string }) => link.name === 'trunk');
    expect(trunk).toMatchObject({
      from: 'box_platform.net',
      to: 'box_desk.net',
      both_ways: true,
      interface: 'ethernet_10g_t',
      length_m: 58,
      length_from: 'runs',
      reach_m: 100,
      capacity_bits_per_second: 10_000_000_000,
    });
    const [load] = trunk.loads;
    expect(load).toMatchObject({
      segment: null,
      forward_flows: ['wide', 'close', 'slides'],
      backward_flows: ['program', 'clean'],
    });
    expect(load.forward_bits_per_second / 1e9).toBeCloseTo(8.05, 2);
    expect(load.backward_bits_per_second / 1e9).toBeCloseTo(5.37, 2);
    expect(Number.isInteger(load.forward_bits_per_second)).toBe(true);
    expect(trunk.worst).toMatchObject({ segment: null, direction: 'forward' });
    expect(trunk.worst.share).toBeCloseTo(0.805, 3);
  });

  // RG-6 class loses 20 dB in 78 m of 3G (trade article of 2020, published): 10 + 50 + 5 m lose 2.564 + 12.821 + 1.282 dB.
  test('cables that are joined: each with its own loss, all with that of the whole', () => {
    const folder = folderWith({
      'show.feedplot': `plan "Tie"
kit patch { joins front1 with rear1 as sdi_12g }
kit screen { inputs in1 as sdi_3g }
node near : patch
node far : patch
node wall : screen
source cam sends 1080p50 as sdi_3g into near.front1 over rg6 10 m
link tie near.rear1 -> far.rear1 over rg6 50 m
link far.front1 -> wall.in1 over rg6 5 m
feed cam -> wall.in1
`,
    });
    const { links } = analysisOf('show.feedplot', folder);
    const [own, whole] = [
      links.map(({ loss_db }: Joined) => Number(loss_db.toFixed(3))),
      links.map(({ joined_loss_db }: Joined) => Number(joined_loss_db.toFixed(3))),
    ];
    expect(own).toEqual([2.564, 12.821, 1.282]);
    expect(whole).toEqual([16.667, 16.667, 16.667]);
    expect(links[1]).toMatchObject({ joined_length_m: 65, loss_limit_db: 20 });
    expect(links[1].joined_with).toEqual(['cam>near.front1', 'far.front1>wall.in1']);
  });

  test('a feed tells its ports, its cables and its delay', () => {
    const { feeds } = analysisOf('examples/starter');
    expect(feeds.find((feed: { destination: string }) => feed.destination === 'lecturer')).toMatchObject({
      name: null,
      source: 'program',
      segment: null,
      routes: null,
      route: [
        'mixer.out1',
        'box_desk.in1',
        'box_desk.net',
        'box_platform.net',
        'box_platform.out1',
        'lecturer',
      ],
      links: ['mixer.out1>box_desk.in1', 'trunk', 'box_platform.out1>lecturer'],
      delay_from: 'computed',
      format: '1080p59.94',
    });
  });

  test('each segment has its load on every link, also where it is the same', () => {
    const { links } = analysisOf('examples/finals');
    const segments = [null, 'interval', 'results'];
    for (const link of links) {
      expect(link.loads.map((load: { segment: string | null }) => load.segment)).toEqual(segments);
    }
  });

  // The worst first: without the mixer everything that comes from it or goes to it is dark. The spare trunk lies another
  // way and takes over for trunk and for its run.
  test('what single losses do', () => {
    const { failures } = analysisOf('examples/finals');
    expect(failures[0]).toMatchObject({
      kind: 'node',
      name: 'mixer',
      segment: null,
      kept: [],
      overloaded: [],
    });
    const lossOf = (name: string, segment: string | null) =>
      failures.find((one: Failure) => one.name === name && one.segment === segment);
    const lost = lossOf('trunk', null);
    expect(lost).toMatchObject({ kind: 'link', dark: [], overloaded: [], standbys: ['trunk_b'] });
    expect(lost.kept).toContain('program -> judges');
    expect(lost.after_replugging).toEqual(lost.kept);
    expect(lossOf('desk <-> platform', null)).toMatchObject({ kind: 'run', dark: [] });
    // In `results` the judges see the clean feed.
    expect(lossOf('box_p.out1>judges', 'results')).toMatchObject({ dark: ['clean -> judges'] });
    expect(failures.map(({ dark }: Failure) => dark.length)).toEqual(
      failures.map(({ dark }: Failure) => dark.length).sort((a: number, b: number) => b - a),
    );
  });

  test('a finding in it reads as `check` prints it', () => {
    const plan = 'examples/mistakes/pictures.feedplot';
    const lines = feedplot(['check', plan]).stdout.split('\n');
    const { findings } = analysisOf(plan);
    expect(findings.length).toBeGreaterThan(3);
    for (const { file, line, column, severity, check, message } of findings) {
      expect(lines).toContain(`${file}:${line}:${column}: ${severity} ${check}: ${message}`);
    }
  });
});

describe('the shipped schemas', () => {
  const files = [
    'feedplot-analysis.schema.json',
    'feedplot-check.schema.json',
    'feedplot-explain.schema.json',
  ];

  test.each(files)('%s says what every key means', (file) => {
    const silent: string[] = [];
    const look = (schema: Record<string, unknown>, path: string) => {
      if (path !== '' && !schema.description) silent.push(path);
      for (const [key, value] of Object.entries(schema.properties ?? {})) {
        look(value as Record<string, unknown>, `${path}/${key}`);
      }
      for (const one of (schema.oneOf ?? []) as Record<string, unknown>[]) look(one, path);
      if (schema.items) look(schema.items as Record<string, unknown>, `${path}/*`);
    };
    look(JSON.parse(readFileSync(join(root, 'dist', file), 'utf8')), '');
    expect(silent).toEqual([]);
  });

  test('they refuse what does not match', () => {
    const analysis = analysisOf('examples/starter');
    delete analysis.links[0].reach_m;
    analysis.nodes[0].power_w = 'plenty';
    expect(faults('feedplot-analysis.schema.json', analysis)).toEqual([
      "/links/0 must have required property 'reach_m'",
      '/nodes/0/power_w must be number',
      '/nodes/0/power_w must be null',
      '/nodes/0/power_w must match a schema in anyOf',
    ]);
  });
});

describe('explanations for machines', () => {
  test.each([
    '1080p59.94',
    '1080i50 audio 2',
    '2160p23.98 4:4:4 12 bit',
    '4096x2160p48 4:2:0 10 bit',
    'audio 8',
    'link-overload',
    'sdi_12g',
    'hdmi_2_1',
    'ethernet_10g_sr',
    'rg6',
    'om4',
    'cat6_screened',
  ])('%s matches the shipped schema', (thing) => {
    const { stdout } = feedplot(['explain', ...thing.split(' '), '--json']);
    expect(faults('feedplot-explain.schema.json', JSON.parse(stdout))).toEqual([]);
  });
});

describe('findings for machines', () => {
  test('json matches its schema and counts', () => {
    const { code, stdout } = feedplot(['check', 'examples/mistakes/pictures.feedplot', '--output', 'json']);
    const report = JSON.parse(stdout);
    expect(code).toBe(1);
    expect(faults('feedplot-check.schema.json', report)).toEqual([]);
    const errors = report.findings.filter((finding: { severity: string }) => finding.severity === 'error');
    expect(report.errors).toBe(errors.length);
  });

  test('json of a clean plan', () => {
    const report = JSON.parse(feedplot(['check', 'examples/starter', '--output', 'json']).stdout);
    expect(report).toEqual({
      schema: 1,
      plans: [join('examples', 'starter', 'starter.feedplot')],
      errors: 0,
      warnings: 0,
      findings: [],
    });
  });

  test('sarif names files from the root of the repository, and every check as a rule', () => {
    const folder = folderWith({
      '.git/config': '',
      'shows/may/show.feedplot': 'plan "Show" {\n  rate 5 W\n}\n',
    });
    const args = ['check', 'show.feedplot', '--output', 'sarif'];
    const { code, stdout } = feedplot(args, { folder: join(folder, 'shows/may') });
    expect(code).toBe(1);
    const [run] = JSON.parse(stdout).runs;
    const [result] = run.results;
    expect(result.locations[0].physicalLocation.artifactLocation.uri).toBe('shows/may/show.feedplot');
    expect(run.tool.driver.rules[result.ruleIndex].id).toBe('wrong-dimension');
    const ids = run.tool.driver.rules.map((rule: { id: string }) => rule.id);
    expect(new Set(ids).size).toBe(ids.length);
  });

  test('github annotations', () => {
    const folder = folderWith({ 'show.feedplot': 'plan "Show" {\n  rate 5 W\n}\n' });
    const { stdout } = feedplot(['check', 'show.feedplot', '--output', 'github'], { folder });
    expect(stdout).toMatch(
      /^::error file=show\.feedplot,line=2,endLine=2,col=8,endColumn=11,title=wrong-dimension::.+\n$/,
    );
  });

  test('markdown', () => {
    const folder = folderWith({ 'show.feedplot': 'plan "Show" {\n  rate 5 W\n}\n' });
    const { stdout } = feedplot(['check', 'show.feedplot', '--output', 'markdown'], { folder });
    expect(stdout).toMatch(/^### Feedplot: 1 error, 0 warnings/);
    expect(stdout).toContain('| **error** | `wrong-dimension` | `show.feedplot:2` |');
  });
});
