import { getOrInsert } from '../common/get-or-insert.ts'
import { memoizeByIdentity } from '../common/memoize-by-identity.ts'
import type { Analysis } from '../job/analysis.ts'
import type { Bound } from '../job/bind.ts'
import { hasSection } from '../job/document.ts'
import type { JobFile } from '../job/files.ts'
import type { Snapshot } from '../job/memo.ts'
import type { Block, Section } from '../job/model.ts'
import type { View } from '../job/per-section.ts'
import type { Scope } from '../job/scope.ts'
import { formatBand, formatBoth } from '../quantity/format.ts'
import { type BlockId, between } from './block-id.ts'
import type { FileLookup, FilePlan, Lookup } from './lookup.ts'
import { InFile, StandsFor } from './questions.ts'
import { type Home, type RootQuestion, StoredBlock, Top } from './stored-block.ts'
import { StoredLookup } from './stored-lookup.ts'
import { freeId, takeIn } from './tables.ts'
import { ask, type Ended, type Question, type Trace, unnoted } from './trace.ts'
import { FileWork, type OfSection, resultIn, SectionWork } from './work.ts'

/** A top-level block of a used file. */
interface Used {
  readonly top: Top
  readonly path: string | undefined
  readonly kind: string
  readonly name: string | undefined
}

/** What was worked out under a supposition, by what is kept of the same work. */
type Supposed = Map<Trace, Trace>

/** What a job says and what follows from it, by value: a text that says the same is no change. One for each file, with all that it uses. */
export class Store implements Home {
  readonly #analysis: Analysis
  #file: JobFile
  #scope: Scope
  #snapshot: Snapshot | undefined
  #revision = 0
  #tops: ReadonlyMap<BlockId, Top> = new Map()
  /** Blocks of used files that were asked for. */
  readonly #used = new Map<BlockId, Used>()
  readonly #stored = new WeakMap<Block, StoredBlock>()
  #supposed: Supposed | undefined
  /** Called with the title of each piece of work that is done, for tests. */
  onWork: (title: string) => void = () => undefined

  constructor(analysis: Analysis, file: JobFile) {
    this.#analysis = analysis
    this.#file = file
    this.#scope = analysis.scope(file)
    this.takeIn(file)
  }

  /** Takes in the file as it stands now. */
  takeIn(file: JobFile): void {
    const snapshot = this.#analysis.snapshot(file)
    if (snapshot === this.#snapshot) return
    this.#file = file
    this.#scope = this.#analysis.scope(file)
    this.#revision += 1
    this.#takeInOwn()
    this.#takeInUsed()
    // After a fault of ours, all is taken in again.
    this.#snapshot = snapshot
  }

  #takeInOwn(): void {
    const tops = new Map<BlockId, Top>()
    for (const section of this.#file.document.sections) {
      const bound = this.#analysis.bound(this.#file, section)
      for (const block of bound.blocks) {
        const id = freeId(`${block.kind} ${block.name ?? ''}`, (one) => tops.has(one))
        const top = this.#tops.get(id) ?? new Top(this, id)
        tops.set(id, top)
        this.#takeInTop(top, block, bound)
      }
    }
    for (const [id, top] of this.#tops) if (!tops.has(id)) top.remove()
    this.#tops = tops
  }

  #takeInUsed(): void {
    for (const [id, used] of this.#used) {
      const { top } = used
      const block = this.#blockAt(used)
      // Where two come to be the same block, the first is kept.
      const known = block && this.#known(block)
      if (block && !known) this.#takeInTop(top, block, block)
      else if (known?.top !== top) {
        top.remove()
        this.#used.delete(id)
      }
    }
  }

