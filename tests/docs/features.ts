/** What the editor can do: every ability of the server and every part of the manifest, with the test that tries it. */

/** One line of the list. */
export interface Feature {
  readonly says: string;
  /** The file of the test, and a part of its title. */
  readonly test: readonly [file: string, title: string];
}

const server = (file: string, title: string) => [`tests/server/${file}.test.ts`, title] as const;
const view = (title: string) => ['tests/drawing/view.test.ts', title] as const;
const editor = (file: string, title: string) => [`tests/editor/${file}.ts`, title] as const;

/** By the name that the protocol gives an ability of the server. */
export const abilities: Record<string, Feature> = {
  textDocumentSync: {
    says: 'Findings as you type, in every file of the plan, with the version of the text that they are of',
    test: server('start', 'findings carry the version'),
  },
  hoverProvider: {
    says: 'Hover: loads both ways, length against reach, delay and way, free ports, formats, and how each figure was got',
    test: server('hover', 'a link: both directions'),
  },
  completionProvider: {
    says: 'Completion that knows the plan: free ports first, cables that reach, destinations not yet fed with the delay they would get, whole statements',
    test: server('completion', 'after the dot of a node'),
  },
  definitionProvider: {
    says: 'Go to definition, across files and into the shipped library',
    test: server('names', 'leads from a use to the declaration'),
  },
  referencesProvider: {
    says: 'Find all uses, for a port with its whole row',
    test: server('names', 'are found in every file'),
  },
  documentHighlightProvider: {
    says: 'Uses of the name under the cursor are marked',
    test: server('names', 'are marked in the file'),
  },
  renameProvider: {
    says: 'Rename everything that has a name, ports with their row; what would change the meaning is refused',
    test: server('names', 'changes the declaration and all uses'),
  },
  documentSymbolProvider: {
    says: 'Outline: statements with what tells them apart, ports inside their kit',
    test: server('outline', 'the outline lists statements'),
  },
  workspaceSymbolProvider: {
    says: 'Names of the whole workspace, by name or label',
    test: server('outline', 'names of the whole workspace'),
  },
  codeActionProvider: {
    says: 'Quick fixes declared by the checks, accepting a finding with a reason, and changes of form',
    test: server('code-actions', 'a finding is told with its check'),
  },
  inlayHintProvider: {
    says: 'Loads, lengths and delays behind the text',
    test: server('figures', 'hints: load of the trunk both ways'),
  },
  codeLensProvider: {
    says: 'Above each node and link what it carries, above each kit how often it is used',
    test: server('figures', 'lenses: what a node carries'),
  },
  semanticTokensProvider: {
    says: 'Names coloured by what they stand for',
    test: server('figures', 'names have the colour'),
  },
  callHierarchyProvider: {
    says: 'Signal flow as a hierarchy: from a source to all that it reaches, from a screen back to all that feeds it, by segment',
    test: server('call-hierarchy', 'from a source forward'),
  },
  documentFormattingProvider: {
    says: 'Formatting: one statement a line; comments, groups and order stay',
    test: server('formatting', 'a whole file'),
  },
  documentRangeFormattingProvider: {
    says: 'Formatting of a selection',
    test: server('formatting', 'a selection, and nothing beside it'),
  },
  documentOnTypeFormattingProvider: {
    says: 'Formatting of the line or block that was just ended',
    test: server('formatting', 'the line that was just ended'),
  },
  foldingRangeProvider: {
    says: 'Folding of blocks, comments, imports and sections (`// ---- Boxes`)',
    test: server('outline', 'blocks, comments, imports and sections'),
  },
  selectionRangeProvider: {
    says: 'Selections that grow from the word over the clause and statement to the group',
    test: server('outline', 'a selection grows'),
  },
  linkedEditingRangeProvider: {
    says: 'A name and its uses typed over together where all are in one file',
    test: server('outline', 'a name and its uses are typed over together'),
  },
  documentLinkProvider: {
    says: 'Imports that lead to their file',
    test: server('outline', 'an import that leads to a file is a link'),
  },
};

