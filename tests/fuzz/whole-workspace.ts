// Questions about a whole workspace are answered from an index of texts. The answers are those of a full read, whatever is in the folders and however
// they are edited.
import { isDeepStrictEqual } from 'node:util'
import fc from 'fast-check'
import { filesAround } from '../../server/src/editor/navigation/around.ts'
import { references } from '../../server/src/editor/navigation/references.ts'
import { rename } from '../../server/src/editor/rename/rename.ts'
import { Workspace } from '../../server/src/editor/workspace/workspace.ts'
import { isSearched } from '../../server/src/host/uri.ts'
import { locate, rangeOf, textOf } from '../../server/src/job/document.ts'
import { anyEdit, applied, positionAt } from './edits.ts'
import { FullRead } from './full-read.ts'
import { type Random, randomFrom } from './random.ts'

const root = 'file:///yard'
const paths = [
  'a.wright',
  'b.wright',
  'in/c.wright',
  'in/d.wright',
  'parts/e.wright',
  'node_modules/f.wright',
]
const names = ['spare', 'spare-2', 'stock', 'main', 'bank', 'U', 'gear', 'aft']

/** A file that uses others and takes parts of them, with every way to mention a name. */
function anyFile(path: string, random: Random): string {
  const name = () => random.pick(names)
  const up = path.includes('/') ? '../' : ''
  const lines = Array.from({ length: random.below(4) }, () => {
    const used = `${up}${random.pick(paths)}`
    return random.pick([
      `use "${used}"`,
      `use "${used}"`,
      `use   "./${used}"`,
      `use “${used}”`,
      `# use "${used}"`,
      `use "${used.replace('a', '\\a')}"`,
      `use "${used}`,
    ])
  })
  const block = (): string =>
    random.pick([
      () => `gear ${name()} { ratio: 2  like: ${name()} }`,
      () => `gear ${name()} { ratio: ${name()}.ratio }`,
      () => `gear { like: ${name()} }`,
      () => `battery ${name()} { nominal: 96 V }`,
      () => `drive ${name()} {\n  battery: ${name()}\n  gear { like: ${name()} }\n}`,
      () => `drive ${name()} { like: ${name()} }`,
      () =>
        `drive ${name()} {\n  motor ${name()} { terminals: U, V, "W 1" }\n  controller { terminals: A, B, C }\n  phase-map { A to U, B to V, C to "W 1" }\n  bed { foot ${name()} { across: 140 mm port } }\n  reading dry-1 { lifts: ${name()} 0.1 mm }\n  move after dry-1 { ${name()}: up 1 turn }\n}`,
      () =>
        `drive ${name()} {\n  gear ${name()} { ratio: 3 }\n  shaft { diameter: ${name()}.${name()}.ratio }\n}`,
      () => `concession cable/undersized { on: "${name()}.${name()}" }`,
      () => `# ${name()} ${name()}`,
    ])()
  return [...lines, ...Array.from({ length: 1 + random.below(4) }, block), ''].join('\n')
}

/** A file that takes the same part as all others, `spare` of the library, and mentions it where it may stand for the part, for something else, or
 * for nothing. */
function ofAll(path: string, random: Random): string {
  if (path.startsWith('parts/'))
    return random.pick([
      'gear spare { ratio: 2 }\n',
      '# The spare of all.\ngear spare { ratio: 2 } # spare\n',
      'gear spare { ratio: 2 }\ngear stock { like: spare }\n',
      'job "spare" { }\ngear spare { ratio: 2 }\n',
    ])
  const blocks = Array.from({ length: 1 + random.below(4) }, () =>
    random.pick([
      'gear reserve { like: spare }',
      'gear reserve { ratio: spare.ratio * 2 }',
      `drive port {\n  gear { like: spare }\n}`,
      `drive port {\n  gear own { like: spare }\n  shaft { diameter: own.ratio }\n}`,
      `drive port {\n  bed { foot aft { across: 140 mm port } }\n  reading dry-1 { lifts: aft 0.1 mm }\n}`,
      `drive starboard { like: port }`,
      `drive starboard {\n  like: port\n  move after dry-1 { aft: up 1 turn }\n}`,
      'battery bank { nominal: 96 V }',
      'concession cable/undersized { on: "port.gear" }',
      'job "A job" { status: for-review }',
      ...(random.chance(0.3)
        ? [
            '# spare',
            'gear spare { ratio: 3 }',
            `drive port { gear spare { ratio: 3 }  shaft { diameter: spare.ratio } }`,
            'concession cable/undersized { on: "spare.ratio" }',
            'job "spare" { }',
            'gear reserve { like: spar }',
            'drive spare { gear { like: spare } }',
            'gear reserve { ratio: 2 spare }',
          ]
        : []),
    ]),
  )
  return [`use "${path.includes('/') ? '../' : ''}parts/e.wright"`, ...blocks, ''].join('\n')
}

