import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import type { UnitSystem } from '../quantity/kinds.ts'
import type { Heading } from '../syntax/sole-block.ts'
import { Word } from '../syntax/tokens.ts'
import { type BlockNode, blocksIn, type FactNode } from '../syntax/tree.ts'
import { type Status, silentStatus, statuses } from '../vocabulary/status.ts'
import { type Bound, bind, headingWord } from './bind.ts'
import { type Asker, Row } from './circles.ts'
import { type Document, soleBlockOf } from './document.ts'
import type { JobFile } from './files.ts'
import { Memo, outsideOf, type Snapshot } from './memo.ts'
import { type Block, blockNamed, type Section } from './model.ts'
import type { Scope } from './scope.ts'
import { systemsOfReadings } from './systems-written.ts'

interface Heads {
  readonly named: ReadonlyMap<string, Section>
  /** By name, or where there is none by kind. */
  readonly first: ReadonlyMap<string, Section>
  readonly ofKind: ReadonlyMap<string, readonly Section[]>
  /** How many blocks there are of each kind. */
  readonly counts: ReadonlyMap<string, number>
}

/** Which section holds which top-level block: from the headings alone. */
const heads = memoizeByIdentity((document: Document): Heads => {
  const named = new Map<string, Section>()
  const first = new Map<string, Section>()
  const ofKind = new Map<string, Section[]>()
  const counts = new Map<string, number>()
  for (const section of document.sections) {
    for (const { kind, name } of headsIn(section)) {
      if (name !== undefined && !named.has(name)) named.set(name, section)
      const key = name ?? kind
      if (!first.has(key)) first.set(key, section)
      counts.set(kind, (counts.get(kind) ?? 0) + 1)
      const sections = ofKind.get(kind)
      if (!sections) ofKind.set(kind, [section])
      else if (sections.at(-1) !== section) sections.push(section)
    }
  }
  return { named, first, ofKind, counts }
})

const headsIn = memoizeByIdentity((section: Section): readonly Heading[] => {
  const sole = soleBlockOf(section)
  if (sole) return [sole]
  return section.parsed.tree.items.flatMap((item) =>
    item.type === 'block' ? [{ kind: item.kind.text, name: headingWord(item) }] : [],
  )
})

const jobsOf = (document: Document): readonly BlockNode[] =>
  (heads(document).ofKind.get('job') ?? []).flatMap((section) =>
    section.parsed.tree.items.flatMap((item) =>
      item.type === 'block' && item.kind.text === 'job' ? [item] : [],
    ),
  )

const statusOf = memoizeByIdentity((document: Document): Status | undefined => {
  const [job] = jobsOf(document)
  return job && statusIn(job)
})

const systemOf = memoizeByIdentity((document: Document): UnitSystem => {
  for (const job of jobsOf(document)) {
    const system = showInOf(job)
    if (system) return system
  }
  // A job that does not say is shown as it is read.
  const readIn = new Set(
    mentioning(document, 'reading').flatMap((section) => [...systemsOfReadings(section)]),
  )
  return readIn.has('inch') && readIn.size === 1 ? 'inch' : 'metric'
})

/** Names that a `like` begins with. */
const takenOf = memoizeByIdentity(
  (document: Document): ReadonlySet<string> => new Set(mentioning(document, 'like').flatMap(takenIn)),
)

/** Sections that may have a word of the language: the others are not parsed. */
const mentioning = ({ sections }: Document, word: string): readonly Section[] =>
  sections.filter(({ text }) => text.includes(word))

/** The word that is the value of a fact, where it is one. */
function wordIn({ items }: BlockNode, name: string): string | undefined {
  const fact = items.find((item): item is FactNode => item.type === 'fact' && item.name.text === name)
  const [part] = fact?.entries[0]?.parts ?? []
  return part?.type === 'word' ? part.text : undefined
}

function showInOf(job: BlockNode): UnitSystem | undefined {
  const written = wordIn(job, 'show-in')
  return written === 'inch' || written === 'metric' ? written : undefined
}

const statusIn = (job: BlockNode): Status => {
  const written = wordIn(job, 'status')
  return statuses.find((status) => status === written) ?? silentStatus
}

