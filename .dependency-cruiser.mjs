// The layers of the code, as DEVELOPERS.md tells them: each folder of src/ knows only what stands before it.
const layers = [
  'physics',
  'language',
  'plan',
  'analysis',
  'checks',
  'documents',
  'server',
  'cli',
  'extension',
  'package',
];

/** What a folder may import beside itself. */
const allowed = {
  physics: [],
  language: ['physics'],
  plan: ['language', 'physics'],
  analysis: ['plan', 'physics'],
  checks: ['analysis', 'plan', 'physics'],
  documents: ['checks', 'analysis', 'plan', 'physics'],
  server: ['documents', 'checks', 'analysis', 'plan', 'language', 'physics'],
  cli: ['server', 'documents', 'checks', 'analysis', 'plan', 'language', 'physics'],
  // Of ours the extension knows the messages that it exchanges with the server; its views lay out and draw by themselves
  // and put the papers together, so that no keystroke waits for that.
  extension: ['server/protocol', 'documents/drawing', 'documents/book/(book|page)', 'documents/escape'],
  package: [],
};

const layerRules = Object.entries(allowed).map(([folder, others]) => ({
  name: `${folder}-imports`,
  severity: 'error',
  comment: `${folder}/ may import ${others.length ? others.join(', ') : 'nothing of ours'}`,
  from: { path: `^src/${folder}/` },
  to: { path: `^src/(${layers.join('|')})/`, pathNot: `^src/(${[folder, ...others].join('|')})(/|\\.ts$)` },
}));

export default {
  forbidden: [
    ...layerRules,
    {
      name: 'no-cycles',
      severity: 'error',
      comment: 'A cycle of imports cannot be read top-down',
      from: { path: '^src/' },
      to: { circular: true, viaOnly: { dependencyTypesNot: ['type-only'] } },
    },
    {
      name: 'pure-core',
      severity: 'error',
      comment:
        'physics, analysis, checks and documents read no file, clock or setting and use no editor or parser',
      from: { path: '^src/(physics|analysis|checks)/' },
      to: { dependencyTypes: ['core', 'npm', 'npm-dev'] },
    },
    {
      name: 'langium-only-where-text-is-read',
      severity: 'error',
      comment: 'No type of the parser leaves language/, the reader in plan/ and server/',
      from: { path: '^src/', pathNot: '^src/(language|plan|server)/' },
      to: { path: 'node_modules/(langium|chevrotain)' },
    },
    {
      name: 'vscode-only-in-extension',
      severity: 'error',
      from: { path: '^src/', pathNot: '^src/extension/' },
      to: { path: '^vscode$|node_modules/@types/vscode|node_modules/vscode-languageclient' },
    },
    {
      name: 'resolvable',
      severity: 'error',
      from: {},
      to: { couldNotResolve: true, pathNot: '^vscode$' },
    },
  ],
  options: {
    doNotFollow: { path: 'node_modules' },
    parser: 'swc',
    tsConfig: { fileName: 'tsconfig.json' },
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['import', 'require', 'node', 'default', 'types'],
    },
  },
};
