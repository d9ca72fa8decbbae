import type { UnitSystem } from '../quantity/kinds.ts'
import type { BlockNode } from '../syntax/tree.ts'
import { type Bound, bind } from './bind.ts'
import type { Document } from './document.ts'
import type { JobFile } from './files.ts'
import { Memo } from './memo.ts'
import type { Block, Section } from './model.ts'
import type { Scope } from './scope.ts'

interface Heads {
  readonly named: ReadonlyMap<string, Section>
  readonly ofKind: ReadonlyMap<string, readonly Section[]>
  readonly system: UnitSystem
}

const headsOf = new WeakMap<Document, Heads>()

/** Which section holds which top-level block: from the trees alone, made once a document. */
function heads(document: Document): Heads {
  const made = headsOf.get(document)
  if (made) return made
  const named = new Map<string, Section>()
  const ofKind = new Map<string, Section[]>()
  let system: UnitSystem = 'metric'
  for (const section of document.sections) {
    for (const item of section.parsed.tree.items) {
      if (item.type !== 'block') continue
      const [name] = item.heading
      if (name?.type === 'word' && !named.has(name.text)) named.set(name.text, section)
      const sections = ofKind.get(item.kind.text) ?? []
      if (!sections.includes(section)) ofKind.set(item.kind.text, [...sections, section])
      if (item.kind.text === 'job' && showsInches(item)) system = 'inch'
    }
  }
  const result = { named, ofKind, system }
  headsOf.set(document, result)
  return result
}

const showsInches = (job: BlockNode): boolean =>
  job.items.some((item) => {
    const [part] = item.type === 'fact' && item.name.text === 'show-in' ? (item.entries[0]?.parts ?? []) : []
    return part?.type === 'word' && part.text === 'inch'
  })

const nothing: Bound = { blocks: [], problems: [] }

/** Meaning of job files, kept from one keystroke to the next. */
export class Analysis {
  readonly #bound = new Memo<Bound>()
  #revision = 0

  /** To be called when any file has changed. */
  begin(): number {
    this.#revision += 1
    return this.#revision
  }

  get revision(): number {
    return this.#revision
  }

  bound(file: JobFile, section: Section): Bound {
    const scope = this.scope(file)
    return (
      this.#bound.get(section, { revision: this.#revision, scope }, (asking) => bind(section, asking)) ??
      nothing
    )
  }

  /** Top-level blocks of the file, in order. */
  blocks(file: JobFile): readonly Block[] {
    return file.document.sections.flatMap((section) => this.bound(file, section).blocks)
  }

  scope(file: JobFile): Scope {
    const inFile = (of: JobFile, name: string): Block | undefined => {
      const section = heads(of.document).named.get(name)
      return section && this.bound(of, section).blocks.find((block) => block.name === name)
    }
    return {
      named: (name) => {
        const own = inFile(file, name)
        if (own) return own
        for (const used of file.used) {
          const found = inFile(used, name)
          if (found) return found
        }
        return undefined
      },
      ofKind: (kind) =>
        (heads(file.document).ofKind.get(kind) ?? []).flatMap((section) =>
          this.bound(file, section).blocks.filter((block) => block.kind === kind),
        ),
      names: () => [file, ...file.used].flatMap((f) => [...heads(f.document).named.keys()]).join(','),
      system: () => heads(file.document).system,
    }
  }
}