/** By what the manifest of the extension calls it. */
export const contributions: Record<string, Feature> = {
  'language feedplot': {
    says: 'Files that end in `.feedplot`, with an icon, brackets, comments and new lines of their own',
    test: ['tests/syntaxes/configuration.test.ts', 'a double click takes a name'],
  },
  'language feedplot-before': {
    says: 'The text of an earlier revision, to read only',
    test: server('review', 'what is gone is to be read in the old text'),
  },
  'grammar source.feedplot': {
    says: 'Colours before the server answers',
    test: ['tests/syntaxes/textmate.test.ts', 'of a link'],
  },
  'command feedplot.newPlan': {
    says: '`Feedplot: New plan` writes a small plan that works',
    test: editor('commands.test', 'writes a new plan that works'),
  },
  'command feedplot.showDrawing': {
    says: '`Feedplot: Show the drawing beside the text`: every picture keeps its colour and number along every cable',
    test: editor('commands.test', 'draws the plan beside its text'),
  },
  'command feedplot.showBook': {
    says: '`Feedplot: Show the papers beside the text`: the book as it is printed',
    test: editor('commands.test', 'shows the papers of the plan'),
  },
  'command feedplot.compareWithLastCommit': {
    says: '`Feedplot: Compare with the last commit`: the show before and after, each change opens its text',
    test: server('review', 'the text as it is in the editor counts'),
  },
  'command feedplot.compareWithRevision': {
    says: '`Feedplot: Compare with a revision`',
    test: server('review', 'asked from a file of kit'),
  },
  'command feedplot.compareWithFile': {
    says: '`Feedplot: Compare with a file`',
    test: server('review', 'of the workspace, as it is in the editor'),
  },
  'command feedplot.followPictures': {
    says: '`Feedplot: Follow the pictures from here`',
    test: editor('commands.test', 'follows the pictures from a source'),
  },
  'command feedplot.showWhatFeeds': {
    says: '`Feedplot: Show what feeds this`',
    test: editor('commands.test', 'follows the pictures from a source'),
  },
  'command feedplot.restart': {
    says: '`Feedplot: Restart the language server`',
    test: editor('commands.test', 'starts the server anew'),
  },
  'command feedplot.showLog': {
    says: '`Feedplot: Show the log`',
    test: editor('commands.test', 'shows its log'),
  },
  'setting feedplot.hints.load': {
    says: 'Setting: loads behind network links',
    test: server('figures', 'each kind of hint and the lenses can be switched off'),
  },
  'setting feedplot.hints.length': {
    says: 'Setting: lengths behind cables that state none',
    test: server('figures', 'each kind of hint and the lenses can be switched off'),
  },
  'setting feedplot.hints.delay': {
    says: 'Setting: delay and way behind feeds',
    test: server('figures', 'each kind of hint and the lenses can be switched off'),
  },
  'setting feedplot.lenses': {
    says: 'Setting: lines above the text',
    test: server('figures', 'each kind of hint and the lenses can be switched off'),
  },
  'setting feedplot.trace.server': {
    says: 'Setting: what editor and server say to each other, into the log',
    test: editor('commands.test', 'shows its log'),
  },
  'matcher feedplot': {
    says: 'Findings of `feedplot check` in a task become problems',
    test: ['tests/docs/features.test.ts', 'a line of `feedplot check` is understood'],
  },
  'walkthrough firstSteps': {
    says: 'First steps, in the welcome page',
    test: editor('commands.test', 'has first steps'),
  },
};

/** What is neither an ability that the protocol names nor a part of the manifest. */
export const others: readonly Feature[] = [
  {
    says: 'Imports follow files and folders that are renamed',
    test: server('file-renames', 'a file that moves'),
  },
  {
    says: 'A line at the edge of the window: findings of the plan, and the link with the most on it',
    test: editor('commands.test', 'tells at the edge how the plan stands'),
  },
  {
    says: 'The drawing follows the typing and keeps its place; while the text is broken the last whole one stays, marked',
    test: editor('drawing-acceptance', 'follows the typing, keeps its place'),
  },
  {
    says: 'The statement under the cursor lights up in the drawing, and a click in the drawing leads to the text',
    test: editor('drawing-acceptance', 'lights up what the cursor stands in'),
  },
  {
    says: 'Parts of the show in the drawing: only strands and numbers change, nothing moves',
    test: view('another part of the show without moving anything'),
  },
  {
    says: 'A picture followed from end to end in the drawing, with its delay and way in words',
    test: view('a picture from end to end'),
  },
  {
    says: 'The drawing is searched by any word or figure, and its overview leads to any part of it',
    test: view('a search by any word or figure'),
  },
  {
    says: 'The drawing by keys alone, and all of it as words to read or listen to, in light, dark and high contrast',
    test: view('everything in words, each line leading to its thing'),
  },
  {
    says: 'The drawing as SVG or PNG, on white paper',
    test: view('the drawing as SVG'),
  },
  {
    says: 'What a check means, by the link on its finding: why it matters, how it is judged, what mends it',
    test: editor('commands.test', 'leads from a finding to what its check means'),
  },
  {
    says: 'VS Code in the browser: the server in a worker, files through the editor',
    test: server('browser', 'finds the plans of a folder'),
  },
  {
    says: 'Any editor that speaks the protocol over the standard streams',
    test: server('other-editors', 'Emacs shows findings'),
  },
  {
    says: 'Limits on files, imports, names and findings, each told in words instead of a crash',
    test: server('limits', 'more files than a plan has'),
  },
  {
    says: 'Long work is given up as soon as nobody waits for it',
    test: server('cancel', 'requests of every kind on a large plan'),
  },
  {
    says: 'A fault of the tool is told as one, logged once, and ends nothing',
    test: server('faults', 'a request that fails'),
  },
  {
    says: 'Works in folders that are not trusted and asks nothing of the network',
    test: editor('acceptance', 'asks nothing of the network'),
  },
];