  /** A used file may have a block whose name means another one here. */
  #blockAt({ path, kind, name }: Used): Block | undefined {
    const file = this.#file.used.find((one) => one.path === path)
    const scope = file && this.#analysis.scope(file)
    const block = scope?.named(name ?? kind) ?? scope?.only(kind)
    const isSame = block?.kind === kind && block.name === name
    return file && isSame && hasSection(file.document, block.section) ? block : undefined
  }

  #takeInTop(top: Top, block: Block, text: unknown): void {
    if (top.text.version === text && top.root?.content?.block === block) return
    takeIn(top, block, text, (bound, stored) => this.#stored.set(bound, stored))
  }

  #known(block: Block): StoredBlock | undefined {
    const known = this.#stored.get(block)
    return known?.content?.block === block ? known : undefined
  }

  /** A block by what it says. */
  stored(block: Block): StoredBlock {
    if (block instanceof StoredBlock) return block
    const known = this.#known(block)
    if (known) return known
    let root = block
    while (root.parent) root = root.parent
    const { section } = root
    const holder = this.#file.used.find(({ document }) => hasSection(document, section))
    const { kind, name } = root
    const id = freeId(`used ${kind} ${name ?? ''}`, (one) => this.#used.has(one))
    const top = new Top(this, id)
    this.#used.set(id, { top, path: holder?.path, kind, name })
    this.#takeInTop(top, root, root)
    const stored = this.#stored.get(block)
    if (!stored) throw new Error(`The block ${block.path} is not one of the job.`)
    return stored
  }

  /** The same, noted for the work that asks. */
  standsFor(block: Block): StoredBlock {
    return block instanceof StoredBlock ? block : ask(new StandsFor(this, block))
  }

  blockOf(id: BlockId): StoredBlock {
    const [first = ''] = id.split(between, 1)
    const top = this.#tops.get(first as BlockId) ?? this.#used.get(first as BlockId)?.top
    const block = top?.blocks.get(id)
    if (!block) throw new Error(`There is no block ${id}.`)
    return block
  }

  /** What is kept of the file, for tests. */
  get kept(): readonly Trace[] {
    const blocks = [...this.#tops.values()].flatMap((top) => [...top.blocks.values()])
    return [...this.#traces.values(), ...blocks.flatMap(({ traces }) => [...traces.values()])]
  }

  get scope(): Scope {
    return this.#scope
  }

  get revision(): number {
    return this.#revision
  }

  readonly #questions = new Map<string, InFile<unknown>>()
  readonly #system = new InFile(this, () => this.#scope.system())
  readonly #status = new InFile(this, () => this.#scope.status())

  /** The same question is the same object. */
  #inFile<Answer>(key: string, find: () => Answer): InFile<Answer> {
    return getOrInsert(this.#questions, key, () => new InFile<unknown>(this, find)) as InFile<Answer>
  }

  #storedOr(block: Block | undefined): StoredBlock | undefined {
    return block && this.stored(block)
  }

  named(name: string): RootQuestion {
    return this.#inFile(`named ${name}`, () => this.#storedOr(this.#scope.named(name)))
  }

  only(kind: string): RootQuestion {
    return this.#inFile(`only ${kind}`, () => this.#storedOr(this.#scope.only(kind)))
  }

  #ofKind(kind: string): InFile<readonly StoredBlock[]> {
    return this.#inFile(`kind ${kind}`, () =>
      [...this.#tops.values()].flatMap(({ root }) => (root?.kind === kind ? [root] : [])),
    )
  }

  isTaken(name: string): Question<boolean> {
    return this.#inFile(`taken ${name}`, () => this.#scope.isTaken(name))
  }

  readonly #traces = new Map<FilePlan<unknown>, FileWork>()
  readonly #sections = new WeakMap<Section, Map<object, SectionWork>>()

  readonly fileLookup: FileLookup = this.#newLookup()

  #newLookup(): FileLookup {
    const system = () => ask(this.#system)
    const status = () => ask(this.#status)
    return {
      ofKind: (kind) => ask(this.#ofKind(kind)),
      ofFile: <T>(plan: FilePlan<T>) =>
        resultIn(ask(getOrInsert(this.#traces, plan, () => new FileWork(this, plan)))) as T,
      from: (block) => this.standsFor(block).lookup,
      blockOf: (id) => this.blockOf(id).byId,
      get system() {
        return system()
      },
      get status() {
        return status()
      },
      show: (si, kind) => formatBoth(si, kind, system()),
      showBand: (band, kind) => formatBand(band, kind, system()),
    }
  }

  lookupOf(block: StoredBlock): Lookup {
    return new StoredLookup(block)
  }

  /** What follows from a section where it is written. */
  ofSection<T>(section: Section, make: OfSection<T>, view: View): T {
    const works = getOrInsert(this.#sections, section, () => new Map<object, SectionWork>())
    const work = getOrInsert(works, make, () => new SectionWork(this, section, make))
    return work.seenIn(view) as T
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

  /** Brings a trace up to date. */
  settle(trace: Trace, name: string): Ended {
    if (this.#supposed) return this.#settleSupposed(trace, name, this.#supposed)
    if (trace.revision !== this.#revision) {
      if (trace.isRunning || !trace.holds()) this.#run(trace, name)
      trace.revision = this.#revision
    }
    return endOf(trace, name)
  }

  /** What the supposition does not change is taken as it is kept. */
  #settleSupposed(trace: Trace, name: string, supposed: Supposed): Ended {
    const known = supposed.get(trace)
    if (known?.ended) return known.ended
    const settled = known ?? (!trace.isRunning && trace.holds() ? trace : trace.apart())
    supposed.set(trace, settled)
    if (settled !== trace) this.#run(settled, name)
    return endOf(settled, name)
  }

  #run(trace: Trace, name: string): void {
    if (trace.isRunning) throw new Error(`${name} asks for itself.`)
    this.onWork(name)
    trace.run()
  }
}

function endOf({ ended }: Trace, name: string): Ended {
  if (!ended) throw new Error(`${name} has no result.`)
  return ended
}

/** More files than this are not edited by turns. What is kept of the one that was asked for longest ago is dropped. */
const maxStores = 32

const storesOf = memoizeByIdentity((_: Analysis) => new Map<string, Store>())

/** What is kept of a file, as it stands now. */
export function storeOf(analysis: Analysis, file: JobFile): Store {
  const stores = storesOf(analysis)
  const store = stores.get(file.path) ?? new Store(analysis, file)
  store.takeIn(file)
  stores.delete(file.path)
  stores.set(file.path, store)
  const [oldest] = stores.keys()
  if (stores.size > maxStores && oldest !== undefined) stores.delete(oldest)
  return store
}

/** What can be asked from a block of a file as it is bound. */
export const lookupFrom = (block: Block, { analysis, file }: View): Lookup =>
  storeOf(analysis, file).fileLookup.from(block)
