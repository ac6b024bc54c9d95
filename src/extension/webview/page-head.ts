/** The layout's worker is read as a file and started from a copy. */
export const layoutWorkerMay = (cspSource: string): readonly string[] => [
  `connect-src ${cspSource}`,
  'worker-src blob:',
];

/**
 * How every page of the extension begins: no script and no style but those that bear its mark, nothing from a network.
 *
 * @param nonce A mark that nobody can guess.
 * @param more What this page may do besides, as directives of its content security policy.
 */
export function pageHead(title: string, nonce: string, more: readonly string[]): string {
  const policy = [
    "default-src 'none'",
    `script-src 'nonce-${nonce}'`,
    `style-src 'nonce-${nonce}'`,
    ...more,
  ].join('; ');
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>`;
}