/** Folders at random, edited at random on disk and in the editor: each answer has to be that of a full read. */
export const wholeWorkspace = fc.asyncProperty(fc.nat(), async (seed) => {
  const random = randomFrom(seed)
  const fileAt = random.chance(0.5) ? anyFile : ofAll
  const disk = new Map(
    paths.filter(() => random.chance(0.8)).map((path) => [`${root}/${path}`, fileAt(path, random)]),
  )
  const stamps = new Map<string, number>()
  let changes = 0
  const workspace = new Workspace(
    (uri) => disk.get(uri),
    () =>
      [...disk.keys()].filter((uri) =>
        uri
          .slice(root.length + 1)
          .split('/')
          .every(isSearched),
      ),
    (uri) => (disk.has(uri) ? `${stamps.get(uri) ?? 0}` : undefined),
  )
  workspace.setFolders({ added: [root] })
  for (let step = 0; step < 6; step++) {
    const path = random.pick(paths)
    const uri = `${root}/${path}`
    const open = workspace.get(uri)
    const text = open ? textOf(open.document) : (disk.get(uri) ?? '')
    const other = random.chance(0.5)
      ? fileAt(path, random)
      : applied(text, anyEdit({ text, size: 300, random }))
    if (open && random.chance(0.3)) workspace.close(uri)
    else if (open) workspace.change(uri, step + 2, [{ text: other }])
    else if (disk.has(uri) && random.chance(0.5)) workspace.open(uri, step + 1, text)
    else {
      changes += 1
      stamps.set(uri, changes)
      if (disk.has(uri) && random.chance(0.2)) disk.delete(uri)
      else disk.set(uri, other)
      // An editor that watches the disk reports the change.
      workspace.refresh([uri])
    }
    await compare(workspace, random)
  }
})

async function compare(workspace: Workspace, random: Random): Promise<void> {
  const [open] = workspace.openFiles
  if (!open) return
  const around = await filesAround(workspace)
  const files = await Array.fromAsync(around.files())
  const full = new FullRead(
    [root],
    files.map(({ uri, file }) => [uri, textOf(file.document)] as const),
  )
  const text = textOf(open.document)
  for (let i = 0; i < 4; i++) {
    const words = [...text.matchAll(/[a-z][a-z0-9-]*/gi)]
    const position = positionAt(text, words.length > 0 ? random.pick(words).index : 0)
    const at = locate(open.document, position)
    if (!at) continue
    const view = workspace.viewOf(open)
    const found = await Array.fromAsync(references(view, at, around))
    const mentioned = found.map(({ at: place, in: { uri, file } }) => ({
      uri,
      range: rangeOf(file.document, place),
    }))
    same(mentioned, full.references(open.uri, position), 'references')
    const to = random.pick([...names, 'brand-new', 'brand-new', 'mm', 'up', 'spar'])
    const renamed = await rename(view, at, { to, around })
    const plain = full.rename(open.uri, position, to)
    if ('refused' in renamed) {
      // What is refused by the name alone is not tried out.
      if (/mean/.test(renamed.refused)) same(renamed.refused, plain?.refused, `rename to ${to}`)
    } else if (renamed.length > 0)
      same({ places: renamed, refused: undefined }, plain ?? {}, `rename to ${to}`)
  }
}

function same(found: unknown, expected: unknown, what: string): void {
  if (!isDeepStrictEqual(found, expected))
    throw new Error(
      `${what}: found\n${JSON.stringify(found)}\nwhere it should be\n${JSON.stringify(expected)}`,
    )
}
