import type { Analysis } from '../job/analysis.ts'
import type { Bound } from '../job/bind.ts'
import { hasSection } from '../job/document.ts'
import type { JobFile } from '../job/files.ts'
import { keep } from '../job/keep.ts'
import { type BoundLookup, boundLookup } from '../job/lookup.ts'
import type { Moment } from '../job/memo.ts'
import type { Block, Section } from '../job/model.ts'
import type { View } from '../job/per-section.ts'
import type { Scope } from '../job/scope.ts'
import { formatBand, formatBoth } from '../quantity/format.ts'
import { once } from '../syntax/once.ts'
import { equal } from './equal.ts'
import type { FileLookup, FilePlan, Lookup } from './lookup.ts'
import { Around, type Find, InFile, writtenPath } from './questions.ts'
import { type Home, StoredBlock, Top } from './stored-block.ts'
import { takeIn } from './tables.ts'
import { ask, type Ended, type Question, type Source, type Trace, unnoted } from './trace.ts'
import { FileWork, resultIn, SectionWork } from './work.ts'

/** What the rest of a file, and the files it uses, are asked: which blocks there are, and what all of them share. */
class Directory implements Source {
  version: object = {}
  outline: readonly unknown[] = []
}

/** What was worked out under a supposition, by what is kept of the same work. */
type Supposed = Map<Trace, Trace>

/** What a job says and what follows from it, by value: a text that says the same is no change. One for each file, with all that it uses. */
export class Store implements Home {
  readonly #analysis: Analysis
  readonly #directory = new Directory()
  #file: JobFile
  #scope: Scope
  #moment: Moment | undefined
  #revision = 0
  #tops: ReadonlyMap<string, Top> = new Map()
  /** Blocks of used files that were asked for, by name. */
  readonly #used = new Map<string, Top>()
  #stored = new WeakMap<Block, StoredBlock>()
  #lists = new Map<string, readonly StoredBlock[]>()
  #supposed: Supposed | undefined
  /** How often work was done, for tests. */
  worked = 0

  constructor(analysis: Analysis, file: JobFile) {
    this.#analysis = analysis
    this.#file = file
    this.#scope = analysis.scope(file)
    this.takeIn(file)
  }

