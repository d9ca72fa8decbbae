// The floors of the house, lowest first: a floor imports from floors below it, never upwards or sideways.
// Parsed with SWC because dependency-cruiser reads TypeScript through the compiler's API, which TypeScript 7 does not have.
const floors = [
  ['quantity'],
  ['engineering'],
  ['syntax'],
  ['vocabulary'],
  ['job'],
  ['plans'],
  ['checks', 'sheets', 'history'],
]
const faces = ['editor', 'cli']
const within = (names) => `^server/src/(${names.join('|')})/`

const allFloors = [...floors, faces]
const upwardsOrSideways = allFloors.flatMap((names, level) =>
  names.map((name) => ({
    name: `floor-${name}`,
    comment: `${name}/ imports from itself and from the floors below it only.`,
    severity: 'error',
    from: { path: within([name]) },
    // The command line starts the language server (serve), so cli/ stands on editor/.
    to: {
      path: '^(server/src|server/tools|client|tests)/',
      pathNot: within([name, ...allFloors.slice(0, level).flat(), ...(name === 'cli' ? ['editor'] : [])]),
    },
  })),
)

/** What a floor may take from npm. Below the faces nothing reads files, clocks or the environment: no Node modules. */
const libraries = {
  quantity: ['fastest-levenshtein'],
  engineering: ['ml-matrix'],
  syntax: ['chevrotain'],
  vocabulary: ['zod'],
  job: ['zod', 'fastest-levenshtein'],
  checks: ['zod'],
  plans: ['zod'],
  sheets: [],
  history: [],
}
const foreign = Object.entries(libraries).map(([name, allowed]) => ({
  name: `libraries-${name}`,
  comment: `${name}/ uses ${allowed.join(', ') || 'nothing'} from npm, and no Node module.`,
  severity: 'error',
  from: { path: within([name]) },
  to: {
    dependencyTypesNot: ['local'],
    ...(allowed.length > 0 && { pathNot: `(^|/)node_modules/(${allowed.join('|')})/` }),
  },
}))

module.exports = {
  forbidden: [
    ...upwardsOrSideways,
    ...foreign,
    {
      name: 'words-do-not-compute',
      comment:
        'syntax/ and vocabulary/ say what can be written; engineering/ is for those who compute from it.',
      severity: 'error',
      from: { path: within(['syntax', 'vocabulary']) },
      to: { path: within(['engineering']) },
    },
    {
      name: 'client-talks-to-the-server',
      comment:
        'The client and the server meet over the protocol; only the shape of our own messages is shared.',
      severity: 'error',
      from: { path: '^client/' },
      to: { path: '^server/', pathNot: '^server/src/editor/client-requests\\.ts$' },
    },
    {
      name: 'source-without-tools-and-tests',
      severity: 'error',
      from: { path: '^(server/src|client)/' },
      to: { path: '^(server/tools|tests)/' },
    },
    { name: 'no-circles', severity: 'error', from: {}, to: { circular: true } },
    { name: 'resolvable', severity: 'error', from: {}, to: { couldNotResolve: true, pathNot: '^vscode$' } },
    {
      name: 'declared-in-package-json',
      severity: 'error',
      from: {},
      to: { dependencyTypes: ['npm-no-pkg', 'npm-unknown'], pathNot: '^vscode$' },
    },
  ],
  options: {
    parser: 'swc',
    doNotFollow: { path: 'node_modules' },
    enhancedResolveOptions: {
      exportsFields: ['exports'],
      conditionNames: ['types', 'import', 'node', 'default'],
    },
  },
}