const takenIn = memoizeByIdentity(({ parsed: { tree } }: Section): readonly string[] =>
  [...blocksIn(tree.items)].flatMap((block) => wordIn(block, 'like')?.split('.', 1) ?? []),
)

/** Words of a section that could name a top-level block. */
const wordsIn = memoizeByIdentity(({ parsed: { tree } }: Section): ReadonlySet<string> => {
  const words = new Set<string>()
  for (const { tokenType, image } of tree.tokens) {
    if (tokenType !== Word) continue
    const dot = image.indexOf('.')
    words.add(dot < 0 ? image : image.slice(0, dot))
  }
  return words
})

const newSnapshots = () => memoizeByIdentity((_: JobFile): Snapshot => Symbol('snapshot'))

/** A section in the file that it is bound for. */
interface PendingSection {
  readonly file: JobFile
  readonly section: Section
}

/** More sections than this are not bound one inside the other: the stack has room for few, with values each of which is taken from the next. */
const deepest = 4

/** Thrown through a section that is being bound. It is bound again when the one that it asks for is. */
class TooDeep extends Error {}

const nothing: Bound = { blocks: [], problems: [], mentions: [] }

/** Meaning of job files, kept from one keystroke to the next. */
export class Analysis {
  readonly #bound = new Memo<Bound>()
  /** Sections that are being bound, each asked for by the one before it. */
  readonly #row = new Row<PendingSection>()
  readonly #askers = new WeakMap<Section, Asker>()
  /** How many of them are bound one inside the other. */
  #nested = 0
  /** Names of the top-level blocks each file can reach: the same list as long as they are the same. */
  readonly #names = new Map<string, readonly string[]>()
  readonly #mentions = new WeakMap<
    Section,
    { readonly among: readonly string[]; readonly names: readonly string[] }
  >()
  #revision = 0
  #snapshots = newSnapshots()
  /** How often a section was bound, for tests. */
  timesBound = 0

  /** To be called when any file has changed. */
  begin(): void {
    this.#revision += 1
    this.#snapshots = newSnapshots()
  }

  get revision(): number {
    return this.#revision
  }

  /** As long as no file has changed, the same for the same file. */
  snapshot(file: JobFile): Snapshot {
    return this.#snapshots(file)
  }

  bound(file: JobFile, section: Section): Bound {
    const current = this.#bound.current(section, this.snapshot(file))
    if (current) return current
    if (this.#row.length > 0) return this.#asked({ file, section })
    // Those it mentions first, so that few are bound one inside the other.
    const seen = new Set<Section>()
    const waiting: (PendingSection & { readonly opened: boolean })[] = [{ file, section, opened: false }]
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      if (next.opened) this.#bind(next)
      if (next.opened || seen.has(next.section)) continue
      seen.add(next.section)
      waiting.push({ ...next, opened: true })
      for (const word of this.#mentionedIn(next.section, next.file)) {
        const at = holderOf(next.file, word)
        if (at && !seen.has(at.section) && !this.#bound.current(at.section, this.snapshot(at.file)))
          waiting.push({ ...at, opened: false })
      }
    }
    return this.#bound.current(section, this.snapshot(file)) ?? nothing
  }

  #mentionedIn(section: Section, file: JobFile): readonly string[] {
    const among = this.scope(file).names()
    const known = this.#mentions.get(section)
    if (known?.among === among) return known.names
    const names = [...wordsIn(section)].filter((word) => holderOf(file, word))
    this.#mentions.set(section, { among, names })
    return names
  }

