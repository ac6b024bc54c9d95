import { commands, Uri, window, workspace } from 'vscode';

/** The files of the starter plan: as they ship, and as they are written. */
const files = [
  ['starter.feedplot', 'show.feedplot'],
  ['kit.feedplot', 'kit.feedplot'],
] as const;

/** Writes a small plan that works, with a file of kit, and opens it. Files that are there are never written over. */
export async function writeNewPlan(extension: Uri): Promise<void> {
  const folder = await chooseFolder();
  if (!folder) return;
  const targets = files.map(
    ([from, to]) => [Uri.joinPath(extension, 'dist/starter', from), Uri.joinPath(folder, to)] as const,
  );
  for (const [, target] of targets) {
    if (!(await exists(target))) continue;
    const other = await window.showWarningMessage(
      `${workspace.asRelativePath(target)} is there already; nothing was written.`,
      'Choose another folder',
    );
    if (other) await commands.executeCommand('feedplot.newPlan');
    return;
  }
  for (const [from, target] of targets)
    await workspace.fs.writeFile(target, await workspace.fs.readFile(from));
  await window.showTextDocument(targets[0]![1]);
}

/** The folder of the workspace when it has no plan yet; else the person is asked. */
async function chooseFolder(): Promise<Uri | undefined> {
  const [only, ...others] = workspace.workspaceFolders ?? [];
  if (only && others.length === 0 && !(await exists(Uri.joinPath(only.uri, files[0][1])))) return only.uri;
  const chosen = await window.showOpenDialog({
    title: 'Where shall the new plan be written?',
    openLabel: 'Write the plan here',
    canSelectFiles: false,
    canSelectFolders: true,
    ...(only ? { defaultUri: only.uri } : {}),
  });
  return chosen?.[0];
}

async function exists(uri: Uri): Promise<boolean> {
  try {
    await workspace.fs.stat(uri);
    return true;
  } catch {
    return false;
  }
}
