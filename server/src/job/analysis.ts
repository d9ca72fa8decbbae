import type { UnitSystem } from '../quantity/kinds.ts'
import { once } from '../syntax/once.ts'
import { Word } from '../syntax/tokens.ts'
import type { BlockNode } from '../syntax/tree.ts'
import { type Bound, bind, headingWord } from './bind.ts'
import type { Document } from './document.ts'
import type { JobFile } from './files.ts'
import { Memo, type Moment } from './memo.ts'
import type { Block, Section } from './model.ts'
import type { BindingScope, Scope } from './scope.ts'

interface Heads {
  readonly named: ReadonlyMap<string, Section>
  /** By name, or where there is none by kind. */
  readonly first: ReadonlyMap<string, Section>
  readonly ofKind: ReadonlyMap<string, readonly Section[]>
  readonly system: UnitSystem
}

/** Which section holds which top-level block: from the trees alone. */
const heads = once((document: Document): Heads => {
  const named = new Map<string, Section>()
  const first = new Map<string, Section>()
  const ofKind = new Map<string, Section[]>()
  let system: UnitSystem = 'metric'
  for (const section of document.sections) {
    for (const { kind, name, inches } of headsIn(section)) {
      if (name !== undefined && !named.has(name)) named.set(name, section)
      const key = name ?? kind
      if (!first.has(key)) first.set(key, section)
      const sections = ofKind.get(kind)
      if (!sections) ofKind.set(kind, [section])
      else if (sections.at(-1) !== section) sections.push(section)
      if (inches) system = 'inch'
    }
  }
  return { named, first, ofKind, system }
})

interface Head {
  readonly kind: string
  readonly name: string | undefined
  /** A job that wants its results in inches. */
  readonly inches: boolean
}

const headsIn = once((section: Section): readonly Head[] =>
  section.parsed.tree.items.flatMap((item) =>
    item.type === 'block'
      ? [
          {
            kind: item.kind.text,
            name: headingWord(item),
            inches: item.kind.text === 'job' && showsInches(item),
          },
        ]
      : [],
  ),
)

const showsInches = (job: BlockNode): boolean =>
  job.items.some((item) => {
    const [part] = item.type === 'fact' && item.name.text === 'show-in' ? (item.entries[0]?.parts ?? []) : []
    return part?.type === 'word' && part.text === 'inch'
  })

/** Words of a section that could name a top-level block. */
const wordsIn = once(({ parsed: { tree } }: Section): ReadonlySet<string> => {
  const words = new Set<string>()
  for (const { tokenType, image } of tree.tokens) {
    if (tokenType !== Word) continue
    const dot = image.indexOf('.')
    words.add(dot < 0 ? image : image.slice(0, dot))
  }
  return words
})

const newMoments = () => once((_: JobFile): Moment => Symbol('moment'))

const nothing: Bound = { blocks: [], problems: [], references: [] }

/** Meaning of job files, kept from one keystroke to the next. */
export class Analysis {
  readonly #bound = new Memo<Bound>()
  /** Sections that each section has asked for a block of. */
  readonly #asked = new WeakMap<Section, Set<Section>>()
  /** Names of the top-level blocks each file can reach: the same list as long as they are the same. */
  readonly #names = new Map<string, readonly string[]>()
  readonly #mentions = new WeakMap<
    Section,
    { readonly among: readonly string[]; readonly names: readonly string[] }
  >()
  #revision = 0
  #moments = newMoments()

  /** To be called when any file has changed. */
  begin(): void {
    this.#revision += 1
    this.#moments = newMoments()
  }

  get revision(): number {
    return this.#revision
  }

  /** As long as no file has changed, the same for the same file. */
  moment(file: JobFile): Moment {
    return this.#moments(file)
  }