  /** Binds a section, and all that it turns out to ask for. */
  #bind(held: PendingSection): void {
    this.#begin(held)
    while (this.#row.length > 0) {
      try {
        this.#bindLast()
      } catch (error) {
        if (error instanceof TooDeep) continue
        this.#row.clear()
        throw error
      }
    }
  }

  /** A section that one that is being bound asks for; nothing where it is being bound itself. */
  #asked(held: PendingSection): Bound {
    if (this.#askers.get(held.section)?.place !== undefined) return nothing
    this.#begin(held)
    if (this.#nested >= deepest) throw new TooDeep()
    return this.#bindLast() ?? nothing
  }

  #begin(held: PendingSection): void {
    this.#askers.set(held.section, this.#row.push(held))
  }

  #bindLast(): Bound | undefined {
    const held = this.#row.last
    if (!held) return undefined
    const { file, section } = held
    this.#nested += 1
    try {
      const made = this.#bound.get(
        section,
        { snapshot: this.snapshot(file), scope: this.#oneWay(held) },
        (ask) => {
          this.timesBound += 1
          return bind(section, outsideOf(section, ask))
        },
      )
      this.#row.pop()
      return made
    } finally {
      this.#nested -= 1
    }
  }

  /** References between top-level blocks go one way: a block that leads back to the one that asks is not given, whichever is read first. */
  #oneWay({ file, section }: PendingSection): Scope {
    const scope = this.scope(file)
    /** What the section of a block means; undefined for itself, and where it leads back. */
    const given = (at: PendingSection | undefined): Bound | undefined => {
      if (!at || at.section === section) return undefined
      const bound = this.bound(at.file, at.section)
      const asker = this.#askers.get(at.section)
      return asker && this.#row.leadsBack(asker) ? undefined : bound
    }
    return {
      ...scope,
      named: (name) => blockNamed(given(holderOf(file, name))?.blocks, name),
      another: (kind) => blockOfKind(given(onlyHolder(file, kind, section)), kind),
      circular: (name) => {
        const at = holderOf(file, name)
        if (at) return at.section !== section && !given(at)
        return heads(file.document).counts.get(name) === 1 && !given(onlyHolder(file, name, section))
      },
    }
  }

  /** Top-level blocks of the file, in order. */
  blocks(file: JobFile): readonly Block[] {
    return file.document.sections.flatMap((section) => this.bound(file, section).blocks)
  }

  readonly scope = memoizeByIdentity((file: JobFile): Scope => {
    const own = heads(file.document)
    const names = this.#namesOf(file)
    return {
      named: (name) => {
        const at = holderOf(file, name)
        return at && blockNamed(this.bound(at.file, at.section).blocks, name)
      },
      only: (kind) => {
        const [section] = own.counts.get(kind) === 1 ? (own.ofKind.get(kind) ?? []) : []
        return section && blockOfKind(this.bound(file, section), kind)
      },
      another: (kind, outside) => {
        const at = onlyHolder(file, kind, outside)
        return at && blockOfKind(this.bound(file, at.section), kind)
      },
      kindOf: (name) => {
        const at = holderOf(file, name)
        if (at) return headsIn(at.section).find((head) => head.name === name)?.kind
        return own.counts.get(name) === 1 ? name : undefined
      },
      circular: () => false,
      first: (name) => own.first.get(name),
      names: () => names,
      system: () => systemOf(file.document),
      status: () => statusOf(file.document),
      isTaken: (name) => takenOf(file.document).has(name),
    }
  })

  #namesOf(file: JobFile): readonly string[] {
    const names = [...new Set([file, ...file.used].flatMap((f) => [...heads(f.document).named.keys()]))]
    const before = this.#names.get(file.path)
    if (before?.length === names.length && before.every((name, i) => name === names[i])) return before
    this.#names.set(file.path, names)
    return names
  }
}

/** The section that has the top-level block of this name, in the file itself first, then in those it uses. */
function holderOf(file: JobFile, name: string): PendingSection | undefined {
  const own = heads(file.document).named.get(name)
  if (own) return { file, section: own }
  for (const used of file.used) {
    const section = heads(used.document).named.get(name)
    if (section) return { file: used, section }
  }
  return undefined
}

/** The only section but one that has a top-level block of this kind, where it has no other. */
function onlyHolder(file: JobFile, kind: string, but: Section): PendingSection | undefined {
  const others = (heads(file.document).ofKind.get(kind) ?? []).filter((other) => other !== but)
  const [other] = others
  const isOnly = other && others.length === 1 && countIn(other, kind) === 1
  return isOnly ? { file, section: other } : undefined
}

const blockOfKind = (bound: Bound | undefined, kind: string): Block | undefined =>
  bound?.blocks.find((block) => block.kind === kind)

const countIn = (section: Section, kind: string): number =>
  headsIn(section).filter((head) => head.kind === kind).length
