import { execFile } from 'node:child_process';
import path from 'node:path';
import { promisify } from 'node:util';

const root = path.join(import.meta.dirname, '../..');

/**
 * Packages what was built, as `npm run package` does, into a folder.
 * @returns the package's path, or the one that FEEDPLOT_VSIX names, which is then taken as it is
 */
export async function packageExtension(folder: string): Promise<string> {
  if (process.env.FEEDPLOT_VSIX) return path.resolve(process.env.FEEDPLOT_VSIX);
  const file = path.join(folder, 'feedplot.vsix');
  const vsce = path.join(root, 'node_modules/@vscode/vsce/vsce');
  await promisify(execFile)(
    process.execPath,
    [vsce, 'package', '--no-dependencies', '--no-rewrite-relative-links', '--out', file],
    {
      cwd: root,
    },
  );
  return file;
}
