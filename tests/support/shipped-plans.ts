import { readdirSync } from 'node:fs';

/** The files of plans below a folder, as paths from the project's own. */
export function plansBelow(folder: string): string[] {
  return readdirSync(folder, { recursive: true, encoding: 'utf8' })
    .filter((file) => file.endsWith('.feedplot'))
    .sort()
    .map((file) => `${folder}/${file.replaceAll('\\', '/')}`);
}
