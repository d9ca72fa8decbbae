import { memoizeByIdentity } from '../../common/memoize-by-identity.ts'
import { headingWord } from '../../job/bind.ts'
import { parseSection } from '../../syntax/parser.ts'
import type { BlockNode, Span } from '../../syntax/tree.ts'
import type { BlockKind, Fact } from '../../vocabulary/block.ts'
import { type BlockName, findKind } from '../../vocabulary/index.ts'
import { type ValueSite, valuePieces } from './snippet-values.ts'
import type { Template } from './template.ts'

/** What a snippet takes from where it goes, so that it fits there. */
export interface Site extends ValueSite {
  /** Names of the blocks beside it; of those without a name, their kinds. */
  readonly taken: readonly string[]
  readonly feet: readonly string[]
  readonly lastReading: string | undefined
}

type Piece = Template[number]

/** A block as the vocabulary shows it, each name and value a place to fill in. */
export function blockTemplate(kind: BlockKind, site: Site): Template {
  if (kind.heading === 'after') return moveTemplate(kind, site)
  const examples = examplesOf(kind)
  // Of several feet the next: with its name goes its side.
  const next = examples.find(({ block }) => !site.taken.includes(headingWord(block) ?? '')) ?? examples[0]
  if (!next) return [kind.example]
  const places: Place[] = []
  fill(next.block, { example: next.text, site, places, used: new Set() })
  return cut(next.text, places)
}

interface Example {
  readonly text: string
  readonly block: BlockNode
}

const exampleIn = (text: string): readonly Example[] =>
  parseSection(text).tree.items.flatMap((item) => (item.type === 'block' ? [{ text, block: item }] : []))

/** The example of a kind, then those of one line that stand in the block around it, read once. */
const examplesOf = memoizeByIdentity(({ kind, example, within }: BlockKind): readonly Example[] => {
  const around = within.flatMap((name) => exampleIn(findKind(name)?.example ?? ''))
  const beside = around.flatMap(({ text, block }) =>
    block.items
      .filter((item) => item.type === 'block' && item.kind.text === kind)
      .map(({ span }) => text.slice(span.start, span.end)),
  )
  return [example, ...beside.filter((text) => !text.includes('\n'))].flatMap(exampleIn)
})

interface Place {
  readonly span: Span
  readonly pieces: readonly Piece[]
}

function cut(text: string, places: readonly Place[]): Template {
  const template: Piece[] = []
  let at = 0
  for (const { span, pieces } of places) {
    template.push(text.slice(at, span.start), ...pieces)
    at = span.end
  }
  return [...template, text.slice(at)]
}

interface Filling {
  readonly example: string
  readonly site: Site
  readonly places: Place[]
  /** Names referred to already: a cable does not end where it starts. */
  readonly used: Set<string>
}

function fill(block: BlockNode, filling: Filling): void {
  const { example, site, places, used } = filling
  const kind = findKind(block.kind.text)
  const [name] = block.heading
  if (name?.type === 'word')
    places.push({
      span: name.span,
      pieces: [{ value: kind?.heading === 'check' ? name.text : free(name.text, site.taken) }],
    })
  else if (name?.type === 'text')
    places.push({ span: name.span, pieces: ['"', { value: site.blanks ? '?' : 'title' }, '"'] })
  else if (!name && kind?.many && site.taken.includes(kind.kind)) {
    const { end } = block.kind.span
    places.push({ span: { start: end, end }, pieces: [' ', { value: free(kind.kind, site.taken) }] })
  }
  for (const item of block.items) {
    if (item.type === 'block') fill(item, filling)
    else {
      const factName = item.type === 'fact' ? item.name.text : kind?.bare
      const fact = kind?.facts[factName ?? '']
      const span = item.type === 'fact' ? item.valueSpan : item.span
      if (fact && factName !== undefined) {
        const written = { entries: item.entries, text: example }
        places.push({ span, pieces: valuePieces(factName, fact, { site, used, written }) })
      }
      // Where a figure comes from is for the person to say who writes it.
      const { provenance } = item
      if (provenance) places.push({ span: { start: span.end, end: provenance.span.end }, pieces: [] })
    }
  }
}

/** A name that no block beside it has: `dry-2` where `dry-1` is taken. */
function free(name: string, taken: readonly string[]): string {
  const [, stem = name, number] = /^(.*?)-?(\d+)?$/.exec(name) ?? []
  let next = Number(number ?? 1)
  let made = name
  while (taken.includes(made)) {
    next += 1
    made = `${stem}-${next}`
  }
  return made
}

/** A fact with its value a place to fill in. */
export const factTemplate = (name: string, fact: Fact, site: Site): Template => [
  `${name}: `,
  ...valuePieces(name, fact, { site, used: new Set() }),
]

/** A move as it is planned: when and by whom it was made is written once it is. */
function moveTemplate({ others }: BlockKind, site: Site): Template {
  const { feet, lastReading } = site
  const width = Math.max(...feet.map((foot) => foot.length)) + 2
  const line = (name: string): string => `\n  ${`${name}:`.padEnd(width)}`
  return [
    'move after ',
    { value: lastReading ?? 'dry-1' },
    ' {',
    ...feet.flatMap((foot): Piece[] => [
      line(foot),
      ...(others ? valuePieces(foot, others, { site, used: new Set() }) : []),
    ]),
    '\n}',
  ]
}

/** The parts of a drive, in the order of the work: what is there before anything is measured. */
const parts: readonly BlockName[] = [
  'propeller',
  'shaft',
  'bearing',
  'shaft-log',
  'seal',
  'coupling',
  'gear',
  'motor',
  'bed',
  'controller',
  'phase-map',
]

const ofKind = (name: BlockName, site: Site): Template => {
  const kind = findKind(name)
  return kind ? blockTemplate(kind, site) : []
}

const indented = (template: Template): Template =>
  template.map((piece) => (typeof piece === 'string' ? piece.replaceAll('\n', '\n  ') : piece))

/** Parts that are written at once: nobody goes to each of their places, so none may seem filled in. */
const nowhere = (site: Site): Site => ({
  ...site,
  blanks: true,
  taken: [],
  terminals: { controller: [], motor: [] },
  refer: () => [],
})

/** A drive with every part it has. */
export const wholeDrive = (site: Site): Template => [
  'drive ',
  { value: free('main', site.taken) },
  ' {',
  ...parts.flatMap((part) => ['\n  ', ...indented(ofKind(part, nowhere(site)))]),
  '\n}',
]

/** A whole job to fill in. */
export const wholeJob = (site: Site): Template => [
  ...ofKind('job', { ...site, blanks: true }),
  '\n\n',
  ...ofKind('battery', { ...site, blanks: true }),
  '\n\n',
  ...wholeDrive(site),
]
