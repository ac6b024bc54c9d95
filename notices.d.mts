import type { Metafile } from 'esbuild';

export function packagesIn(metafiles: readonly Metafile[]): Map<string, Set<string>>;
export function noticesOf(packages: ReadonlyMap<string, ReadonlySet<string>>): string;
