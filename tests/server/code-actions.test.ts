/** Quick fixes and changes of form over the protocol; that every fix mends is tested with the checks. */
import { expect, test } from 'vitest';
import type { CodeAction, Diagnostic, TextDocumentEdit, WorkspaceEdit } from 'vscode-languageserver-protocol';
import { applyEdits, Editor, type EditorOptions } from './client.ts';
import { files, kit, show } from './small-show.ts';

const FILE = 'show.feedplot';

async function openShow(text: string, options: Partial<EditorOptions> = {}): Promise<Editor> {
  const editor = await Editor.start({ files, ...options });
  await editor.open(FILE, text);
  return editor;
}

function actionsAt(editor: Editor, where: string, only?: string[]): Promise<CodeAction[]> {
  const position = editor.at(FILE, where);
  const context = { diagnostics: [], ...(only ? { only } : {}) };
  return editor.request<CodeAction[]>('textDocument/codeAction', FILE, {
    range: { start: position, end: position },
    context,
  });
}

async function fixesAt(editor: Editor, where: string): Promise<CodeAction[]> {
  return actionsAt(editor, where, ['quickfix']);
}

/** Applies the fix with this title. @returns what is still found. */
async function mend(editor: Editor, where: string, title: RegExp): Promise<string[]> {
  const fixes = await fixesAt(editor, where);
  const fix = fixes.find((one) => title.test(one.title));
  if (!fix?.edit) throw new Error(`No fix ${title} among: ${fixes.map((one) => one.title).join('; ')}`);
  await editor.apply(fix.edit, files);
  return codesOf(await editor.findings(FILE));
}

function codesOf(findings: readonly Diagnostic[]): string[] {
  return findings.map(({ code }) => String(code));
}

test('a finding is told with its check, its explanation and its fixes; the fix mends it', async () => {
  await using editor = await openShow(show.replace('box_s.in1 over rg6 12 m', 'box_s.in1 over rg6 90 m'));
  const findings = await editor.findings(FILE);
  expect(codesOf(findings)).toContain('link-reach');
  const [fix] = await fixesAt(editor, 'in1 over rg6 9|0 m');
  expect(fix).toMatchObject({
    kind: 'quickfix',
    isPreferred: true,
    diagnostics: [{ code: 'link-reach', source: 'feedplot' }],
  });
  expect(await mend(editor, 'in1 over rg6 9|0 m', /^Use a cable that reaches: \w+/)).toEqual([]);
});

test('a port that is taken: a free one', async () => {
  await using editor = await openShow(
    show.replace(
      'close at stage sends 1080p59.94 into box_s.in2',
      'close at stage sends 1080p59.94 into box_s.in1',
    ),
  );
  expect(codesOf(await editor.findings(FILE))).toContain('port-taken');
  expect(
    await mend(editor, 'close at stage sends 1080p59.94 into box_s.in|1', /^Use the free port box_s\.in/),
  ).toEqual([]);
});

test('a name that nothing declares: the place, the destination; a slip of the pen: the name that was meant', async () => {
  await using editor = await openShow(show.replace('mixer_4 at desk', 'mixer_4 at balcony'));
  expect(codesOf(await editor.findings(FILE))).toContain('unknown-name');
  const after = await mend(editor, 'mixer_4 at bal|cony', /^Declare the place balcony/);
  expect(after).not.toContain('unknown-name');
  expect(editor.text(FILE)).toMatch(/^place balcony$/m);
  await editor.write(FILE, show.replace('feed wide ->', 'feed wied ->'));
  expect(await mend(editor, 'feed wi|ed ->', /wide/)).toEqual([]);
});

test('too much on a trunk: the picture on another one', async () => {
  const cameras = ['a', 'b'].map(
    (name, i) =>
      `source ${name} at stage sends 1080p59.94 into box_s.in${i + 3} over rg6 9 m\nlink box_d.out${i + 3} -> mixer.in${i + 3} over rg6 1 m\nfeed ${name} -> mixer.in${i + 3}\n`,
  );
  const spare = 'link second box_s.net2 <-> box_d.net2 over cat6a\n';
  await using editor = await openShow(show + cameras.join('') + spare);
  expect(codesOf(await editor.findings(FILE))).toContain('link-overload');
  expect(await mend(editor, 'link tr|unk', /^Put \w+ on second/)).not.toContain('link-overload');
});

test('a finding is accepted in one line, which an editor that asks for the reason gets in two halves', async () => {
  const lone = `${show}source lone at stage sends 1080p59.94\n`;
  await using editor = await openShow(lone);
  expect(codesOf(await editor.findings(FILE))).toEqual(['source-unused']);
  expect(await mend(editor, 'source lo|ne', /^Accept this.*: source-unused$/)).toEqual([]);
  expect(editor.text(FILE)).toMatch(/^accept source-unused on lone ".+"$/m);

  await using asking = await openShow(lone, { initializationOptions: { asksForReason: true } });
  const accept = (await fixesAt(asking, 'source lo|ne')).find(({ title }) => title.startsWith('Accept'));
  expect(accept?.edit).toBeUndefined();
  expect(accept?.command).toMatchObject({
    command: 'feedplot.acceptFinding',
    arguments: [{ uri: asking.uri(FILE), before: '\naccept source-unused on lone "', after: '"' }],
  });
});

