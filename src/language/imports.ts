/** How the path of an `import` becomes the address of a file, and which files a plan is made of. */

/**
 * The file that a path names, relative to the file that imports it.
 *
 * @returns undefined for an empty path, an absolute one and one with a scheme: plans name their neighbours.
 */
export function resolveImport(from: string, path: string): string | undefined {
  if (path === '' || /^[a-z][a-z0-9+.-]*:/i.test(path) || /^[\\/]/.test(path)) return undefined;
  const segments = path.replaceAll('\\', '/').split('/');
  const base = /^([a-z][a-z0-9+.-]*:\/\/[^/]*)?(.*)\/[^/]*$/i.exec(from);
  if (!base) return undefined;
  const folders = (base[2] ?? '').split('/');
  for (const segment of segments) {
    if (segment === '..') {
      if (folders.length < 2) return undefined;
      folders.pop();
    } else if (segment !== '.' && segment !== '') folders.push(encodeSegment(segment));
  }
  return `${base[1] ?? ''}${folders.join('/')}`;
}

/** Whether a file lies in a folder or below it; both are URIs. */
export function isBelow(file: string, folder: string): boolean {
  const prefix = folder.endsWith('/') ? folder : `${folder}/`;
  return file.startsWith(prefix);
}

/**
 * The files reached from one by imports, itself first, each once, in the order in which they are written.
 *
 * @param importsOf The files that a file imports, in order; files that cannot be had are left out by it.
 */
export function importClosure(start: string, importsOf: (file: string) => readonly string[]): string[] {
  const seen = new Set([start]);
  const order: string[] = [];
  const stack = [start];
  while (stack.length > 0) {
    const file = stack.pop()!;
    order.push(file);
    const imports = importsOf(file).filter((next) => !seen.has(next));
    for (const next of new Set(imports)) seen.add(next);
    stack.push(...[...new Set(imports)].reverse());
  }
  return order;
}

/**
 * Percent-encodes what a URI's path may not hold, the way file URIs of editors are written. Half a character is written
 * as the mark of one that is missing, as in the text of a file.
 */
function encodeSegment(segment: string): string {
  return encodeURIComponent(segment.toWellFormed()).replace(
    /[!'()*]/g,
    (c) => `%${c.charCodeAt(0).toString(16).toUpperCase()}`,
  );
}