  /** Takes in the file as it stands now. */
  takeIn(file: JobFile): void {
    const moment = this.#analysis.moment(file)
    if (moment === this.#moment) return
    this.#moment = moment
    this.#file = file
    this.#scope = this.#analysis.scope(file)
    this.#revision += 1
    this.#stored = new WeakMap()
    this.#takeInOwn()
    this.#takeInUsed()
    const outline = this.#scope.outline()
    if (!equal(outline, this.#directory.outline)) {
      this.#directory.outline = outline
      this.#directory.version = {}
      this.#lists = new Map()
    }
  }

  #takeInOwn(): void {
    const tops = new Map<string, Top>()
    for (const section of this.#file.document.sections) {
      const bound = this.#analysis.bound(this.#file, section)
      for (const block of bound.blocks) {
        let key = `${block.kind} ${block.name ?? ''}`
        for (let n = 2; tops.has(key); n++) key = `${block.kind} ${block.name ?? ''}~${n}`
        const top = this.#tops.get(key) ?? new Top(this)
        tops.set(key, top)
        this.#takeInTop(top, block, bound)
      }
    }
    for (const [key, top] of this.#tops) if (!tops.has(key)) top.remove()
    this.#tops = tops
  }

  #takeInUsed(): void {
    for (const [name, top] of this.#used) {
      const block = this.#scope.named(name)
      if (block && this.#isUsed(block)) this.#takeInTop(top, block, block)
      else {
        top.remove()
        this.#used.delete(name)
      }
    }
  }

  #takeInTop(top: Top, block: Block, text: unknown): void {
    if (top.text.version === text && top.root?.content?.block === block) {
      for (const stored of top.blocks.values())
        if (stored.content) this.#stored.set(stored.content.block, stored)
    } else takeIn(top, block, text, (bound, stored) => this.#stored.set(bound, stored))
  }

  #isUsed = ({ section }: Block): boolean => !hasSection(this.#file.document, section)

  /** A block by what it says. */
  stored(block: Block): StoredBlock {
    if (block instanceof StoredBlock) return block
    const known = this.#stored.get(block)
    if (known) return known
    let root = block
    while (root.parent) root = root.parent
    const name = root.name ?? root.kind
    const top = new Top(this)
    this.#used.set(name, top)
    this.#takeInTop(top, root, root)
    const stored = this.#stored.get(block)
    if (!stored) throw new Error(`The block ${block.path} is not one of the job.`)
    return stored
  }

  /** The blocks of a kind at the top of the file. */
  ofKind(kind: string): readonly StoredBlock[] {
    const known = this.#lists.get(kind)
    if (known) return known
    const list = [...this.#tops.values()].flatMap(({ root }) => (root?.kind === kind ? [root] : []))
    this.#lists.set(kind, list)
    return list
  }

  /** Top-level blocks, in the order of the text. */
  get roots(): readonly StoredBlock[] {
    return [...this.#tops.values()].flatMap(({ root }) => root ?? [])
  }

  bound(of: StoredBlock): BoundLookup | undefined {
    return of.content && boundLookup(of.content.block, this.#scope)
  }

  get scope(): Scope {
    return this.#scope
  }

  get directory(): Source {
    return this.#directory
  }

  /** The top-level block that a path begins with. */
  topOf(path: string): Top | undefined {
    const [head = ''] = path.split('.', 1)
    const block = this.#scope.named(head) ?? this.#scope.only(head)
    return block && this.stored(block).top
  }

  readonly #ofKind = new Map<string, InFile<readonly StoredBlock[]>>()
  readonly #isTaken = new Map<string, InFile<boolean>>()
  readonly #system = new InFile(this, ({ scope }) => scope.system())
  readonly #status = new InFile(this, ({ scope }) => scope.status())
  readonly #traces = new Map<FilePlan<unknown>, FileWork>()
  readonly #sections = new WeakMap<Section, Map<object, SectionWork>>()

  readonly fileLookup: FileLookup = {
    ofKind: (kind) => ask(keep(this.#ofKind, kind, () => new InFile(this, () => this.ofKind(kind)))),
    ofFile: <T>(plan: FilePlan<T>) =>
      resultIn(ask(keep(this.#traces, plan, () => new FileWork(this, plan)))) as T,
    from: (block) => this.stored(block).lookup,
  }

  lookupOf(block: StoredBlock): Lookup {
    const { name, parent } = block
    const questions = new Map<string, Question<StoredBlock | undefined>>()
    const around = (key: string, find: Find, path: () => string | undefined) =>
      ask(keep(questions, key, () => new Around(block, find, path)))
    const system = () => ask(this.#system)
    const isTaken = (taken: string) =>
      ask(keep(this.#isTaken, taken, () => new InFile(this, ({ scope }) => scope.isTaken(taken))))
    const status = () => ask(this.#status)
    return {
      ...this.fileLookup,
      block,
      near: (kind) =>
        around(
          kind,
          (bound) => bound.near(kind),
          () => writtenPath(block, kind),
        ),
      named: (path) =>
        around(
          `named ${path}`,
          (bound) => bound.named(path),
          () => path,
        ),
      referred: (fact) =>
        around(
          `of ${fact}`,
          (bound) => bound.referred(fact),
          () => writtenPath(block, fact),
        ),
      get system() {
        return system()
      },
      get status() {
        return status()
      },
      get isTaken() {
        return !parent && name !== undefined && isTaken(name)
      },
      suppose: (path, value, then) => this.suppose(block, path.slice(path.indexOf('.') + 1), value, then),
      show: (si, kind) => formatBoth(si, kind, system()),
      showBand: (band, kind) => formatBand(band, kind, system()),
    }
  }

  /** What follows from a section where it is written. */
  ofSection<T>(section: Section, make: (bound: Bound, view: View) => T, view: View): T {
    const works = keep(this.#sections, section, () => new Map<object, SectionWork>())
    const work = keep(works, make, () => new SectionWork(this, section, make))
    work.view = view
    return resultIn(work.answer()) as T
  }

  boundSection(section: Section): Bound {
    return this.#analysis.bound(this.#file, section)
  }

  /** What would follow if a block said something else: what depends on that is worked out apart, and forgotten. */
  suppose<R>(of: StoredBlock, name: string, value: unknown, then: () => R): R {
    const { content, top } = of
    const known = content?.facts.get(name)
    if (!content || !known) throw new Error(`${of.path} says no ${name}.`)
    const { version } = top
    const before = this.#supposed
    of.content = { ...content, facts: new Map(content.facts).set(name, known.saying(value)) }
    top.version = {}
    this.#supposed = new Map()
    try {
      return unnoted(then)
    } finally {
      of.content = content
      top.version = version
      this.#supposed = before
    }
  }

  /** Sees to it that a trace holds now. */
  settle(trace: Trace, name: string): Ended {
    const supposed = this.#supposed
    // As far as the supposition changes nothing, what is kept holds.
    const isKept = !supposed || (!trace.isRunning && trace.holds())
    const settled = isKept ? trace : keep(supposed, trace, () => trace.apart())
    if (supposed ? settled.ended === undefined : settled.revision !== this.#revision) {
      if (settled.isRunning) throw new Error(`${name} asks for itself.`)
      if (!settled.holds()) {
        this.worked += 1
        settled.run()
      }
      if (!supposed) settled.revision = this.#revision
    }
    if (!settled.ended) throw new Error(`${name} has no result.`)
    return settled.ended
  }
}

const storesOf = once((_: Analysis) => new Map<string, Store>())

/** What is kept of a file, as it stands now. */
export function storeOf(analysis: Analysis, file: JobFile): Store {
  const stores = storesOf(analysis)
  const known = stores.get(file.path)
  if (known) {
    known.takeIn(file)
    return known
  }
  const made = new Store(analysis, file)
  stores.set(file.path, made)
  return made
}

/** What can be asked from a block of a file as it is bound. */
export const lookupFrom = (block: Block, { analysis, file }: View): Lookup =>
  storeOf(analysis, file).fileLookup.from(block)
