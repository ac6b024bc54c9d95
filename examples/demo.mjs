// Shows what Feedplot does with the starter plan: checks it, prints the loads of its links, writes its outputs.
import { spawnSync } from 'node:child_process';
import { mkdirSync, writeFileSync } from 'node:fs';

const plan = 'examples/starter/starter.feedplot';
const folder = 'out';

function feedplot(...args) {
  const { status, stdout, stderr } = spawnSync(process.execPath, ['dist/feedplot.cjs', ...args], {
    encoding: 'utf8',
  });
  process.stderr.write(stderr);
  if (status !== 0) process.exit(status ?? 2);
  return stdout;
}

function show(...args) {
  console.log(`\n$ feedplot ${args.join(' ')}`);
  console.log(feedplot(...args).trimEnd());
}

function write(name, text) {
  writeFileSync(`${folder}/${name}`, text);
  console.log(`${folder}/${name}`);
}

show('check', plan);
show('show', plan, 'links');
console.log('\nThe outputs of the plan:');
mkdirSync(folder, { recursive: true });
write('analysis.json', feedplot('show', plan, '--json'));
write('tables.txt', feedplot('show', plan, 'links', 'feeds', 'sources', 'nodes', 'power', 'cables', 'cost'));
write('check.md', feedplot('check', plan, '--output', 'markdown'));
console.log(feedplot('book', plan, '--to', `${folder}/papers`).trimEnd());