  bound(file: JobFile, section: Section): Bound {
    const current = this.#bound.current(section, this.moment(file))
    if (current) return current
    // Those it mentions first, so that a long chain of references does not go down one call a link.
    const seen = new Set<Section>()
    const waiting: { readonly file: JobFile; readonly section: Section; readonly opened: boolean }[] = [
      { file, section, opened: false },
    ]
    for (let next = waiting.pop(); next; next = waiting.pop()) {
      if (next.opened) this.#bind(next.file, next.section)
      if (next.opened || seen.has(next.section)) continue
      seen.add(next.section)
      waiting.push({ ...next, opened: true })
      for (const word of this.#mentionedIn(next.section, next.file)) {
        const at = holderOf(next.file, word)
        if (at && !seen.has(at.section) && !this.#bound.current(at.section, this.moment(at.file)))
          waiting.push({ ...at, opened: false })
      }
    }
    return this.#bind(file, section)
  }

  #mentionedIn(section: Section, file: JobFile): readonly string[] {
    const among = this.scope(file).names()
    const known = this.#mentions.get(section)
    if (known?.among === among) return known.names
    const names = [...wordsIn(section)].filter((word) => holderOf(file, word))
    this.#mentions.set(section, { among, names })
    return names
  }

  #bind(file: JobFile, section: Section): Bound {
    const scope = this.scope(file)
    const made = this.#bound.get(section, { moment: this.moment(file), scope }, (asking) =>
      bind(section, this.#oneWay(section, asking)),
    )
    return made ?? nothing
  }

  /** References between top-level blocks go one way: a block that leads back to the one that asks is not given, whichever is read first. */
  #oneWay(section: Section, asking: Scope): BindingScope {
    const asked = new Set<Section>()
    this.#asked.set(section, asked)
    const named = (name: string): Block | undefined => {
      const holder = asking.holder(name)
      if (holder && holder !== section) asked.add(holder)
      const block = asking.named(name)
      return holder && holder !== section && this.#leads(holder, section) ? undefined : block
    }
    // Where one is not given none is: the others would be fewer than there are.
    const ofKind = (kind: string): readonly Block[] => {
      const holders = asking.holders(kind).filter((holder) => holder !== section)
      for (const holder of holders) asked.add(holder)
      const blocks = asking.ofKind(kind)
      return holders.some((holder) => this.#leads(holder, section)) ? [] : blocks
    }
    const isOnly = (kind: string): boolean =>
      asking
        .holders(kind)
        .flatMap(headsIn)
        .filter((head) => head.kind === kind).length === 1
    const circular = (name: string): boolean => {
      const holder = asking.holder(name)
      if (holder) return holder !== section && named(name) === undefined
      return isOnly(name) && ofKind(name).length === 0
    }
    const kindOf = (name: string): string | undefined => {
      const holder = asking.holder(name)
      if (holder) return headsIn(holder).find((head) => head.name === name)?.kind
      return isOnly(name) ? name : undefined
    }
    return { ...asking, named, ofKind, circular, kindOf }
  }

  #leads(from: Section, to: Section): boolean {
    const reached = new Set([from])
    for (const section of reached) {
      if (section === to) return true
      for (const next of this.#asked.get(section) ?? []) reached.add(next)
    }
    return false
  }

  /** Top-level blocks of the file, in order. */
  blocks(file: JobFile): readonly Block[] {
    return file.document.sections.flatMap((section) => this.bound(file, section).blocks)
  }

  readonly scope = once((file: JobFile): Scope => {
    const own = heads(file.document)
    const names = this.#namesOf(file)
    return {
      named: (name) => {
        const at = holderOf(file, name)
        return at && this.#bind(at.file, at.section).blocks.find((block) => block.name === name)
      },
      holder: (name) => holderOf(file, name)?.section,
      ofKind: (kind) =>
        (own.ofKind.get(kind) ?? []).flatMap((section) =>
          this.#bind(file, section).blocks.filter((block) => block.kind === kind),
        ),
      holders: (kind) => own.ofKind.get(kind) ?? [],
      first: (name) => own.first.get(name),
      names: () => names,
      system: () => own.system,
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
function holderOf(
  file: JobFile,
  name: string,
): { readonly file: JobFile; readonly section: Section } | undefined {
  const own = heads(file.document).named.get(name)
  if (own) return { file, section: own }
  for (const used of file.used) {
    const section = heads(used.document).named.get(name)
    if (section) return { file: used, section }
  }
  return undefined
}