test('slips of the pen are mended in place', async () => {
  await using editor = await openShow(show.replace('12 m within 6 frames', '12,5 m within 6 frames'));
  expect(await mend(editor, '12,|5 m', /^Write 12\.5 m/)).toEqual([]);
});

test('a file that no plan imports has fixes for its own statements', async () => {
  await using editor = await openShow(show);
  await editor.open('lone.feedplot', 'run a <-> b 12,5 m\n');
  const position = editor.at('lone.feedplot', '12,|5');
  const range = { start: position, end: position };
  const actions = await editor.request<CodeAction[]>('textDocument/codeAction', 'lone.feedplot', {
    range,
    context: { diagnostics: [] },
  });
  expect(actions.map(({ title }) => title)).toEqual(['Write 12.5 m']);
});

test('only what is asked for is offered', async () => {
  await using editor = await openShow(show);
  expect(await actionsAt(editor, 'link mixer.out1 -|>', ['quickfix'])).toEqual([]);
  const kinds = (await actionsAt(editor, 'link mixer.out1 -|>')).map(({ kind }) => kind);
  expect(kinds).toEqual(['refactor.rewrite']);
});

async function reshape(
  text: string,
  where: string,
  title: RegExp,
): Promise<{ text: string; findings: string[] }> {
  await using editor = await openShow(text);
  const actions = await actionsAt(editor, where, ['refactor']);
  const action = actions.find((one) => title.test(one.title));
  if (!action?.edit) throw new Error(`No ${title} among: ${actions.map((one) => one.title).join('; ')}`);
  await editor.apply(action.edit, files);
  return { text: editor.text(FILE), findings: codesOf(await editor.findings(FILE)) };
}

test('a link without a name is named after its ends', async () => {
  const after = await reshape(show, 'link mixer.out1 -|>', /^Name this link/);
  expect(after).toEqual({
    text: show.replace('link mixer.out1', 'link mixer_box_d mixer.out1'),
    findings: [],
  });
});

test('a standby is put beside a trunk', async () => {
  const after = await reshape(show, 'link tr|unk', /^Add a standby for trunk/);
  const line = '\nlink trunk_b box_s.net2 <-> box_d.net2 over cat6a standby for trunk';
  expect(after.text).toBe(show.replace('box_d.net1 over cat6a', `box_d.net1 over cat6a${line}`));
  // It lies beside the other in the one run that there is, and that is told.
  expect(after.findings).toEqual(['standby-same-run']);
});

test('the length of a cable becomes a run, and the cable is as long as before', async () => {
  const stated = show
    .replace('run stage <-> desk 40 m "along the wall"\n', '')
    .replace('over cat6a', 'over cat6a 46 m');
  const after = await reshape(stated, 'link tr|unk', /^Make a run of this length: stage <-> desk/);
  expect(after.text).toContain('place stage "Stage, left"\n');
  expect(after.text).toMatch(/^run stage <-> desk 40 m$/m);
  expect(after.text).toMatch(/over cat6a$/m);
  expect(after.findings).toEqual([]);
});

test('kit moves into a file of its own, its description too, and the plan imports it', async () => {
  const whole = show.replace('import "kit.feedplot"\n', kit);
  const capabilities = {
    workspace: { workspaceEdit: { documentChanges: true, resourceOperations: ['create' as const] } },
  };
  await using editor = await Editor.start({ files: { [FILE]: whole }, capabilities });
  await editor.open(FILE, whole);
  const actions = await actionsAt(editor, 'kit bo|x', ['refactor']);
  expect(actions.map(({ title }) => title)).toEqual([
    'Move the kit box to kit.feedplot',
    'Move all 2 kits to kit.feedplot',
  ]);
  const { documentChanges = [] } = actions[1]!.edit as WorkspaceEdit;
  const [create, ...edits] = documentChanges;
  expect(create).toMatchObject({ kind: 'create', uri: editor.uri('kit.feedplot') });
  const [intoKit, intoPlan] = edits as TextDocumentEdit[];
  const moved = applyEdits('', intoKit!.edits as never);
  await editor.open('kit.feedplot', moved);
  expect(moved.replace(/\n\n/g, '\n')).toBe(kit.replace(/\n\n/g, '\n'));
  await editor.edit(FILE, intoPlan!.edits as never);
  expect(editor.text(FILE).replace(/\n{2,}/g, '\n\n')).toBe(show);
  expect(codesOf(await editor.findings(FILE))).toEqual([]);
});

test('an editor that cannot create files is not offered to move kit', async () => {
  const whole = show.replace('import "kit.feedplot"\n', kit);
  await using editor = await openShow(whole);
  expect(await actionsAt(editor, 'kit bo|x', ['refactor'])).toEqual([]);
});
