/**
 * The README lists what the editor can do. The list is made from what the server says of itself and from the manifest:
 * `FEEDPLOT_WRITE=1` writes it, otherwise it is compared.
 */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import { expect, it } from 'vitest';
import { Editor } from '../server/client.ts';
import { abilities, contributions, type Feature, others } from './features.ts';

const README = 'README.md';
const BEGIN = '<!-- The list below is made by tests/docs/features.test.ts -->';
const END = '<!-- end of the list -->';

interface Manifest {
  readonly contributes: {
    readonly languages: readonly { id: string }[];
    readonly grammars: readonly { scopeName: string }[];
    readonly commands: readonly { command: string }[];
    readonly configuration: {
      readonly properties: Record<string, { description?: string; markdownDescription?: string }>;
    };
    readonly problemMatchers: readonly { name: string; pattern: { regexp: string } }[];
    readonly walkthroughs: readonly { id: string }[];
  };
}

const { contributes } = JSON.parse(readFileSync('package.json', 'utf8')) as Manifest;

/** Abilities that say how the protocol is spoken, not what a person can do. */
const plumbing = new Set(['workspace', 'positionEncoding', 'executeCommandProvider']);

async function abilitiesOfTheServer(): Promise<string[]> {
  await using editor = await Editor.start({ files: {} });
  const { capabilities } = editor.initialized;
  return Object.keys(capabilities).filter(
    (name) => !plumbing.has(name) && capabilities[name as keyof typeof capabilities],
  );
}

const partsOfTheManifest = [
  ...contributes.languages.map(({ id }) => `language ${id}`),
  ...contributes.grammars.map(({ scopeName }) => `grammar ${scopeName}`),
  ...contributes.commands.map(({ command }) => `command ${command}`),
  ...Object.keys(contributes.configuration.properties).map((key) => `setting ${key}`),
  ...contributes.problemMatchers.map(({ name }) => `matcher ${name}`),
  ...contributes.walkthroughs.map(({ id }) => `walkthrough ${id}`),
];

const features: readonly Feature[] = [
  ...Object.values(abilities),
  ...Object.values(contributions),
  ...others,
];

it('every ability of the server is in the list, and no other', async () => {
  expect((await abilitiesOfTheServer()).sort()).toEqual(Object.keys(abilities).sort());
});

it('every part of the manifest is in the list, and no other', () => {
  expect([...new Set(partsOfTheManifest)].sort()).toEqual(Object.keys(contributions).sort());
});

it('every setting says what it does', () => {
  for (const [key, { description, markdownDescription }] of Object.entries(
    contributes.configuration.properties,
  ))
    expect(description ?? markdownDescription, key).toMatch(/^[A-Z].{20,}\.$/);
});

it.each(features.map((feature) => [feature.says, feature.test] as const))(
  '%s: its test is there',
  (_says, [file, title]) => {
    expect(existsSync(file), file).toBe(true);
    expect(readFileSync(file, 'utf8')).toContain(title);
  },
);

it('a line of `feedplot check` is understood by the matcher', () => {
  const [matcher] = contributes.problemMatchers;
  const line = 'plans/show.feedplot:36:6: error link-overload: trunk carries 10.74 Gb/s of 10 Gb/s';
  const [, ...parts] = new RegExp(matcher!.pattern.regexp).exec(line) ?? [];
  expect(parts).toEqual([
    'plans/show.feedplot',
    '36',
    '6',
    'error',
    'link-overload',
    'trunk carries 10.74 Gb/s of 10 Gb/s',
  ]);
});

it('the README has the list as it is', () => {
  const lines = features.map(({ says, test: [file] }) => `- ${says} ([test](${file}))`);
  const list = `${BEGIN}\n${lines.join('\n')}\n${END}`;
  const readme = readFileSync(README, 'utf8');
  const begin = readme.indexOf(BEGIN);
  const end = readme.indexOf(END) + END.length;
  expect(begin, 'the mark of the list in the README').toBeGreaterThan(0);
  if (process.env.FEEDPLOT_WRITE) writeFileSync(README, readme.slice(0, begin) + list + readme.slice(end));
  else expect(readme.slice(begin, end)).toBe(list);
});

it('the README shows the configurations of other editors as they are tested', () => {
  const readme = readFileSync(README, 'utf8');
  for (const file of ['neovim.lua', 'helix.toml', 'emacs.el'])
    expect(readme).toContain(readFileSync(`examples/editors/${file}`, 'utf8').trim());
});
