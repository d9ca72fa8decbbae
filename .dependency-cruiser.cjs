// The floors of the house, lowest first: a floor imports from floors below it, never upwards or sideways.
// Parsed with SWC because dependency-cruiser reads TypeScript through the compiler's API, which TypeScript 7 does not have.
const floors = [
  'common',
  'quantity',
  'engineering',
  'syntax',
  'vocabulary',
  'job',
  'store',
  'checks',
  'areas',
]
const within = (names) => `^server/src/(${names.join('|')})/`

/** What each floor imports from, besides itself. */
const below = {
  ...Object.fromEntries(floors.map((name, level) => [name, floors.slice(0, level)])),
  // Disk and clock: for the faces alone.
  host: floors.slice(0, floors.indexOf('checks')),
  editor: [...floors, 'host'],
  // The command line starts the language server (serve).
  cli: [...floors, 'host', 'editor'],
}
const upwardsOrSideways = Object.entries(below).map(([name, names]) => ({
  name: `floor-${name}`,
  comment: `${name}/ imports from itself and from the floors below it only.`,
  severity: 'error',
  from: { path: within([name]) },
  to: { path: '^(server/src|server/tools|client|tests)/', pathNot: within([name, ...names]) },
}))

/** Areas that look at others, and why: all others keep to themselves and to areas/common/. */
const lookAround = {
  caution: {
    at: ['alignment', 'electrical'],
    why: 'what is dangerous is worked out where it comes from: voltages and short circuits of the batteries, whether the boat was afloat when read',
  },
  across: {
    at: ['alignment', 'electrical'],
    why: 'facts must agree across areas',
  },
  propulsion: {
    at: ['electrical'],
    why: 'what a bank feeds follows from the cables and switches',
  },
  testing: {
    at: ['electrical'],
    why: 'what was measured is held against what follows from the job',
  },
}
const area = (names) => `^server/src/areas/(${names.join('|')})/`
const betweenAreas = [
  {
    name: 'area-alone',
    comment: 'An area imports from itself and from areas/common/ only: what two areas share belongs there.',
    severity: 'error',
    from: { path: '^server/src/areas/([^/]+)/', pathNot: area(Object.keys(lookAround)) },
    to: { path: '^server/src/areas/', pathNot: '^server/src/areas/($1|common)/' },
  },
  ...Object.entries(lookAround).map(([name, { at, why }]) => ({
    name: `area-${name}`,
    comment: `areas/${name}/ may look at ${at.join(' and ')}, because ${why}.`,
    severity: 'error',
    from: { path: area([name]) },
    to: { path: '^server/src/areas/', pathNot: area([name, 'common', ...at]) },
  })),
]

/** A finding and a hover need the same result, so a plan knows nothing of checks. */
const plansAlone = {
  name: 'plans-without-checks',
  comment: 'The plans of an area import plans and areas/common/, and no check.',
  severity: 'error',
  from: { path: '^server/src/areas/[^/]+/plans/' },
  to: { path: '^server/src/(checks|areas)/', pathNot: '^server/src/areas/([^/]+/plans|common)/' },
}

/** The commands of areas, with what they share. Their schemas need the whole of zod. */
const commands = '^server/src/areas/([^/]+/commands/|common/command[^/]*\\.ts$|commands\\.ts$)'
const commandsForTheCli = {
  name: 'commands-for-the-cli',
  comment:
    'Only cli/ and other commands import the commands of areas: with them the whole of zod would get into the language server.',
  severity: 'error',
  from: { path: '^server/src/', pathNot: [within(['cli']), commands] },
  to: { path: commands },
}

/** What a floor may take from npm. Below the faces nothing reads files, clocks or the environment: no Node modules. */
const libraries = {
  common: [],
  quantity: ['fastest-levenshtein'],
  engineering: ['ml-matrix'],
  syntax: ['chevrotain'],
  vocabulary: ['zod'],
  job: ['zod', 'fastest-levenshtein'],
  checks: [],
  areas: [],
  store: [],
}
const librariesOf = (name, from, allowed) => ({
  name: `libraries-${name}`,
  comment: `What ${name} may use from npm: ${allowed.join(', ') || 'nothing'}. No Node module.`,
  severity: 'error',
  from,
  to: {
    dependencyTypesNot: ['local'],
    ...(allowed.length > 0 && { pathNot: `(^|/)node_modules/(${allowed.join('|')})/` }),
  },
})
const foreign = [
  ...Object.entries(libraries).map(([name, allowed]) =>
    librariesOf(name, { path: within([name]), pathNot: commands }, allowed),
  ),
  librariesOf('commands', { path: commands }, ['zod']),
]

module.exports = {
  forbidden: [
    ...upwardsOrSideways,
    ...betweenAreas,
    plansAlone,
    commandsForTheCli,
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
