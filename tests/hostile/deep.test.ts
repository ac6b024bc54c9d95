/** Chains as long as a file can hold: what is worked out along them must not end with the stack. */
import { describe, expect, it } from 'vitest';
import { smallPlan } from '../support/small-plan.ts';
import { CommandLine, entries } from './commands.ts';

const LENGTH = 1500;

/** A line for each of many things, each of which speaks of the next. */
const chain = (line: (own: string, next: string) => string) =>
  Array.from({ length: LENGTH }, (_, i) => line(`t${i}`, `t${i + 1}`)).join('\n');

const chains: Record<string, string> = {
  'cables like each other': chain((own, next) => `cable ${own} { medium coax like ${next} }`),
  'circuits fed by each other': chain((own, next) => `circuit ${own} 16 A 230 V from ${next}`),
  'sources made of each other': chain(
    (own, next) => `source ${own} from mixer.out1 of ${next} sends 1080p50`,
  ),
  'interfaces that accept each other': chain(
    (own, next) => `interface ${own} { signal sdi rate 3 Gb/s accepts ${next} }`,
  ),
  'links that stand by for each other': chain(
    (own, next) => `link ${own} box_s.net1 <-> box_d.net1 over cat6a standby for ${next}`,
  ),
  'links that share each other': chain(
    (own, next) => `link ${own} box_s.net1 <-> box_d.net1 over cat6a shares ${next}`,
  ),
  'feeds that step in for each other': chain(
    (own, next) => `source ${own} at desk sends 1080p50\nfeed ${own} -> screen instead of ${next}`,
  ),
  'runs from place to place': chain((own, next) => `place ${own}\nrun ${own} <-> ${next} 1 m`),
  'boxes that pass a picture on': [
    'kit relay { inputs in as sdi_3g outputs out as sdi_3g follow in }',
    chain((own, next) => `node ${own} : relay\nlink ${own}.out -> ${next}.in over rg6 1 m`),
    'source first at desk sends 1080p50 as sdi_3g into t0.in over rg6 1 m',
    `destination last from t${LENGTH - 1}.out over rg6 1 m`,
    'feed first -> last',
  ].join('\n'),
  'panels that join': [
    'kit strip { joins front with rear as sdi_3g }',
    chain((own, next) => `node ${own} : strip\nlink ${own}.rear -> ${next}.front over rg6 1 m`),
    'source first at desk sends 1080p50 as sdi_3g into t0.front over rg6 1 m',
  ].join('\n'),
  'blocks in blocks': 'kit x { '.repeat(LENGTH),
  'comments in comments': '/* '.repeat(LENGTH),
  'lists without end': `feed cam_1 -> ${Array.from({ length: 900 }, (_, i) => `d${i}`).join(', ')}`,
};

const wanted = entries.filter(
  ({ args }) =>
    args[0] === 'check' || args[0] === 'format' || (args[0] === 'show' && args.includes('--json')),
);

describe('chains', () => {
  it.each(Object.entries(chains))(
    '%s',
    async (_name, lines) => {
      using line = new CommandLine(`${smallPlan.join('\n')}\n`);
      for (const entry of wanted)
        expect(await line.faultOf(entry, `${smallPlan.join('\n')}\n${lines}\n`)).toBeUndefined();
    },
    120_000,
  );
});
