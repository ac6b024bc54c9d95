/** Terms with what they stand for, one a line, those with nothing to say left out. */
export function definitionLines(rows: readonly (readonly [term: string, text: string])[]): string[] {
  const said = rows.filter(([, text]) => text !== '');
  const width = Math.max(0, ...said.map(([term]) => term.length));
  return said.map(([term, text]) => `${term.padEnd(width)}  ${text}`);
}
