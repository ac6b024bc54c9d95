/** The licences of all packages that are bundled or copied into what ships, as one text; the build makes it. */
import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Metafile } from 'esbuild';

/** The packages that esbuild put into bundles: their folders, and the files that were taken. */
export function packagesIn(metafiles: readonly Metafile[]): Map<string, Set<string>> {
  const packages = new Map<string, Set<string>>();
  for (const { inputs } of metafiles)
    for (const file of Object.keys(inputs)) {
      // The last one counts: a package may have packages of its own.
      const [folder] = /^.*node_modules\/(?:@[^/]+\/)?[^/]+/.exec(file) ?? [];
      if (folder === undefined) continue;
      const files = packages.get(folder) ?? new Set();
      packages.set(folder, files.add(file));
    }
  return packages;
}

/** @throws Error for a package that says of no licence: it must not ship. */
export function noticesOf(packages: ReadonlyMap<string, ReadonlySet<string>>): string {
  const notices = [...packages]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([folder, files]) => noticeOf(folder, files));
  return `Feedplot contains these packages, each under its own licence.\n\n${notices.join('\n')}`;
}

interface Manifest {
  readonly name: string;
  readonly version: string;
  readonly license?: string;
  readonly author?: string | { readonly name?: string };
  readonly homepage?: string;
}

function noticeOf(folder: string, files: ReadonlySet<string>): string {
  const manifest = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8')) as Manifest;
  const { name, version, license, author, homepage } = manifest;
  const named = readdirSync(folder).filter((file) => /^(licen[cs]e|copying|notice|third-?party)/i.test(file));
  const texts = named.sort().map((file) => readFileSync(join(folder, file), 'utf8').trim());
  if (!license && texts.length === 0) throw new Error(`${name} says of no licence.`);
  const by = typeof author === 'string' ? author : author?.name;
  const head = [`${name} ${version}`, `Licence: ${license ?? 'see below'}`, by && `By: ${by}`, homepage];
  // Some packages only name it.
  if (license === 'MIT' && texts.join('').length < 300) texts.push(mitLicence(by));
  const parts = [...texts, ...ownHeads(files)];
  return `${'='.repeat(80)}\n${head.filter(Boolean).join('\n')}\n\n${parts.join('\n\n')}\n`;
}

/** What files say of their own authors at their heads, which is not always what the package says. */
function ownHeads(files: ReadonlySet<string>): string[] {
  const heads = new Set<string>();
  for (const file of files) {
    const [head = ''] = /^(?:\s*\/\/[^\n]*\n|\s*\/\*[\s\S]*?\*\/)+/.exec(readFileSync(file, 'utf8')) ?? [];
    const words = head.replace(/^[ \t]*(\/\/|\/\*+!?|\*+\/|\*)?[-\s*]*|[-*\s/]+$/gm, '').trim();
    if (/copyright|\(c\) \d{4}/i.test(words)) heads.add(words);
  }
  return [...heads].sort();
}

/** The MIT licence as SPDX lists it. */
function mitLicence(by: string | undefined): string {
  return `Copyright (c) ${by ?? 'its authors'}

Permission is hereby granted, free of charge, to any person obtaining a copy of this software and associated
documentation files (the "Software"), to deal in the Software without restriction, including without limitation the
rights to use, copy, modify, merge, publish, distribute, sublicense, and/or sell copies of the Software, and to permit
persons to whom the Software is furnished to do so, subject to the following conditions:

The above copyright notice and this permission notice shall be included in all copies or substantial portions of the
Software.

THE SOFTWARE IS PROVIDED "AS IS", WITHOUT WARRANTY OF ANY KIND, EXPRESS OR IMPLIED, INCLUDING BUT NOT LIMITED TO THE
WARRANTIES OF MERCHANTABILITY, FITNESS FOR A PARTICULAR PURPOSE AND NONINFRINGEMENT. IN NO EVENT SHALL THE AUTHORS OR
COPYRIGHT HOLDERS BE LIABLE FOR ANY CLAIM, DAMAGES OR OTHER LIABILITY, WHETHER IN AN ACTION OF CONTRACT, TORT OR
OTHERWISE, ARISING FROM, OUT OF OR IN CONNECTION WITH THE SOFTWARE OR THE USE OR OTHER DEALINGS IN THE SOFTWARE.`;
}
